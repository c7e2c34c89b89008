package broodtide.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** What one count says: a curve of how likely each value is, and the share beyond a threshold. */
public final class WashCurve {
  private WashCurve() {}

  /**
   * {@return the picture}
   *
   * @param heading what stands above
   * @param axis what is measured, with its unit
   * @param curve how likely each value is; the area under it is 1
   * @param threshold where the shaded part begins; null for none
   * @param name what the threshold is called
   * @param share what the shaded part is, in words
   */
  public static Figure of(
      Heading heading,
      String axis,
      DensityCurve curve,
      @Nullable Double threshold,
      String name,
      String share) {
    double[] x = curve.x();
    double[] y = curve.y();
    double[] zero = new double[x.length];
    double top = curve.highest() * 1.12;
    List<Mark> marks = new ArrayList<>();
    List<Facet.Words> words = new ArrayList<>();
    marks.add(Mark.band(x, zero, y, Palette.line(0), 0.16));
    if (threshold != null && threshold < x[x.length - 1]) {
      DensityCurve beyond = curve.from(threshold);
      marks.add(
          Mark.band(beyond.x(), new double[beyond.x().length], beyond.y(), Palette.line(0), 0.42));
      marks.add(Mark.line(threshold, 0, threshold, top, Pen.THRESHOLD).in("limit", name));
      words.add(Facet.Words.at(threshold, top, name));
      words.add(Facet.Words.at(beyond.middle(), curve.at(beyond.middle()), share, Palette.line(0)));
    }
    marks.add(Mark.line(x, y, Pen.solid(Palette.line(0), 2.5)).in("median", axis));
    Facet facet =
        Facet.of(
            "",
            Axis.numbers(axis, x[0], x[x.length - 1]),
            Axis.numbers("how likely", 0, top).silent(),
            marks,
            words.toArray(new Facet.Words[0]));
    String peak =
        Numerals.two(x[IntStream.range(0, y.length).reduce(0, (a, b) -> y[b] > y[a] ? b : a)]);
    String beyond = threshold == null ? "" : " " + name + ": " + share + ".";
    return Figure.of(heading, facet, List.of(), axis + ". Most likely " + peak + "." + beyond);
  }
}
