package broodtide.chart;

import java.awt.Color;
import java.util.List;

/**
 * The project's own colours and dashes.
 *
 * <p>The six line colours were searched for by computer: all six lightnesses differ, so that they
 * print in grey, and any two stay apart as seen with normal, red-blind and green-blind sight. None
 * stands for good or bad. Every line also has its own dash.
 */
final class Palette {
  static final Colour PAPER = Colour.of("#ffffff");
  static final Colour INK = Colour.of("#20242b");
  static final Colour MUTED = Colour.of("#59606a");
  static final Colour GRID = Colour.of("#e6e6e2");
  static final Colour AXIS = Colour.of("#9a9fa6");

  private static final List<Colour> LINES =
      List.of(
          Colour.of("#062680"),
          Colour.of("#b96c00"),
          Colour.of("#489f94"),
          Colour.of("#793e57"),
          Colour.of("#6662b9"),
          Colour.of("#633401"));
  private static final List<String> DASHES =
      List.of(
          "", "11 4", "2 4.5", "12 4 2 4", "6 3", "12 4 2 4 2 4", "2 3 2 9", "18 4 5 4", "22 6");

  /** Pale grounds of the spans: straw, mist, lilac, in turn. */
  private static final List<Colour> SPANS =
      List.of(Colour.of("#f6efda"), Colour.of("#e3ebf2"), Colour.of("#eee6f0"));

  /** Light sand to deep indigo; the lightness falls evenly. */
  private static final List<Colour> SCALE =
      List.of(
          Colour.of("#fbf4e2"),
          Colour.of("#ecd0ac"),
          Colour.of("#d3a493"),
          Colour.of("#a9788f"),
          Colour.of("#705385"),
          Colour.of("#2f2d64"));

  private Palette() {}

  /** How many lines have a colour of their own; further lines use them again, dashed otherwise. */
  static int kinds() {
    return LINES.size();
  }

  static Colour line(int i) {
    return LINES.get(Math.floorMod(i, LINES.size()));
  }

  static String dash(int i) {
    return DASHES.get(Math.floorMod(i + i / LINES.size(), DASHES.size()));
  }

  static Colour span(int i) {
    return SPANS.get(Math.floorMod(i, SPANS.size()));
  }

  /** The light-to-dark scale as AWT has it, lightest first. */
  static Color[] range() {
    return SCALE.stream().map(c -> new Color(c.rgb())).toArray(Color[]::new);
  }

  /** Ink or paper, whichever can be read better on this ground. */
  static Colour over(Colour ground) {
    return ground.contrast(INK) >= ground.contrast(PAPER) ? INK : PAPER;
  }

  /**
   * A colour of the light-to-dark scale.
   *
   * @param t 0 lightest to 1 darkest; values outside are moved to the nearer end
   */
  static Colour scale(double t) {
    double place = Math.max(0, Math.min(1, t)) * (SCALE.size() - 1);
    int i = Math.min(SCALE.size() - 2, (int) place);
    return SCALE.get(i).towards(SCALE.get(i + 1), place - i);
  }
}
