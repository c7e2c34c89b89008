package broodtide.chart;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * The outcomes of a {@link WindowMap} taken together.
 *
 * @param low lowest outcome
 * @param high highest outcome
 * @param best the best place, the first one of equals; null when every cell is masked
 */
record Outcomes(double low, double high, @Nullable Place best) {
  /** A cell with an outcome. */
  record Place(int row, int column, double value) {}

  static Outcomes of(WindowMap map) {
    Place lowest = null;
    Place highest = null;
    for (int r = 0; r < map.rows().size(); r++) {
      for (int c = 0; c < map.starts().size(); c++) {
        if (map.rows().get(r).cells().get(c) instanceof WindowMap.Outcome o) {
          Place place = new Place(r, c, o.value());
          lowest = lowest == null || o.value() < lowest.value() ? place : lowest;
          highest = highest == null || o.value() > highest.value() ? place : highest;
        }
      }
    }
    if (lowest == null || highest == null) {
      return new Outcomes(0, 0, null);
    }
    Place best = map.lowerIsBetter() ? lowest : highest;
    return new Outcomes(lowest.value(), highest.value(), best);
  }

  /** Where a value lies between lowest and highest, 0 to 1. */
  double share(double value) {
    return high > low ? (value - low) / (high - low) : 0;
  }

  /** A value in two digits, or in as many as tell twenty steps of a narrow map apart. */
  String text(double value) {
    if (!Numerals.two(low).equals(Numerals.two(high))) {
      return Numerals.two(value);
    }
    double step = (high - low) / 20;
    int decimals = step > 0 ? (int) Math.ceil(-Math.log10(step)) : 1;
    return String.format(Locale.ROOT, "%,." + Math.max(0, Math.min(3, decimals)) + "f", value);
  }
}
