package broodtide.fit;

import broodtide.wash.Interval;
import broodtide.wash.Wash;
import java.util.List;
import java.util.Locale;

/** Growth said in plain words. */
final class GrowthWords {
  private GrowthWords() {}

  static String of(
      Growth growth, Segments.Slope slope, Segments segments, List<List<Wash>> used, int washes) {
    if (washes == 0) {
      return "There are no washes.";
    }
    if (washes == 1) {
      return "One wash cannot tell growth; it takes a second one some weeks later.";
    }
    if (used.isEmpty()) {
      return "No mites were found in any wash, so the washes cannot tell growth from none.";
    }
    if (slope == Segments.Slope.NONE) {
      return segments.longest() > 0
          ? "Mites were found only where a stretch between treatments has one day of washing, so"
              + " the washes cannot tell growth from none."
          : "No two washes lie some days apart without a treatment between, so they cannot tell"
              + " growth from none.";
    }
    return slope == Segments.Slope.FINITE ? bounded(growth) : unbounded(growth, slope);
  }

  private static String bounded(Growth growth) {
    Interval rates = growth.perDayInterval();
    if (!growth.differsFromZero()) {
      return String.format(
          Locale.ROOT,
          "The washes cannot tell growth from none: the change of mites per bee lies between %s"
              + " and %s a day.",
          rise(rates.low()),
          rise(rates.high()));
    }
    double rate = growth.perDay().orElseThrow();
    return rate > 0
        ? String.format(
            Locale.ROOT,
            "Mites per bee grow by %s a day (%s to %s), doubling in %.0f days.",
            rise(rate),
            rise(rates.low()),
            rise(rates.high()),
            growth.doublingDays().orElseThrow())
        : String.format(
            Locale.ROOT,
            "Mites per bee fall by %s a day (%s to %s), halving in %.0f days.",
            fall(rate),
            fall(rates.high()),
            fall(rates.low()),
            growth.halvingDays().orElseThrow());
  }

  private static String unbounded(Growth growth, Segments.Slope slope) {
    boolean up = slope == Segments.Slope.UP;
    Interval rates = growth.perDayInterval();
    String found = "Mites were found only on the " + (up ? "last" : "first") + " day of washing; ";
    if (!growth.differsFromZero()) {
      return found + "that cannot tell growth from none.";
    }
    return up
        ? found + "they grow by at least " + rise(rates.low()) + " a day, how fast is not known."
        : found + "they fall by at least " + fall(rates.high()) + " a day, how fast is not known.";
  }

  private static String rise(double rate) {
    if (Double.isInfinite(rate)) {
      return rate > 0 ? "any growth" : "any decline";
    }
    return String.format(Locale.ROOT, "%.1f %%", 100 * Math.expm1(rate));
  }

  private static String fall(double rate) {
    return String.format(Locale.ROOT, "%.1f %%", -100 * Math.expm1(rate));
  }
}
