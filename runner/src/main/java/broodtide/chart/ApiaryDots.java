package broodtide.chart;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The hives of an apiary below one another, each a dot with its interval. */
public final class ApiaryDots {
  /**
   * One hive.
   *
   * @param name its name
   * @param value middle value
   * @param range 90 % range of it
   */
  public record Hive(String name, double value, Range range) {}

  private ApiaryDots() {}

  /**
   * {@return the picture, the first hive at the top}
   *
   * @param heading what stands above
   * @param axis what is measured, with its unit
   * @param hives one or more, the one asked about first
   * @param threshold where to act; null for none
   * @param name what the threshold is called
   */
  public static Figure of(
      Heading heading, String axis, List<Hive> hives, @Nullable Double threshold, String name) {
    Figure.some(heading, hives);
    List<Mark> marks = new ArrayList<>();
    List<String> names = new ArrayList<>();
    double least = threshold == null ? Double.POSITIVE_INFINITY : threshold;
    double most = threshold == null ? 0 : threshold;
    for (Hive h : hives) {
      most = Math.max(most, h.range().high());
      least = h.value() > 0 ? Math.min(least, h.value()) : least;
    }
    Axis x = Axis.ratios(axis, Math.max(most / 2000, Math.min(least / 2, most / 20)), 1.2 * most);
    Scale inside = x.scale(0, 1);
    List<Mark> dots = new ArrayList<>();
    for (int i = hives.size() - 1; i >= 0; i--) {
      Hive h = hives.get(i);
      double row = names.size();
      names.add(h.name());
      double[] low = {inside.inside(h.range().low())};
      double[] high = {inside.inside(h.range().high())};
      double[] foot = {row - 0.2};
      double[] top = {row + 0.2};
      marks.add(Mark.bars(low, high, foot, top, Palette.line(0), 0.3).in("range", h.name()));
      String said = Numerals.withRange(h.value(), h.range().low(), h.range().high());
      double[] value = {inside.inside(h.value())};
      Mark dot = Mark.dots(value, new double[] {row}, Palette.INK, 4.6);
      dots.add(dot.in("hive", h.name() + ": " + said));
    }
    if (threshold != null) {
      Mark line = Mark.line(threshold, -0.5, threshold, hives.size() - 0.5, Pen.THRESHOLD);
      marks.add(line.in("limit", name));
    }
    marks.addAll(dots);
    List<Legend.Sample> key = new ArrayList<>();
    key.add(Legend.Sample.dot(Palette.INK, "middle"));
    key.add(Legend.Sample.area(Palette.line(0), 0.3, "90 % interval"));
    if (threshold != null) {
      key.add(Legend.Sample.line(Pen.THRESHOLD, name));
    }
    String said =
        Figure.list(hives.stream().map(h -> h.name() + " " + Numerals.two(h.value())).toList());
    Facet facet = Facet.of("", x, Axis.list(names), marks);
    return Figure.of(heading, facet, key, axis + ". " + said + ".");
  }
}
