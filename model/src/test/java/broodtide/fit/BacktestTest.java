package broodtide.fit;

import static broodtide.fit.Invented.four;
import static broodtide.fit.Invented.strips;
import static broodtide.fit.Invented.wash;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Control;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Forecasts of held-out washes. */
class BacktestTest {
  private static final SeasonPosterior.SamplerSettings LITTLE =
      new SeasonPosterior.SamplerSettings(256, 2, 3);

  private static Backtest.Report run(List<Wash> washes, Control... done) {
    LocalDate start =
        Stream.concat(washes.stream().map(Wash::date), Stream.of(done).map(Control::from))
            .min(Comparator.naturalOrder())
            .orElse(LocalDate.EPOCH);
    try (Workers workers = new Workers(2)) {
      return Backtest.run(
          Invented.place(),
          List.of(new Backtest.Colony("A", start, washes, List.of(done))),
          Priors.defaults(),
          LITTLE,
          workers,
          Progress.NONE);
    }
  }

  /** Change the held-out count, and no forecast may change by a bit. */
  @Test
  void neverSeesTheWashItPredicts() {
    List<Wash> other = new ArrayList<>(four().subList(0, 3));
    other.add(wash(92, 250, 305));
    Backtest.Mark a = run(four()).marks().get(0);
    Backtest.Mark b = run(other).marks().get(0);
    assertThat(b.held().mites()).isNotEqualTo(a.held().mites());
    for (int y = 0; y < 2000; y++) {
      assertThat(b.forecast().atMost(y)).isEqualTo(a.forecast().atMost(y));
      assertThat(b.noChange().atMost(y)).isEqualTo(a.noChange().atMost(y));
      assertThat(b.exponential().atMost(y)).isEqualTo(a.exponential().atMost(y));
    }
  }

  /** No mites forecast for sure, and no mites forecast with a chance of one half. */
  @Test
  void countsAreSharedBetweenTheirPartsOfTheForecast() {
    CountDistribution sure = CountDistribution.mixture(new double[] {0}, new double[] {1});
    CountDistribution one = CountDistribution.logNormalPoisson(Math.log(2), 0);
    Backtest.Report report =
        new Backtest.Report(
            List.of(
                new Backtest.Mark(wash(92, 0, 300), sure, one, one, 1, false),
                new Backtest.Mark(wash(92, 0, 300), one, one, one, 1, false)));
    // The first count takes up all of its forecast, the second the lower half.
    assertThat(report.places(4)[0]).isCloseTo(0.25 + 0.5, within(1e-6));
    assertThat(report.places(4)[1]).isCloseTo(0.25 + 0.5, within(1e-6));
    assertThat(report.places(4)[2]).isCloseTo(0.25, within(1e-6));
    assertThat(report.places(4)[3]).isCloseTo(0.25, within(1e-6));
    // Likewise in a central band: half and nine tenths of either count's own probability.
    assertThat(report.coverage(0.5)).isCloseTo(0.5, within(1e-6));
    assertThat(report.coverage(0.9)).isCloseTo(0.9, within(1e-6));
    assertThat(report.coverageRange(0.9, 1).low())
        .as("one colony")
        .isEqualTo(report.coverageRange(0.9, 1).high());
    Skill skill = Skill.of(report, Backtest.Mark::noChange, 1);
    // The first forecast scores 0 and the second as the baseline does: half of it in all.
    assertThat(skill.value()).isCloseTo(0.5, within(1e-12));
    assertThat(skill.range().low()).as("one colony").isEqualTo(skill.range().high());
  }

  @Test
  void reportAddsUp() {
    Backtest.Report report = run(four());
    Backtest.Mark m = report.marks().get(0);
    assertThat(report.marks()).hasSize(1);
    double from = m.forecast().atMost(16);
    double to = m.forecast().atMost(17);
    assertThat(report.coverage(0.9))
        .isCloseTo(
            Math.max(0, Math.min(0.95, to) - Math.max(0.05, from)) / (to - from), within(1e-9));
    assertThat(report.crps()).isEqualTo(m.forecast().crpsOfLog(17));
    assertThat(report.crpsNoChange()).isEqualTo(m.noChange().crpsOfLog(17));
    assertThat(report.crpsExponential()).isEqualTo(m.exponential().crpsOfLog(17));
  }

  @Test
  void oneDayCannotBeForecastFromItself() {
    assertThat(run(List.of(wash(0, 3, 300))).marks()).isEmpty();
    assertThat(run(List.of(wash(0, 3, 300), wash(0, 5, 300))).marks()).isEmpty();
    assertThat(run(List.of()).marks()).isEmpty();
  }

  @Test
  void everyWashOfTheLastDayIsHeldOut() {
    Backtest.Report report =
        run(List.of(wash(0, 3, 300), wash(30, 6, 300), wash(60, 8, 300), wash(60, 14, 310)));
    assertThat(report.marks()).hasSize(2);
    assertThat(report.marks()).extracting(m -> m.held().mites()).containsExactly(8, 14);
  }

  @Test
  void treatmentsBeforeTheFirstWashAndAfterTheLastAreTaken() {
    Wash first = wash(20, 5, 300);
    Wash last = wash(50, 9, 300);
    double untreated = run(List.of(first, last)).marks().get(0).forecast().quantile(0.5);
    double before = run(List.of(first, last), strips(-5)).marks().get(0).forecast().quantile(0.5);
    double after = run(List.of(first, last), strips(50)).marks().get(0).forecast().quantile(0.5);
    assertThat(before).isLessThan(untreated);
    assertThat(after).isEqualTo(untreated);
  }
}
