package broodtide.words;

import broodtide.fit.Growth;
import broodtide.fit.GrowthFit;
import broodtide.wash.Interval;
import java.util.Locale;

/** What the washes of a colony say of its growth. */
public final class GrowthWords {
  private GrowthWords() {}

  /**
   * {@return what the washes say of growth, in one sentence}
   *
   * @param fit the washes with the growth that fits them
   */
  public static String sentence(GrowthFit fit) {
    return switch (fit.finding()) {
      case NO_WASH -> "There are no washes.";
      case ONE_WASH -> "One wash cannot show growth; it takes a second one some weeks later.";
      case NO_MITES ->
          "No mites were found in any wash, so these washes cannot show whether the mites are"
              + " increasing.";
      case MITES_ON_ONE_DAY ->
          "Mites were found only where a stretch between treatments has one day of washing, so"
              + " these washes cannot show whether the mites are increasing.";
      case NO_TWO_DAYS ->
          "No two washes lie some days apart without a treatment between, so"
              + " these washes cannot show whether the mites are increasing.";
      case RATE -> bounded(fit.growth());
      case ONLY_ON_LAST_DAY -> unbounded(fit.growth(), true);
      case ONLY_ON_FIRST_DAY -> unbounded(fit.growth(), false);
    };
  }

  /**
   * {@return why no wash can be forecast for a day}
   *
   * @param fit the washes with the growth that fits them
   * @param why what stands in the way
   */
  public static String whyNoForecast(GrowthFit fit, GrowthFit.NoForecast why) {
    return switch (why) {
      case NO_WASH -> "There are no washes to forecast from.";
      case NO_RATE -> sentence(fit);
      case TREATED_SINCE ->
          "There is no wash after the last treatment, so its effect is not known.";
      case NO_MITES_SINCE ->
          "No mites were found since the last treatment, so there is no level to go on from.";
    };
  }

  private static String bounded(Growth growth) {
    Interval rates = growth.perDayInterval();
    if (!growth.differsFromZero()) {
      return String.format(
          Locale.ROOT,
          "These washes cannot show whether the mites are increasing: mites per bee change by %s"
              + " to %s a day.",
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

  private static String unbounded(Growth growth, boolean up) {
    Interval rates = growth.perDayInterval();
    String found = "Mites were found only on the " + (up ? "last" : "first") + " day of washing; ";
    if (!growth.differsFromZero()) {
      return found + "these washes cannot show whether the mites are increasing.";
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
