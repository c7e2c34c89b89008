package broodtide.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one side of a {@link Facet} measures: numbers, days or a list of names.
 *
 * @param label what is measured, with its unit; may be empty
 * @param low value at the foot or the left
 * @param high value at the other end
 * @param log whether steps are ratios
 * @param first the day that is 0; null when it is no axis of days
 * @param names what stands at 0, 1 and so on; empty when it is no list
 */
record Axis(
    String label,
    double low,
    double high,
    boolean log,
    @Nullable LocalDate first,
    List<String> names) {
  /** A mark of an axis; an upper row of text and, for the year of a day, a lower one. */
  record Tick(double at, double place, String label, String below) {}

  /** An axis of numbers. */
  static Axis numbers(String label, double low, double high) {
    return new Axis(label, low, high > low ? high : low + 1, false, null, List.of());
  }

  /** An axis of ratios. */
  static Axis ratios(String label, double low, double high) {
    return new Axis(label, low, high > low ? high : low * 10, true, null, List.of());
  }

  /** An axis of days; a day is the number of days after the first. */
  static Axis days(LocalDate first, LocalDate last) {
    double n = last.toEpochDay() - first.toEpochDay();
    return new Axis("", 0, Math.max(1, n), false, first, List.of());
  }

  /** A list from left to right, or, upright, from the foot. */
  static Axis list(List<String> names) {
    return new Axis("", -0.5, names.size() - 0.5, false, null, names);
  }

  /** A range that holds all values and, when it is one of amounts, nothing as well. */
  static Axis around(String label, double... values) {
    double low = 0;
    double high = 0;
    for (double v : values) {
      low = Double.isFinite(v) ? Math.min(low, v) : low;
      high = Double.isFinite(v) ? Math.max(high, v) : high;
    }
    double more = 0.06 * (high - low);
    return numbers(label, low < 0 ? low - more : 0, high + more);
  }

  /** The same axis without marks, where a height says nothing by itself. */
  Axis silent() {
    return new Axis(label, low, high, log, null, List.of(""));
  }

  /** The same axis without its name, where a neighbour bears it. */
  Axis unnamed() {
    return new Axis("", low, high, log, first, names);
  }

  Scale scale(double from, double to) {
    return new Scale(low, high, log, from, to);
  }

  /** Marks between two ends, as many as have room. */
  List<Tick> ticks(double from, double to, boolean upright) {
    Scale scale = scale(from, to);
    double length = Math.abs(to - from);
    List<Tick> ticks = new ArrayList<>();
    if (first != null) {
      for (Days.Tick t : new Days(first, first.plusDays((long) high), from, to).ticks(Type.LABEL)) {
        ticks.add(new Tick(t.date().toEpochDay() - first.toEpochDay(), t.x(), t.label(), t.year()));
      }
    } else if (names.equals(List.of(""))) {
      return ticks;
    } else if (!names.isEmpty()) {
      for (int i = 0; i < names.size(); i++) {
        ticks.add(new Tick(i, scale.at(i), names.get(i), ""));
      }
    } else {
      int about = (int) Math.max(2, Math.min(Plot.MOST_STEPS, length / (upright ? 36 : 60)));
      for (double v : scale.ticks(about)) {
        ticks.add(new Tick(v, scale.at(v), Numerals.plain(v), ""));
      }
    }
    return upright ? ticks : apart(ticks);
  }

  /** Leaves out names that would touch the one before. */
  private static List<Tick> apart(List<Tick> ticks) {
    List<Tick> out = new ArrayList<>();
    double clear = Double.NEGATIVE_INFINITY;
    for (Tick t : ticks) {
      double half = Lettering.width(t.label(), Type.LABEL.size(), false) / 2;
      boolean fits = t.place() - half >= clear;
      clear = fits && !t.label().isEmpty() ? t.place() + half + 6 : clear;
      out.add(fits ? t : new Tick(t.at(), t.place(), "", t.below()));
    }
    return out;
  }
}
