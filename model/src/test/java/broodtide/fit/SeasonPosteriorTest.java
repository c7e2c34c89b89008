package broodtide.fit;

import static broodtide.fit.Invented.START;
import static broodtide.fit.Invented.four;
import static broodtide.fit.Invented.posterior;
import static broodtide.fit.Invented.season;
import static broodtide.fit.Invented.strips;
import static broodtide.fit.Invented.wash;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Plan;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** What a posterior does with ordinary and odd records. */
class SeasonPosteriorTest {
  /** Unknowns of every colony that washes can teach; those of courses follow. */
  private static final int COMMON = 6;

  private static final Workers TWO = new Workers(2);

  @AfterAll
  static void close() {
    TWO.close();
  }

  @Test
  void anyNumberOfThreadsGivesTheSameBytes() {
    SeasonPosterior two = posterior(season(120, strips(40)), four(), 300, 4, TWO);
    for (int threads : new int[] {1, 5}) {
      try (Workers others = new Workers(threads)) {
        SeasonPosterior same = posterior(season(120, strips(40)), four(), 300, 4, others);
        assertThat(same.sample().z()).isDeepEqualTo(two.sample().z());
        assertThat(same.sample().logEvidence()).isEqualTo(two.sample().logEvidence());
        assertThat(same.members()).isEqualTo(two.members());
      }
    }
    SeasonPosterior other = posterior(season(120, strips(40)), four(), 300, 5, TWO);
    assertThat(other.members()).isNotEqualTo(two.members());
  }

  @Test
  void noWashGivesThePrior() {
    SeasonPosterior p = posterior(season(60), List.of(), 1024, 1, TWO);
    for (UnknownSummary s : p.summaries()) {
      assertThat(s.shrinkage()).isCloseTo(0, within(0.02));
      assertThat(s.median() / s.prior().median()).isCloseTo(1, within(0.02));
      double high = Math.exp(1.6449 * s.prior().logSd());
      assertThat(s.high() / s.prior().median() / high).isCloseTo(1, within(0.05));
    }
    assertThat(ExpectedWashes.checks(p, TWO)).isEmpty();
    assertThat(Agreement.of(p, TWO).contradicts()).isFalse();
  }

  /** Success to come must not follow from what a particle knows of the past. */
  @Test
  void luckToComeIsApartFromThePast() {
    SeasonPosterior p = posterior(season(60), List.of(), 2048, 1, TWO);
    Scenario treated = season(60, strips(10), strips(55));
    EnsembleRun run = p.run(treated, Set.of(Quantity.INFESTATION), TWO, Progress.NONE);
    double[] before = run.values(Quantity.INFESTATION, START);
    double[] after = run.values(Quantity.INFESTATION, START.plusDays(50));
    double[] fall = new double[before.length];
    for (int i = 0; i < fall.length; i++) {
      before[i] = Math.log(before[i]);
      fall[i] = Math.log(after[i]) - before[i];
    }
    double r =
        new org.apache.commons.math3.stat.correlation.SpearmansCorrelation()
            .correlation(before, fall);
    assertThat(Math.abs(r)).isLessThan(0.25);
  }

  /** Seasons share the days with which they begin; none may show in another. */
  @Test
  void seasonsDoNotHangOnWhatWasPlayedBefore() {
    List<Scenario> seasons =
        List.of(
            season(200, strips(5)),
            season(200, strips(5), strips(150)),
            season(200, strips(5), strips(100)),
            season(160, strips(5), strips(102)),
            season(200, strips(5), strips(100), strips(160)),
            season(40, strips(5)));
    SeasonPosterior one = record();
    for (Set<Quantity> kept :
        List.of(Set.of(Quantity.ADULTS), Set.of(Quantity.ADULTS, Quantity.INFESTATION))) {
      for (Scenario season : seasons) {
        EnsembleRun run = one.run(season, kept, TWO, Progress.NONE);
        EnsembleRun alone = record().run(season, kept, TWO, Progress.NONE);
        for (Quantity quantity : kept) {
          for (int m = 0; m < 64; m++) {
            assertThat(run.series(quantity, m)).isEqualTo(alone.series(quantity, m));
          }
        }
      }
    }
  }

  private static SeasonPosterior record() {
    return posterior(season(60, strips(5)), List.of(wash(30, 12, 300)), 64, 1, TWO);
  }

  /** A course given late in the list but early in the year keeps its own success. */
  @Test
  void orderOfTheRecordPlaysNoPart() {
    List<Wash> washes = List.of(wash(0, 12, 300), wash(45, 20, 300), wash(70, 30, 300));
    SeasonPosterior early = posterior(season(200, strips(5), strips(150)), washes, 2048, 1, TWO);
    SeasonPosterior late = posterior(season(200, strips(150), strips(5)), washes, 2048, 1, TWO);
    double own = early.summaries().get(COMMON).median();
    assertThat(own).isLessThan(0.75);
    assertThat(late.summaries().get(COMMON + 1).median() / own).isCloseTo(1, within(0.1));
    assertThat(late.summaries().get(COMMON).median()).isCloseTo(1, within(0.1));
    double forecast = median(early, 60);
    assertThat(median(late, 60) / forecast).isCloseTo(1, within(0.1));
  }

  private static double median(SeasonPosterior p, int day) {
    Wash next = wash(day, 0, 10_000);
    return ExpectedWashes.of(p, p.past().plan(), List.of(next), TWO).get(0).quantile(0.5);
  }

  @Test
  void oneWashMovesTheStartThere() {
    SeasonPosterior p = posterior(season(30), List.of(wash(0, 15, 300)), 1024, 1, TWO);
    // 15 in 300 at 90 % recovery is 5.6 per 100
    UnknownSummary start = p.summaries().get(0);
    assertThat(start.median()).isBetween(3.5, 7.0);
    assertThat(start.low()).isLessThan(5.6);
    assertThat(start.high()).isGreaterThan(5.6);
    assertThat(start.shrinkage()).isGreaterThan(0.7);
  }

  @Test
  void washesOfNothingGiveFewMites() {
    List<Wash> none = List.of(wash(0, 0, 300), wash(30, 0, 310), wash(60, 0, 300));
    SeasonPosterior p = posterior(season(90), none, 1024, 1, TWO);
    assertThat(p.summaries().get(0).high()).isLessThan(1.0);
    assertThat(p.summaries().get(0).low()).isPositive();
    assertThat(ExpectedWashes.checks(p, TWO)).noneMatch(ExpectedWashes.Check::surprising);
  }

  @Test
  void twoWashesOnOneDayAndEqualWashesBothCount() {
    Wash a = wash(0, 6, 300);
    double one = width(List.of(a));
    double two = width(List.of(a, wash(0, 5, 290)));
    double twice = width(List.of(a, a));
    assertThat(two).isLessThan(0.9 * one);
    assertThat(twice).isLessThan(0.9 * one);
  }

  private static double width(List<Wash> washes) {
    UnknownSummary s = posterior(season(30), washes, 2048, 1, TWO).summaries().get(0);
    return Math.log(s.high() / s.low());
  }

  @Test
  void orderOfWashesPlaysNoPart() {
    List<Wash> turned = IntStream.rangeClosed(1, 4).mapToObj(i -> four().get(4 - i)).toList();
    assertThat(posterior(season(120), turned, 128, 1, TWO).members())
        .isEqualTo(posterior(season(120), four(), 128, 1, TWO).members());
  }

  @Test
  void washesOutsideTheRecordAreRefused() {
    assertThatThrownBy(() -> posterior(season(30), List.of(wash(-1, 3, 300)), 64, 1, TWO))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("the wash of 2025-04-30 lies outside the record, 2025-05-01 to 2025-05-31");
    assertThatThrownBy(() -> posterior(season(30), List.of(wash(31, 3, 300)), 64, 1, TWO))
        .hasMessageContaining("2025-06-01");
  }

  /** A colony of a hundred bees cannot give a sample of a thousand. */
  @Test
  void impossibleWashIsNamed() {
    Priors usual = Priors.defaults();
    Priors tiny =
        usual
            .with(Unknown.LAYING_FACTOR, usual.of(Unknown.LAYING_FACTOR).with(0.1, 0.01))
            .with(Unknown.START_SIZE, usual.of(Unknown.START_SIZE).with(0.1, 0.01));
    List<Wash> washes = List.of(wash(0, 1, 50), wash(10, 7, 10_000), wash(20, 1, 50));
    assertThatThrownBy(
            () ->
                SeasonPosterior.of(
                    season(30),
                    washes,
                    tiny,
                    new SeasonPosterior.SamplerSettings(64, 1, 1),
                    TWO,
                    Progress.NONE))
        .isInstanceOf(Unexplained.class)
        .hasMessageContaining("colony \"A\"")
        .hasMessageContaining("2025-05-11, 7 mites in 10000 bees")
        .hasMessageContaining("Check its counts");
  }

  @Test
  void strengthNoteNarrowsTheSize() {
    Wash plain = wash(0, 3, 300);
    Wash noted =
        new Wash(
            plain.date(),
            "A",
            3,
            plain.bees(),
            plain.method(),
            plain.frame(),
            "",
            java.util.OptionalDouble.of(12));
    UnknownSummary before = posterior(season(9), List.of(plain), 2048, 1, TWO).summaries().get(3);
    UnknownSummary after = posterior(season(9), List.of(noted), 2048, 1, TWO).summaries().get(3);
    assertThat(after.shrinkage()).isGreaterThan(before.shrinkage() + 0.3);
  }

  @Test
  void seasonsMustBeginLikeThePast() {
    SeasonPosterior p = posterior(season(30), List.of(wash(0, 3, 300)), 64, 1, TWO);
    Scenario other = new Scenario(Invented.place(), Plan.waiting("w"), START.plusDays(1), 30);
    assertThatThrownBy(() -> p.run(other, Set.of(Quantity.MITES), TWO, Progress.NONE))
        .hasMessageContaining("starts on 2025-05-02");
  }

  /**
   * Washes cannot teach how many mites carry virus: what is believed of it stays the prior, it is
   * no answer, and colonies differ by it.
   */
  @Test
  void infectivityStaysThePrior() {
    SeasonPosterior p = posterior(season(120), four(), 4096, 5, TWO);
    double mean = Arrays.stream(p.sample().z()).mapToDouble(z -> z[COMMON]).average().orElseThrow();
    assertThat(mean).isBetween(-0.2, 0.2);
    assertThat(p.summaries()).hasSize(COMMON);
    assertThat(p.members().stream().mapToDouble(SimulatedColony::infectivity).distinct().count())
        .isGreaterThan(2000);
    assertThat(p.summaries()).noneMatch(s -> s.unknown() == Unknown.INFECTIVITY);
  }

  /**
   * At the usual size the mean of every unknown, and the median forecast four weeks ahead, differ
   * between seeds by a standard deviation of less than 2 %.
   */
  @Test
  void meansAreStableOverSeeds() {
    int seeds = 8;
    Scenario past = season(120);
    List<Prior> unknowns =
        SeasonPosterior.layout(past, START.plusDays(92)).places().stream()
            .map(place -> Priors.defaults().at(place, List.of()))
            .toList();
    double[][] values = new double[unknowns.size() + 1][seeds];
    for (int s = 0; s < seeds; s++) {
      SeasonPosterior p = posterior(past, four(), 4096, 70 + s, TWO);
      for (double[] z : p.sample().z()) {
        for (int d = 0; d < z.length; d++) {
          values[d][s] += unknowns.get(d).at(z[d]) / 4096;
        }
      }
      EnsembleRun run = p.run(past, Set.of(Quantity.INFESTATION), TWO, Progress.NONE);
      values[unknowns.size()][s] = run.quantiles(Quantity.INFESTATION, 120, 0.5)[0];
    }
    for (double[] of : values) {
      double mean = Arrays.stream(of).average().orElseThrow();
      double squares = Arrays.stream(of).map(v -> (v - mean) * (v - mean)).sum();
      assertThat(Math.sqrt(squares / (seeds - 1)) / mean).isLessThan(0.02);
    }
  }
}
