package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/** What was believed of each unknown before the washes, and what is believed with them. */
public final class PriorPosterior {
  /**
   * One unknown.
   *
   * @param name what it is, with its unit
   * @param prior how likely each value was before
   * @param posterior how likely each value is now
   */
  public record Unknown(String name, Curve prior, Curve posterior) {}

  private PriorPosterior() {}

  /**
   * {@return the picture, three unknowns in a row}
   *
   * @param heading what stands above
   * @param unknowns one or more
   */
  public static Figure of(Heading heading, List<Unknown> unknowns) {
    String said = Figure.list(unknowns.stream().map(PriorPosterior::words).toList());
    return Figure.of(
        heading, unknowns.stream().map(PriorPosterior::facet).toList(), 3, key(), said);
  }

  static List<Legend.Sample> key() {
    return List.of(
        Legend.Sample.line(new Pen(Palette.MUTED, 1.8, "6 3"), "before the washes"),
        Legend.Sample.area(Palette.line(0), 0.26, "with the washes"));
  }

  static Facet facet(Unknown u) {
    double[] x = u.posterior().x();
    double[] p = u.prior().x();
    double top = Math.max(u.prior().highest(), u.posterior().highest()) * 1.08;
    List<Mark> marks = new ArrayList<>();
    marks.add(Mark.band(x, new double[x.length], u.posterior().y(), Palette.line(0), 0.26));
    marks.add(
        Mark.line(p, u.prior().y(), new Pen(Palette.MUTED, 1.8, "6 3")).in("prior", u.name()));
    Mark line = Mark.line(x, u.posterior().y(), Pen.solid(Palette.line(0), 2.2));
    marks.add(line.in("posterior", u.name()));
    Axis places =
        Axis.numbers("", Math.min(x[0], p[0]), Math.max(x[x.length - 1], p[p.length - 1]));
    // Heights of a density say nothing by themselves, so their axis bears no numbers.
    Axis heights = Axis.numbers("", 0, top).silent();
    return Facet.of(u.name(), places, heights, marks);
  }

  static String words(Unknown u) {
    return u.name()
        + ": middle "
        + Numerals.two(u.prior().middle())
        + " before the washes, "
        + Numerals.two(u.posterior().middle())
        + " with them";
  }
}
