package broodtide.fit;

import static broodtide.fit.Invented.START;
import static broodtide.fit.Invented.four;
import static broodtide.fit.Invented.place;
import static broodtide.fit.Invented.strips;
import static broodtide.fit.Invented.wash;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.wash.Interval;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Marks, skill and bias of forecasts, worked out beside them. */
class BacktestByHandTest {
  private static final SeasonPosterior.SamplerSettings LITTLE =
      new SeasonPosterior.SamplerSettings(64, 1, 3);

  /** No mites for sure. */
  private static final CountDistribution ZERO = only(0);

  private static final CountDistribution EVEN =
      CountDistribution.mixture(new double[] {4, 9, 20}, new double[] {2, 5, 9});

  private static final CountDistribution OTHER = CountDistribution.logNormalPoisson(6, 0.8);

  private static CountDistribution only(double mean) {
    return CountDistribution.mixture(new double[] {mean}, new double[] {1});
  }

  private static Wash held(String colony, LocalDate day, int mites) {
    return Wash.of(day, colony, mites, 300);
  }

  private static Backtest.Mark mark(String colony, int mites, CountDistribution forecast) {
    return new Backtest.Mark(held(colony, START, mites), forecast, OTHER, only(5), 1, false);
  }

  /** The part of the count's own probability between two levels of the forecast's. */
  private static double part(CountDistribution forecast, int count, double low, double high) {
    double from = count == 0 ? 0 : forecast.atMost(count - 1);
    double to = forecast.atMost(count);
    double inside = Math.min(to, high) - Math.max(from, low);
    return Math.max(0, inside) / (to - from);
  }

  @Test
  void countsLieInTheirPartOfTheForecast() {
    for (int count : new int[] {0, 1, 5, 9, 17, 40}) {
      Backtest.Mark m = mark("A", count, EVEN);
      for (double low = 0; low < 0.95; low += 0.1) {
        assertThat(m.within(low, low + 0.1))
            .isCloseTo(part(EVEN, count, low, low + 0.1), within(1e-12));
      }
      assertThat(m.inside(0.5)).isCloseTo(part(EVEN, count, 0.25, 0.75), within(1e-12));
    }
  }

  /** Counts to which the forecast gave no chance lie at its ends. */
  @Test
  void impossibleCountsLieAtTheEnds() {
    Backtest.Mark above = mark("A", 5, ZERO);
    assertThat(above.within(0.8, 1)).isOne();
    assertThat(above.within(0, 0.8)).isZero();
    assertThat(above.inside(0.9)).isZero();
    Backtest.Mark below = mark("A", 1, CountDistribution.logNormalPoisson(2_000, 0));
    assertThat(below.forecast().atMost(1)).isZero();
    assertThat(below.within(0, 0.2)).isOne();
    assertThat(below.within(0.2, 1)).isZero();
    assertThat(below.inside(0.9)).isZero();
  }

  /** Of two colonies either, both or the other are drawn: ends of the range are one alone. */
  @Test
  void rangesAreThoseOfColoniesDrawnAgain() {
    Backtest.Report report =
        new Backtest.Report(
            List.of(
                mark("A", 5, EVEN), mark("B", 30, EVEN), mark("A", 9, EVEN), mark("A", 12, EVEN)));
    double a =
        (part(EVEN, 5, 0.05, 0.95) + part(EVEN, 9, 0.05, 0.95) + part(EVEN, 12, 0.05, 0.95)) / 3;
    double b = part(EVEN, 30, 0.05, 0.95);
    assertThat(b).isLessThan(a);
    assertThat(report.coverage(0.9)).isCloseTo((3 * a + b) / 4, within(1e-12));
    Interval range = report.coverageRange(0.9, 7);
    assertThat(range.low()).isCloseTo(b, within(1e-12));
    assertThat(range.high()).isCloseTo(a, within(1e-12));
    assertThat(range.level()).isEqualTo(0.9);
    double[] places = report.places(5);
    for (int i = 0; i < 5; i++) {
      double sum = 0;
      for (int count : new int[] {5, 30, 9, 12}) {
        sum += part(EVEN, count, i / 5.0, (i + 1) / 5.0);
      }
      assertThat(places[i]).isCloseTo(sum, within(1e-12));
    }
  }

  @Test
  void skillIsOneLessTheRatioOfScores() {
    Backtest.Report report =
        new Backtest.Report(List.of(mark("A", 5, EVEN), mark("B", 30, EVEN), mark("A", 9, EVEN)));
    double ownA = EVEN.crpsOfLog(5) + EVEN.crpsOfLog(9);
    double otherA = OTHER.crpsOfLog(5) + OTHER.crpsOfLog(9);
    double ownB = EVEN.crpsOfLog(30);
    double otherB = OTHER.crpsOfLog(30);
    Skill skill = Skill.of(report, Backtest.Mark::noChange, 1);
    assertThat(skill.value()).isCloseTo(1 - (ownA + ownB) / (otherA + otherB), within(1e-12));
    double a = 1 - ownA / otherA;
    double b = 1 - ownB / otherB;
    assertThat(skill.range().low()).isCloseTo(Math.min(a, b), within(1e-12));
    assertThat(skill.range().high()).isCloseTo(Math.max(a, b), within(1e-12));
    assertThat(skill.range().level()).isEqualTo(0.9);
    assertThat(report.crps()).isCloseTo((ownA + ownB) / 3, within(1e-12));
    assertThat(report.crpsNoChange()).isCloseTo((otherA + otherB) / 3, within(1e-12));
    CountDistribution five = only(5);
    assertThat(report.crpsExponential())
        .isCloseTo((five.crpsOfLog(5) + five.crpsOfLog(9) + five.crpsOfLog(30)) / 3, within(1e-12));
  }

  private static double quantileLog(double level) {
    return Math.log(EVEN.quantile(level) + 0.5);
  }

  /** Each forecast adds its error over its reach; those of one year count once. */
  @Test
  void theBiasOfGrowthIsThatOfItsForecasts() {
    List<Backtest.Mark> marks = new ArrayList<>();
    int[] years = {2020, 2020, 2020, 2021, 2021, 2023};
    int[] mites = {3, 5, 12, 4, 2, 7};
    double[] reach = {1, 2, 0.5, 3, 1.5, 2.5};
    double sd = (quantileLog(0.95) - quantileLog(0.05)) / (2 * 1.6448536269514722);
    double precision = 16;
    double sum = 0;
    for (int i = 0; i < 6; i++) {
      Wash w = held("A", LocalDate.of(years[i], 8, 1), mites[i]);
      marks.add(new Backtest.Mark(w, EVEN, EVEN, EVEN, reach[i], false));
      double once = 2.0 / (1 + (years[i] == 2020 ? 3 : years[i] == 2021 ? 2 : 1));
      double error = quantileLog(0.5) - Math.log(mites[i] + 0.5);
      precision += once * reach[i] * reach[i] / (sd * sd);
      sum -= once * reach[i] * error / (sd * sd);
    }
    marks.add(new Backtest.Mark(held("B", START, 0), EVEN, EVEN, EVEN, 5, true));
    Backtest.Report report = new Backtest.Report(marks);
    GrowthBias bias = GrowthBias.of(report);
    assertThat(GrowthBias.untreated(report)).hasSize(6).isEqualTo(marks.subList(0, 6));
    assertThat(bias.log()).isCloseTo(sum / precision, within(1e-12));
    assertThat(bias.sd()).isCloseTo(1 / Math.sqrt(precision), within(1e-12));
    assertThat(bias.factor()).isCloseTo(Math.exp(bias.log()), within(1e-12));
    assertThat(bias.range().low())
        .isCloseTo(Math.exp(bias.log() - 1.6449 * bias.sd()), within(1e-4));
    assertThat(bias.range().high())
        .isCloseTo(Math.exp(bias.log() + 1.6449 * bias.sd()), within(1e-4));
    assertThat(GrowthBias.of(new Backtest.Report(marks.subList(0, 5))).none()).isFalse();
    Backtest.Report few =
        new Backtest.Report(
            List.of(marks.get(0), marks.get(1), marks.get(2), marks.get(3), marks.get(6)));
    assertThat(GrowthBias.of(few)).as("four that can tell").isEqualTo(GrowthBias.NONE);
  }

  @Test
  void aBiasMovesAndWidensWhatIsBelieved() {
    Prior usual = Unknown.GROWTH_TO_COME.usual();
    GrowthBias bias = new GrowthBias(-0.2, 0.3);
    Prior moved = bias.on(usual);
    assertThat(moved.median()).isCloseTo(usual.median() * Math.exp(-0.2), within(1e-12));
    assertThat(moved.logSd()).isCloseTo(Math.hypot(usual.logSd(), 0.3), within(1e-12));
    double own = usual.logSd() * usual.logSd();
    assertThat(bias.shared(usual, 0.6)).isCloseTo((0.6 * own + 0.09) / (own + 0.09), within(1e-12));
    assertThat(new GrowthBias(50, 0).on(usual).median()).isEqualTo(usual.max());
    assertThat(GrowthBias.NONE.none()).isTrue();
    assertThat(new GrowthBias(0, 0.1).none()).isFalse();
    assertThat(new GrowthBias(0.1, 0).none()).isFalse();
    assertThat(GrowthBias.NONE.on(usual)).isSameAs(usual);
    assertThat(GrowthBias.NONE.shared(usual, 0.6)).isEqualTo(0.6);
  }

  private static Backtest.Report run(List<Backtest.Colony> colonies, Progress progress) {
    try (Workers workers = new Workers(1)) {
      return Backtest.run(place(), colonies, Priors.defaults(), LITTLE, workers, progress);
    }
  }

  private static Backtest.Colony colony(String name, List<Wash> washes, Control... done) {
    List<Wash> own = new ArrayList<>();
    for (Wash w : washes) {
      own.add(Wash.of(w.date(), name, w.mites(), 300));
    }
    return new Backtest.Colony(name, START, own, List.of(done));
  }

  @Test
  void washesOfARecordStandByTheirDates() {
    List<Wash> turned = List.of(wash(92, 17, 300), wash(0, 2, 300), wash(31, 4, 300));
    assertThat(new Backtest.Colony("A", START, turned, List.of()).washes())
        .containsExactly(turned.get(1), turned.get(2), turned.get(0));
  }

  /** Of the last day every wash is held out; who has no earlier day is left out. */
  @Test
  void washesOfTheLastDayAreHeldOut() {
    List<Wash> five = new ArrayList<>(four());
    five.add(wash(92, 30, 300));
    List<String> told = new ArrayList<>();
    Backtest.Colony late = new Backtest.Colony("late", START.plusDays(10), List.of(), List.of());
    Backtest.Report report =
        run(
            List.of(
                colony("one day", List.of(wash(92, 3, 300), wash(92, 4, 300))),
                late,
                colony("none", List.of()),
                colony("two", five),
                colony("one", four())),
            (done, all) -> told.add(done + "/" + all));
    assertThat(report.marks())
        .extracting(m -> m.held().colony() + " " + m.held().mites())
        .containsExactly("two 17", "two 30", "one 17");
    assertThat(told).containsExactly("1/5", "2/5", "3/5", "4/5", "5/5");
    List<Wash> seen = colony("two", four().subList(0, 3)).washes();
    for (Backtest.Mark m : report.marks()) {
      List<Wash> own =
          seen.stream().map(w -> Wash.of(w.date(), m.held().colony(), w.mites(), 300)).toList();
      CountDistribution flat = Baselines.noChange(own, m.held());
      CountDistribution rising = Baselines.exponential(own, m.held());
      for (int y = 0; y < 60; y++) {
        assertThat(m.noChange().atMost(y)).isEqualTo(flat.atMost(y));
        assertThat(m.exponential().atMost(y)).isEqualTo(rising.atMost(y));
      }
      assertThat(m.treated()).isFalse();
    }
  }

  /** The strips act for 42 days; washes are those of days 61 and 92. */
  @ParameterizedTest
  @CsvSource({"20, false", "21, true", "62, true", "91, true", "92, false", "93, false"})
  void aCourseBetweenTheWashesTreats(int day, boolean treated) {
    Backtest.Report report = run(List.of(colony("A", four(), strips(day))), Progress.NONE);
    assertThat(report.marks())
        .singleElement()
        .extracting(Backtest.Mark::treated)
        .isEqualTo(treated);
  }

  /**
   * The forecast is that of the posterior of the earlier washes. Its reach is the slope of the
   * logarithm of the wash on growth to come and on growth of each season begun since, by weight.
   */
  @Test
  void theReachIsASumOfSlopes() {
    List<Wash> washes = List.of(wash(0, 1, 300), wash(270, 2, 300), wash(400, 17, 300));
    Backtest.Mark mark = run(List.of(colony("A", washes)), Progress.NONE).marks().get(0);
    try (Workers workers = new Workers(1)) {
      Wash last = Wash.of(washes.get(2).date(), "A", 17, 300);
      Scenario season = Scenario.until(place(), new Plan("done", List.of()), START, last.date());
      List<Wash> seen = colony("A", washes.subList(0, 2)).washes();
      SeasonPosterior posterior =
          SeasonPosterior.of(season, seen, Priors.defaults(), LITTLE, workers, Progress.NONE);
      ExpectedWashes.Parts parts =
          ExpectedWashes.parts(posterior, season.plan(), List.of(last), workers).get(0);
      for (int y = 0; y < 300; y += 3) {
        assertThat(mark.forecast().atMost(y)).isEqualTo(parts.distribution().atMost(y));
      }
      double reach =
          slope(posterior, Unknown.GROWTH_TO_COME, 0, parts)
              + slope(posterior, Unknown.REPRODUCTION_FACTOR, 1, parts);
      assertThat(mark.reach()).isCloseTo(Math.max(0, reach), within(1e-9)).isPositive();
    }
  }

  private static double slope(
      SeasonPosterior posterior, Unknown growth, int season, ExpectedWashes.Parts parts) {
    double[] x = posterior.draws(growth, season);
    double[] w = parts.weights();
    double all = 0;
    double meanX = 0;
    double meanY = 0;
    for (int i = 0; i < x.length; i++) {
      all += w[i];
      meanX += w[i] * x[i];
      meanY += w[i] * Math.log(parts.means()[i] + 0.5);
    }
    meanX /= all;
    meanY /= all;
    double xy = 0;
    double xx = 0;
    for (int i = 0; i < x.length; i++) {
      xy += w[i] * (x[i] - meanX) * (Math.log(parts.means()[i] + 0.5) - meanY);
      xx += w[i] * (x[i] - meanX) * (x[i] - meanX);
    }
    return xy / xx / posterior.priors().toCome(growth).logSd();
  }

  /** A colony is forecast alone as in a table of many. */
  @Test
  void othersOfTheTableHaveNoSay() {
    List<Wash> washes = List.of(wash(0, 4, 300), wash(20, 6, 300));
    List<Backtest.Colony> many = new ArrayList<>();
    for (int i = 0; i < 31; i++) {
      many.add(colony("H" + i, i == 0 ? washes : List.of(wash(0, 4, 300))));
    }
    try (Workers workers = new Workers(1)) {
      Scenario season =
          Scenario.until(place(), new Plan("done", List.of()), START, washes.get(1).date());
      SeasonPosterior own =
          SeasonPosterior.of(
              season,
              many.get(0).washes().subList(0, 1),
              Priors.defaults(),
              LITTLE,
              workers,
              Progress.NONE);
      double atMost = forecast(own, washes.get(1), workers).atMost(5);
      for (List<Backtest.Colony> table : List.of(many.subList(0, 1), many)) {
        assertThat(run(table, Progress.NONE).marks().get(0).forecast().atMost(5)).isEqualTo(atMost);
      }
    }
  }

  private static CountDistribution forecast(SeasonPosterior posterior, Wash wash, Workers workers) {
    return ExpectedWashes.of(posterior, posterior.past().plan(), List.of(wash), workers).get(0);
  }
}
