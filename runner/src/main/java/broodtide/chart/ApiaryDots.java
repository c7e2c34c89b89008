package broodtide.chart;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The hives of an apiary below one another, each with a dot and its interval for each time. */
public final class ApiaryDots {
  /** What the rows of one hive are apart, as a share of the height of a hive. */
  private static final double APART = 0.34;

  /**
   * One hive at one time.
   *
   * @param value middle value
   * @param range 90 % range of it
   */
  public record Dot(double value, Range range) {}

  /**
   * One hive.
   *
   * @param name its name
   * @param dots one for each time
   */
  public record Hive(String name, List<Dot> dots) {
    /** Copies the list. */
    public Hive {
      dots = List.copyOf(dots);
    }
  }

  private ApiaryDots() {}

  /**
   * {@return the picture, the first hive at the top}
   *
   * @param heading what stands above
   * @param axis what is measured, with its unit
   * @param times what the dots of each hive stand for, the uppermost first
   * @param hives one or more, the one asked about first, with a dot for each time
   * @param threshold where to act; null for none
   * @param name what the threshold is called
   */
  public static Figure of(
      Heading heading,
      String axis,
      List<String> times,
      List<Hive> hives,
      @Nullable Double threshold,
      String name) {
    Figure.some(heading, hives);
    Axis x = axis(axis, hives, threshold);
    Scale inside = x.scale(0, 1);
    List<Mark> marks = new ArrayList<>();
    if (threshold != null) {
      Mark line = Mark.line(threshold, -0.5, threshold, hives.size() - 0.5, Pen.THRESHOLD);
      marks.add(line.in("limit", name));
    }
    List<String> names = new ArrayList<>();
    for (int i = hives.size() - 1; i >= 0; i--) {
      Hive h = hives.get(i);
      for (int t = 0; t < times.size(); t++) {
        Dot dot = h.dots().get(t);
        Range r = dot.range();
        String said = Numerals.withRange(dot.value(), r.low(), r.high());
        String time = times.size() > 1 ? ", " + times.get(t) : "";
        marks.addAll(
            Mark.level(
                names.size() + APART * ((times.size() - 1) / 2.0 - t),
                inside.inside(dot.value()),
                inside.inside(r.low()),
                inside.inside(r.high()),
                Palette.line(t),
                new Mark.Group("hive", h.name() + time + ": " + said)));
      }
      names.add(h.name());
    }
    List<Legend.Sample> key = new ArrayList<>();
    for (int t = 0; t < times.size(); t++) {
      key.add(Legend.Sample.dot(Palette.line(t), times.get(t) + ", with 90 % interval"));
    }
    if (threshold != null) {
      key.add(Legend.Sample.line(Pen.THRESHOLD, name));
    }
    String said = Figure.sentences(hives.stream().map(ApiaryDots::said));
    Facet facet = Facet.of("", x, Axis.list(names), marks);
    return Figure.of(heading, facet, key, axis + ", " + String.join(" and ", times) + ". " + said);
  }

  private static Axis axis(String label, List<Hive> hives, @Nullable Double threshold) {
    double least = threshold == null ? Double.POSITIVE_INFINITY : threshold;
    double most = threshold == null ? 0 : threshold;
    for (Hive h : hives) {
      for (Dot dot : h.dots()) {
        most = Math.max(most, dot.range().high());
        least = dot.value() > 0 ? Math.min(least, dot.value()) : least;
      }
    }
    return Axis.ratios(label, Math.max(most / 2000, Math.min(least / 2, most / 20)), 1.2 * most);
  }

  private static String said(Hive h) {
    return h.name()
        + " "
        + String.join(" and ", h.dots().stream().map(d -> Numerals.two(d.value())).toList());
  }
}
