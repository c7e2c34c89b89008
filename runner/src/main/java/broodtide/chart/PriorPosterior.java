package broodtide.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** What was believed of each unknown before the washes, and what is believed with them. */
public final class PriorPosterior {
  /**
   * One unknown.
   *
   * @param name what it is, with its unit
   * @param prior how likely each value was before
   * @param posterior how likely each value is now
   * @param ratios whether equal steps along the axis are equal factors, as suits values that spread
   *     over decades; the values are above 0 then, and heights are per step
   */
  public record Unknown(String name, DensityCurve prior, DensityCurve posterior, boolean ratios) {
    /** An unknown on an axis of even steps. */
    public Unknown(String name, DensityCurve prior, DensityCurve posterior) {
      this(name, prior, posterior, false);
    }

    private double middle(DensityCurve curve) {
      double[] x = curve.x();
      double[] y = curve.y();
      double[] even = IntStream.range(0, x.length).mapToDouble(i -> y[i] / x[i]).toArray();
      return (ratios ? DensityCurve.of(x, even) : curve).middle();
    }
  }

  private PriorPosterior() {}

  /**
   * {@return the picture, two unknowns in a row}
   *
   * @param heading what stands above
   * @param unknowns one or more
   */
  public static Figure of(Heading heading, List<Unknown> unknowns) {
    String said = Figure.sentences(unknowns.stream().map(PriorPosterior::words));
    return Figure.of(
        heading, unknowns.stream().map(PriorPosterior::facet).toList(), 2, key(), said);
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
    double low = Math.min(x[0], p[0]);
    double high = Math.max(x[x.length - 1], p[p.length - 1]);
    Axis places = u.ratios() ? Axis.ratios("", low, high) : Axis.numbers("", low, high);
    // Heights of a density say nothing by themselves, so their axis bears no numbers.
    Axis heights = Axis.numbers("", 0, top).silent();
    return Facet.of(u.name(), places, heights, marks);
  }

  static String words(Unknown u) {
    return u.name()
        + ": middle "
        + Numerals.two(u.middle(u.prior()))
        + " before the washes, "
        + Numerals.two(u.middle(u.posterior()))
        + " with them";
  }
}
