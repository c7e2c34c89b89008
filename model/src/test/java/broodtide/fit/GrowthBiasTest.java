package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.stat.descriptive.moment.Mean;
import org.apache.commons.math3.stat.descriptive.moment.Variance;
import org.junit.jupiter.api.Test;

/** What one's own records do to forecasts. */
class GrowthBiasTest {
  private static final CountDistribution FORECAST = CountDistribution.logNormalPoisson(40, 0.6);
  private static final double REACH = 2;

  /** Hives of each year, each forecast at 40 mites and counted otherwise. */
  private static GrowthBias bias(int hives, int years, int counted, double reach) {
    List<Backtest.Mark> marks = new ArrayList<>();
    for (int y = 0; y < years; y++) {
      for (int h = 0; h < hives; h++) {
        Wash held = Wash.of(LocalDate.of(2018 + y, 9, 1), "hive " + h, counted, 300);
        marks.add(new Backtest.Mark(held, FORECAST, FORECAST, FORECAST, reach, false));
      }
    }
    return GrowthBias.of(new Backtest.Report(marks));
  }

  /** The conjugate answer by hand: a year of n hives weighs as 2 n / (n + 1) of them. */
  @Test
  void flatSeasonsLowerGrowthAsFarAsTheirRecordsWeigh() {
    GrowthBias flat = bias(8, 4, 15, REACH);
    double sd = (Math.log(quantile(0.95)) - Math.log(quantile(0.05))) / (2 * 1.6448536);
    double information = 4 * 16.0 / 9 * REACH * REACH / (sd * sd);
    double precision = 16 + information;
    double error = Math.log(15.5 / quantile(0.5)) / REACH;
    assertThat(flat.log()).isCloseTo(error * information / precision, within(1e-6));
    assertThat(flat.sd()).isCloseTo(1 / Math.sqrt(precision), within(1e-6));
    assertThat(flat.range().high()).isLessThan(1);
    assertThat(bias(8, 4, 100, REACH).range().low()).isGreaterThan(1);
  }

  @Test
  void soundRecordsMoveNextToNothing() {
    GrowthBias none = bias(8, 4, 40, REACH);
    assertThat(none.factor()).isCloseTo(1, within(0.01));
    assertThat(none.sd()).isLessThan(0.15);
  }

  @Test
  void fewRecordsMoveLittleAndFewerNothing() {
    double many = bias(8, 4, 15, REACH).log();
    double few = bias(5, 1, 15, REACH).log();
    assertThat(few).isNegative().isGreaterThan(0.7 * many);
    assertThat(bias(40, 1, 15, REACH).log()).as("one year").isGreaterThan(0.75 * many);
    assertThat(bias(4, 1, 15, REACH)).isEqualTo(GrowthBias.NONE);
  }

  /**
   * A forecast across a treatment judges the treatment; the others count as if it were not there.
   */
  @Test
  void forecastsAcrossATreatmentAreLeftOut() {
    List<Backtest.Mark> marks = new ArrayList<>();
    for (int h = 0; h < 10; h++) {
      Wash low = Wash.of(LocalDate.of(2018, 9, 1), "low " + h, 15, 300);
      Wash lower = Wash.of(LocalDate.of(2018, 9, 1), "treated " + h, 1, 300);
      marks.add(new Backtest.Mark(low, FORECAST, FORECAST, FORECAST, REACH, false));
      marks.add(new Backtest.Mark(lower, FORECAST, FORECAST, FORECAST, REACH, true));
    }
    assertThat(GrowthBias.of(new Backtest.Report(marks))).isEqualTo(bias(10, 1, 15, REACH));
    assertThat(GrowthBias.of(new Backtest.Report(marks.subList(0, 8)))).isEqualTo(GrowthBias.NONE);
  }

  /** A course marks the forecasts that it reaches, and no other. */
  @Test
  void aForecastIsMarkedWhereAMiticideActedSinceTheWashBefore() {
    assertThat(treated(Invented.strips(-60))).isFalse();
    assertThat(treated(Invented.strips(60))).as("still acts after the wash of day 92").isTrue();
    assertThat(treated(Invented.strips(100))).isTrue();
    assertThat(treated(Invented.strips(122))).as("on the day of the held-out wash").isFalse();
  }

  private static boolean treated(Control course) {
    try (Workers workers = new Workers(2)) {
      LocalDate start = Invented.START.minusDays(60);
      return Backtest.run(
              Invented.place(),
              List.of(new Backtest.Colony("A", start, held(), List.of(course))),
              Priors.defaults(),
              new SeasonPosterior.SamplerSettings(64, 1, 1),
              workers,
              Progress.NONE)
          .marks()
          .get(0)
          .treated();
    }
  }

  /** A count a few days after the last says nothing of growth, however far it is off. */
  @Test
  void forecastsThatGrowthDoesNotReachSayNothing() {
    GrowthBias unreached = bias(8, 4, 15, 0);
    assertThat(unreached.log()).isZero();
    assertThat(unreached.sd()).isCloseTo(GrowthBias.PRIOR, within(1e-12));
  }

  /** Beliefs of the past stay, so the colonies on the last wash are the same ones. */
  @Test
  void theBiasMovesWhatIsToComeAlone() {
    try (Workers workers = new Workers(2)) {
      SeasonPosterior usual = posterior(Priors.defaults(), workers);
      SeasonPosterior known = posterior(Priors.defaults().with(new GrowthBias(0, 0)), workers);
      SeasonPosterior flat = posterior(Priors.defaults().with(new GrowthBias(-0.3, 0.2)), workers);
      assertThat(flat.dispersions()).containsExactly(usual.dispersions());
      assertThat(forecast(flat, 92, workers).quantile(0.5))
          .isEqualTo(forecast(usual, 92, workers).quantile(0.5));
      CountDistribution before = forecast(usual, 152, workers);
      CountDistribution after = forecast(flat, 152, workers);
      assertThat(after.quantile(0.5)).isLessThan((int) (0.75 * before.quantile(0.5)));
      assertThat(forecast(known, 152, workers).atMost(30)).isEqualTo(before.atMost(30));
    }
  }

  /** Doubt adds the variance of its own, times the square of what growth does to the forecast. */
  @Test
  void doubtWidensByWhatGrowthDoesToTheForecast() {
    try (Workers workers = new Workers(2)) {
      double usual = variance(Priors.defaults(), workers);
      double doubted = variance(Priors.defaults().with(new GrowthBias(0, 0.25)), workers);
      double step = 0.1;
      double less = mean(Priors.defaults().with(new GrowthBias(-step, 0)), workers);
      double more = mean(Priors.defaults().with(new GrowthBias(step, 0)), workers);
      double added = 0.25 * (more - less) / (2 * step);
      assertThat(doubted - usual).isCloseTo(added * added, within(0.3 * added * added));
    }
  }

  /** Doubt that all hives share adds to what they share, and to nothing else. */
  @Test
  void hivesShareTheDoubtThatIsLeft() {
    Prior growth = Unknown.GROWTH_TO_COME.usual();
    GrowthBias bias = new GrowthBias(-0.2, 0.2);
    Prior moved = bias.on(growth);
    double own = (1 - bias.shared(growth, 0.64)) * moved.logSd() * moved.logSd();
    assertThat(own).isCloseTo(0.36 * 0.25, within(1e-12));
    assertThat(GrowthBias.NONE.shared(growth, 0.64)).isEqualTo(0.64);
    assertThat(GrowthBias.NONE.on(growth)).isEqualTo(growth);
    try (Workers workers = new Workers(2)) {
      SeasonPosterior usual = posterior(Priors.defaults(), workers);
      SeasonPosterior flat = posterior(Priors.defaults().with(bias), workers);
      Scenario ahead = Invented.season(152);
      LocalDate day = Invented.START.plusDays(152);
      double[] without = shares(usual, ahead, day);
      double[] with = shares(flat, ahead, day);
      assertThat(with[0]).isGreaterThan(without[0]);
      assertThat(Arrays.copyOfRange(with, 1, with.length))
          .as("growth so far and late reinvasion")
          .containsExactly(Arrays.copyOfRange(without, 1, without.length));
    }
  }

  /** The power by which growth to come reaches a wash a month ahead, by playing it. */
  @Test
  void reachIsWhatGrowthDoesToTheForecast() {
    try (Workers workers = new Workers(2)) {
      Backtest.Report report =
          Backtest.run(
              Invented.place(),
              List.of(new Backtest.Colony("A", Invented.START, held(), List.of())),
              Priors.defaults(),
              new SeasonPosterior.SamplerSettings(1024, 3, 1),
              workers,
              Progress.NONE);
      double reach = report.marks().get(0).reach();
      double step = 0.1;
      double less = mean(Priors.defaults().with(new GrowthBias(-step, 0)), workers);
      double more = mean(Priors.defaults().with(new GrowthBias(step, 0)), workers);
      assertThat(reach).isCloseTo((more - less) / (2 * step), within(0.2 * reach));
    }
  }

  private static List<Wash> held() {
    List<Wash> washes = new ArrayList<>(Invented.four());
    washes.add(Invented.wash(122, 30, 300));
    return washes;
  }

  private static double mean(Priors priors, Workers workers) {
    return new Mean().evaluate(logs(priors, workers));
  }

  private static double variance(Priors priors, Workers workers) {
    return new Variance().evaluate(logs(priors, workers));
  }

  private static double[] logs(Priors priors, Workers workers) {
    SeasonPosterior posterior = posterior(priors, workers, 122, 1024);
    return ExpectedWashes.parts(
            posterior, posterior.past().plan(), List.of(Invented.wash(122, 0, 300)), workers)
        .stream()
        .flatMapToDouble(p -> Arrays.stream(p.means()))
        .map(ForecastBias::log)
        .toArray();
  }

  private static double[] shares(SeasonPosterior posterior, Scenario season, LocalDate day) {
    return SharedDraws.of(posterior, season, day).stream()
        .mapToDouble(SharedDraws::share)
        .toArray();
  }

  private static CountDistribution forecast(SeasonPosterior posterior, int day, Workers workers) {
    Plan plan = posterior.past().plan();
    return ExpectedWashes.of(posterior, plan, List.of(Invented.wash(day, 0, 300)), workers).get(0);
  }

  private static SeasonPosterior posterior(Priors priors, Workers workers) {
    return posterior(priors, workers, 92, 512);
  }

  private static SeasonPosterior posterior(Priors priors, Workers workers, int days, int colonies) {
    return SeasonPosterior.of(
        Invented.season(days),
        Invented.four(),
        priors,
        new SeasonPosterior.SamplerSettings(colonies, 3, 1),
        workers,
        Progress.NONE);
  }

  private static double quantile(double level) {
    return FORECAST.quantile(level) + 0.5;
  }
}
