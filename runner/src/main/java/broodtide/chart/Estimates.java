package broodtide.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Estimates of many days as a line with its band. */
final class Estimates {
  private Estimates() {}

  /** The 90 % band, where all days have one, and the line of the medians above it. */
  static List<Mark> banded(List<Estimate> days, LocalDate first, Colour colour, String dash) {
    double[] x =
        days.stream().mapToDouble(e -> e.date().toEpochDay() - first.toEpochDay()).toArray();
    double[] low = days.stream().mapToDouble(e -> outer(e).low()).toArray();
    double[] high = days.stream().mapToDouble(e -> outer(e).high()).toArray();
    double[] middle = days.stream().mapToDouble(Estimate::median).toArray();
    List<Mark> marks = new ArrayList<>();
    if (days.stream().allMatch(e -> e.outer() != null)) {
      marks.add(Mark.band(x, low, high, colour, 0.16).in("band90", ""));
    }
    marks.add(Mark.line(x, middle, new Pen(colour, 2.5, dash)).rimmed(4.2).in("median", ""));
    return marks;
  }

  private static Range outer(Estimate e) {
    Range range = e.outer();
    return range == null ? new Range(e.median(), e.median()) : range;
  }
}
