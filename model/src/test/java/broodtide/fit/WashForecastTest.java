package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WashForecastTest {
  private static final LocalDate START = LocalDate.of(2025, 5, 1);

  private static GrowthFit eight(List<LocalDate> breaks) {
    int[] mites = {3, 9, 4, 16, 12, 35, 20, 61};
    int[] days = {0, 14, 30, 45, 61, 75, 92, 110};
    int[] bees = {300, 310, 295, 320, 300, 305, 290, 315};
    List<Wash> washes = new ArrayList<>();
    for (int i = 0; i < mites.length; i++) {
      washes.add(Wash.of(START.plusDays(days[i]), "A", mites[i], bees[i]));
    }
    return GrowthFit.of(washes, breaks, 0.9);
  }

  /**
   * SciPy 1.17.1 and NumPy, written apart: for 41 over-dispersions {@code al} equally spaced in
   * logarithm from 2e-4 to 6, Nelder-Mead on {@code stats.nbinom.logpmf(y, 1/al,
   * 1/(1+al*mu)).sum()}, weight {@code exp(logLik - np.linalg.slogdet(X.T@(w[:,None]*X))[1]/2 -
   * al/.1 + log(al))} with {@code w = mu*(1+al*y)/(1+al*mu)**2}; at each, the profile of the level
   * at day 120 at 601 levels within 3 of the best, {@code w = np.diff(stats.norm.cdf(signed_root),
   * prepend=0)} and {@code (w * stats.nbinom.cdf(k, 1/al, 1/(1 + al*270*np.exp(mid)))).sum()}.
   */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({
    "20,  0.022030269531",
    "40,  0.168664416856",
    "60,  0.457812478613",
    "80,  0.718073430666",
    "120, 0.930694634104",
    "200, 0.992135545082"
  })
  void agreesWithScipy(int mites, double chance) {
    WashForecast forecast = eight(List.of()).forecast(START.plusDays(120), 300).orElseThrow();
    assertThat(forecast.chanceAtMost(mites)).isCloseTo(chance, within(5e-4));
  }

  @Test
  void quantilesFitTheChances() {
    WashForecast forecast = eight(List.of()).forecast(START.plusDays(120), 300).orElseThrow();
    int median = forecast.median();
    assertThat(forecast.chanceAtMost(median)).isGreaterThanOrEqualTo(0.5);
    assertThat(forecast.chanceAtMost(median - 1)).isLessThan(0.5);
    assertThat(forecast.quantile(0)).isZero();
    assertThat(forecast.quantile(1)).isLessThanOrEqualTo(300);
    assertThat(forecast.chanceAtMost(-1)).isZero();
    assertThat(forecast.chanceAtMost(1000)).isEqualTo(1);
    assertThat(forecast.perHundred(0.9).high())
        .isCloseTo(forecast.interval(0.9).high() / 3, within(1e-12));
    assertThat(forecast.chanceAbove(20)).isCloseTo(1 - forecast.chanceAtMost(60), within(1e-12));
    assertThatThrownBy(() -> forecast.quantile(1.1)).isInstanceOf(OutOfRange.class);
  }

  @Test
  void furtherAheadIsLessSure() {
    double before = 0;
    for (int day : new int[] {110, 125, 140}) {
      WashForecast forecast = eight(List.of()).forecast(START.plusDays(day), 3000).orElseThrow();
      double spread = forecast.interval(0.9).high() / forecast.interval(0.9).low();
      assertThat(spread).isGreaterThan(before);
      before = spread;
    }
  }

  @Test
  void farAheadEveryBeeCarriesOneAtMost() {
    WashForecast forecast = eight(List.of()).forecast(START.plusDays(500), 300).orElseThrow();
    assertThat(forecast.quantile(0.99)).isEqualTo(300);
    assertThat(forecast.chanceAtMost(300)).isEqualTo(1);
  }

  @Test
  void noForecastPastAnUnwashedTreatmentNorIntoThePast() {
    GrowthFit fit = eight(List.of(START.plusDays(110)));
    assertThat(fit.whyNoForecast(START.plusDays(120))).contains(GrowthFit.NoForecast.TREATED_SINCE);
    assertThat(fit.whyNoForecast(START.plusDays(110))).isEmpty();
    assertThatThrownBy(() -> fit.forecast(START.plusDays(109), 300))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("the day of the last wash, 2025-08-19, or later");
    assertThatThrownBy(() -> fit.forecast(START.plusDays(120), 0)).isInstanceOf(OutOfRange.class);
  }

  @Test
  void afterATreatmentTheLastStretchSetsTheLevel() {
    List<Wash> washes = new ArrayList<>();
    int[] mites = {10, 20, 40, 2, 4};
    int[] days = {0, 30, 60, 75, 105};
    for (int i = 0; i < mites.length; i++) {
      washes.add(Wash.of(START.plusDays(days[i]), "A", mites[i], 300));
    }
    WashForecast forecast =
        GrowthFit.of(washes, List.of(START.plusDays(62)), 0.9)
            .forecast(START.plusDays(135), 300)
            .orElseThrow();
    assertThat(forecast.median()).isBetween(7, 9);
  }
}
