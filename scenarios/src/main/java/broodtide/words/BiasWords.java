package broodtide.words;

import broodtide.fit.Backtest;
import broodtide.fit.ForecastBias;
import broodtide.fit.GrowthBias;

/** What is said of forecasts on one's own records: whether they ran too high or too low. */
public final class BiasWords {
  private BiasWords() {}

  /**
   * {@return whether forecasts ran too high or too low on these records, in one sentence}
   *
   * @param report forecasts of washes that were held out
   */
  public static String sentence(Backtest.Report report) {
    int marks = report.marks().size();
    if (marks < ForecastBias.FEWEST) {
      return "Too few forecasts to tell whether they run too high or too low here; "
          + ForecastBias.FEWEST
          + " are needed.";
    }
    ForecastBias bias = ForecastBias.of(report);
    double low = bias.range().low();
    double high = bias.range().high();
    if (!bias.clear()) {
      return "On your records forecasts ran neither clearly too high nor too low; forecast over"
          + " count is "
          + Digits.two(bias.factor())
          + " (90 % interval "
          + Digits.range(low, high)
          + ").";
    }
    return bias.factor() > 1
        ? times(bias.factor(), low, high, "high")
        : times(1 / bias.factor(), 1 / high, 1 / low, "low");
  }

  private static String times(double factor, double low, double high, String way) {
    return "On your records forecasts ran about "
        + Digits.two(factor)
        + " times too "
        + way
        + " (90 % interval "
        + Digits.range(low, high)
        + ").";
  }

  /**
   * {@return the same beside an answer, with what it means for it}
   *
   * @param report forecasts of washes that were held out
   */
  public static String besideAnswer(Backtest.Report report) {
    GrowthBias bias = GrowthBias.of(report);
    int telling = GrowthBias.untreated(report).size();
    int all = report.marks().size();
    if (bias.none()) {
      return sentence(report)
          + (all < ForecastBias.FEWEST
              ? " The figures are as they are without records."
              : " The figures are as they are without records: fewer than "
                  + ForecastBias.FEWEST
                  + " forecasts have no treatment since the wash before.");
    }
    return sentence(report)
        + (telling == all
            ? " The figures take this in."
            : " The figures take in the "
                + telling
                + " forecasts without a treatment since the wash before.")
        + " From the last wash on a mite has "
        + Digits.two(bias.factor())
        + " times the usual daughters (90 % interval "
        + Digits.range(bias.range().low(), bias.range().high())
        + ").";
  }
}
