package broodtide.report;

import broodtide.chart.Figure;
import broodtide.chart.ForecastCheck;
import broodtide.chart.Heading;
import broodtide.chart.Range;
import broodtide.fit.Backtest;
import broodtide.fit.Skill;
import java.util.List;

/** Forecasts of held-out washes against what was counted. */
public final class BacktestPicture {
  /** Forecasts from which the histogram has ten parts instead of five; choice. */
  private static final int MANY = 50;

  private BacktestPicture() {}

  /**
   * {@return the picture}
   *
   * @param report marked forecasts, at least one
   * @param seed seed of the random numbers
   */
  public static Figure of(Backtest.Report report, long seed) {
    int n = report.marks().size();
    String title =
        "The 90 % band held "
            + Math.round(n * report.coverage(0.9))
            + " of "
            + n
            + (n == 1 ? " wash" : " washes");
    String subtitle =
        "The last wash of each colony, forecast from those before it. Bars: 90 % intervals.";
    return ForecastCheck.of(
        new Heading(title, subtitle),
        report.marks().stream().map(BacktestPicture::pair).toList(),
        report.places(n < MANY ? 5 : 10),
        List.of(
            skill("against no change", Skill.of(report, Backtest.Mark::noChange, seed)),
            skill("against exponential", Skill.of(report, Backtest.Mark::exponential, seed))));
  }

  private static ForecastCheck.Pair pair(Backtest.Mark m) {
    return new ForecastCheck.Pair(
        m.forecast().quantile(0.5),
        new Range(m.forecast().quantile(0.05), m.forecast().quantile(0.95)),
        m.held().mites());
  }

  private static ForecastCheck.Skill skill(String name, Skill s) {
    return new ForecastCheck.Skill(name, s.value(), new Range(s.range().low(), s.range().high()));
  }
}
