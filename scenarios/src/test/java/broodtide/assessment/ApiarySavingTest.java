package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.assessment.HiveChance.Ranked;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** Losses that a plan saves: the same simulated colonies with it and without it. */
class ApiarySavingTest {
  private static final int MEMBERS = 200;

  @Test
  void aPlanThatChangesNothingSavesNothingHoweverManyAreLost() {
    List<ApiarySaving.Hive> hives =
        IntStream.range(0, 6).mapToObj(i -> hive("H" + i, 0.5, 0.5)).toList();
    ApiarySaving saving = ApiarySaving.of(hives);
    assertThat(saving.mean()).isZero();
    assertThat(saving.low()).isZero();
    assertThat(saving.high()).isZero();
    assertThat(ApiarySaving.of(List.of()).high()).isZero();
  }

  /** Of hives that share nothing each is saved by itself. */
  @Test
  void hivesThatShareNothingAreSavedOneByOne() {
    List<ApiarySaving.Hive> hives =
        IntStream.range(0, 9).mapToObj(i -> hive("H" + i, 0.7, 0.3)).toList();
    ApiarySaving saving = ApiarySaving.of(hives);
    BinomialDistribution binomial = new BinomialDistribution(null, 9, 0.4);
    assertThat(saving.mean()).isCloseTo(3.6, within(1e-9));
    assertThat(saving.low()).isEqualTo(binomial.inverseCumulativeProbability(0.05));
    assertThat(saving.median()).isEqualTo(binomial.inverseCumulativeProbability(0.5));
    assertThat(saving.high()).isEqualTo(binomial.inverseCumulativeProbability(0.95));
  }

  @Test
  void aPlanThatKillsCountsBelowNothing() {
    ApiarySaving saving = ApiarySaving.of(List.of(hive("A", 0, 1), hive("B", 0, 1)));
    assertThat(saving.mean()).isEqualTo(-2);
    assertThat(saving.low()).isEqualTo(-2);
    assertThat(saving.high()).isEqualTo(-2);
  }

  /** Hives are lost in one half of seasons, and the plan saves all of them or none. */
  @Test
  void whatIsSharedSpreadsWhatIsSaved() {
    List<ApiarySaving.Hive> apart = new ArrayList<>();
    List<ApiarySaving.Hive> together = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      apart.add(seasonal("H" + i, "growth of " + i));
      together.add(seasonal("H" + i, "growth"));
    }
    ApiarySaving alone = ApiarySaving.of(apart);
    ApiarySaving shared = ApiarySaving.of(together);
    assertThat(shared.mean()).isEqualTo(alone.mean()).isEqualTo(4);
    assertThat(shared.high() - shared.low()).isGreaterThan(alone.high() - alone.low());
    Collections.reverse(together);
    assertThat(ApiarySaving.of(together).low()).isEqualTo(shared.low());
  }

  /** Colonies read from washes: what is saved is far surer than two counts of losses apart. */
  @Test
  void theSameSeasonsWithAndWithoutAPlan() {
    ColonyCase c = Invented.colony().throughWinter();
    List<ApiarySaving.Hive> hives = new ArrayList<>();
    List<HiveChance> waiting = new ArrayList<>();
    List<HiveChance> with = new ArrayList<>();
    try (Workers workers = new Workers(2)) {
      SeasonPosterior posterior = Invented.posterior(c, 256, workers);
      List<Plan> plans = UsualPlans.of(c);
      Comparison comparison = Comparison.of(c, posterior, plans, workers, Progress.NONE);
      PlanRun best =
          comparison.runs().stream()
              .filter(r -> r.plan().equals(comparison.decision().best().plan()))
              .findFirst()
              .orElseThrow();
      HiveChance lost = HiveChance.lost(posterior, comparison.reference()).orElseThrow();
      HiveChance less = HiveChance.lost(posterior, best).orElseThrow();
      for (int i = 0; i < 6; i++) {
        hives.add(new ApiarySaving.Hive(lost, less));
        waiting.add(lost);
        with.add(less);
      }
      assertThat(mitesCountedByHand(comparison.reference()))
          .isCloseTo(comparison.reference().mitesWhenLost(), within(1e-3));
      assertThat(best.mitesWhenLost()).isLessThan(comparison.reference().mitesWhenLost());
    }
    ApiarySaving saving = ApiarySaving.of(hives);
    ApiaryCount before = ApiaryCount.of(waiting);
    ApiaryCount after = ApiaryCount.of(with);
    assertThat(saving.mean()).isCloseTo(before.mean() - after.mean(), within(1e-9)).isPositive();
    assertThat(saving.low()).isNotNegative();
    assertThat(saving.high() - saving.low())
        .isLessThan(before.high() - after.low() - (before.low() - after.high()));
  }

  /** Day by day, by the weights of living colonies. */
  private static double mitesCountedByHand(PlanRun run) {
    LocalDate low = run.springLow().orElseThrow().day();
    double sum = 0;
    for (LocalDate d = run.colony().start(); d.isBefore(low); d = d.plusDays(1)) {
      if (d.isBefore(run.knownAlive())) {
        continue;
      }
      double[] today = run.living(d);
      double[] tomorrow = run.living(d.plusDays(1));
      double[] mites = run.run().values(Quantity.MITES, d);
      for (int m = 0; m < mites.length; m++) {
        sum += (today[m] - tomorrow[m]) * mites[m] / mites.length;
      }
    }
    return sum;
  }

  private static ApiarySaving.Hive hive(String name, double waiting, double with) {
    return new ApiarySaving.Hive(sure(name, waiting), sure(name, with));
  }

  private static HiveChance sure(String name, double own) {
    return new HiveChance(name, "", own, List.of(), (weights, bees, others) -> own);
  }

  /** Lost in the upper half of seasons if it waits, never with the plan. */
  private static ApiarySaving.Hive seasonal(String name, String what) {
    short[] ranks = new short[MEMBERS];
    boolean[] lost = new boolean[MEMBERS];
    double[] alike = new double[MEMBERS];
    for (int i = 0; i < MEMBERS; i++) {
      ranks[i] = (short) i;
      lost[i] = i >= MEMBERS / 2;
      alike[i] = 1;
    }
    List<Ranked> shared = List.of(new Ranked(what, 0.64, ranks));
    return new ApiarySaving.Hive(
        new HiveChance(name, "", 0.5, shared, new Counted.Over(alike, lost)),
        new HiveChance(name, "", 0, shared, new Counted.Over(alike, new boolean[MEMBERS])));
  }
}
