package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Forecasts that run too high or too low. */
class ForecastBiasTest {
  /** Hives of each year, each forecast at 40 mites and counted otherwise. */
  private static ForecastBias bias(int hives, int years, int counted) {
    CountDistribution forecast = CountDistribution.logNormalPoisson(40, 0.6);
    List<Backtest.Mark> marks = new ArrayList<>();
    for (int y = 0; y < years; y++) {
      for (int h = 0; h < hives; h++) {
        Wash held = Wash.of(LocalDate.of(2018 + y, 9, 1), "hive " + h, counted, 300);
        marks.add(new Backtest.Mark(held, forecast, forecast, forecast, 2, false));
      }
    }
    return ForecastBias.of(new Backtest.Report(marks));
  }

  @Test
  void flatSeasonsAfterHighCountsAreCaught() {
    ForecastBias high = bias(8, 4, 15);
    assertThat(high.clear()).isTrue();
    // 40.5 over 15.5 is 2.6; shrunken towards none
    assertThat(high.factor()).isBetween(1.6, 2.6);
    assertThat(high.forecasts()).isEqualTo(32);
    assertThat(high.years()).isEqualTo(4);
    assertThat(bias(8, 4, 100).range().high()).isLessThan(1);
  }

  @Test
  void soundForecastsHaveNone() {
    ForecastBias none = bias(8, 4, 40);
    assertThat(none.clear()).isFalse();
    assertThat(none.factor()).isCloseTo(1, within(0.05));
  }

  /** What many hives of one year share must not pass for a bias that stays. */
  @Test
  void aYearOfManyHivesWeighsLessThanYearsOfAFew() {
    ForecastBias oneYear = bias(40, 1, 15);
    ForecastBias tenYears = bias(4, 10, 15);
    assertThat(oneYear.factor()).isLessThan(tenYears.factor());
    assertThat(oneYear.range().high() / oneYear.range().low())
        .isGreaterThan(1.5 * tenYears.range().high() / tenYears.range().low());
    // a year halves a forecast's variance at best: the conjugate answer by hand
    double sd = (Math.log(quantile(0.95)) - Math.log(quantile(0.05))) / (2 * 1.6448536);
    double variance = sd * sd * (0.5 + 0.5 / 40);
    double error = Math.log(quantile(0.5) / 15.5);
    assertThat(Math.log(oneYear.factor()))
        .isCloseTo(error * 0.25 / (0.25 + variance), within(1e-6));
  }

  private static double quantile(double level) {
    return CountDistribution.logNormalPoisson(40, 0.6).quantile(level) + 0.5;
  }

  @Test
  void aFewForecastsSayNothing() {
    assertThatThrownBy(() -> bias(4, 1, 15)).isInstanceOf(OutOfRange.class);
  }
}
