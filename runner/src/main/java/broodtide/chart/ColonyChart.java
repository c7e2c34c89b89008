package broodtide.chart;

import java.util.List;
import java.util.stream.Collectors;

/**
 * What goes on inside a colony: panels above one another that share their days, for instance bees
 * and brood above mites on bees and mites in brood.
 *
 * <p>Line number n has the same colour in every panel, so that a place (on bees, in brood) keeps
 * its colour from panel to panel.
 *
 * @param heading title and subtitle
 * @param panels one to four panels, the upper first
 * @param almanac spans, markers and today, drawn through all panels
 * @param size picture size
 */
public record ColonyChart(Heading heading, List<Panel> panels, Almanac almanac, Size size)
    implements Picture {
  private static final int MOST_PANELS = 4;

  public ColonyChart {
    panels = List.copyOf(panels);
    if (panels.isEmpty() || panels.size() > MOST_PANELS) {
      throw new IllegalArgumentException(
          "a colony chart has " + panels.size() + " panels; expected 1 to " + MOST_PANELS);
    }
  }

  /**
   * {@return bees above mites, for a page}
   *
   * @param heading what stands above
   * @param bees adult bees over the days
   * @param mites mites over the days
   * @param almanac spans and marked days
   */
  public static ColonyChart of(Heading heading, Panel bees, Panel mites, Almanac almanac) {
    return new ColonyChart(heading, List.of(bees, mites), almanac, new Size(720, 580));
  }

  @Override
  public ColonyChart sized(Size other) {
    return new ColonyChart(heading, panels, almanac, other);
  }

  @Override
  public Size drawn() {
    return stack().size();
  }

  @Override
  public String description() {
    return panels.stream().map(Panel::words).collect(Collectors.joining(" "));
  }

  @Override
  public void paint(Canvas canvas) {
    stack().paint(canvas);
  }

  private PanelStack stack() {
    return new PanelStack(heading, panels, almanac, size);
  }
}
