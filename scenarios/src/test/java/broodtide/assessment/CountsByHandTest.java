package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.assessment.HiveChance.Ranked;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Survival;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.SharedDraws;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Counts of small yards, gone through colony by colony and outcome by outcome. */
class CountsByHandTest {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
  private static final int POINTS = 256;
  private static final LocalDate FROM = LocalDate.of(2026, 8, 1);
  private static final LocalDate TO = LocalDate.of(2027, 3, 20);

  /** A hive that shares nothing but its yard's need of bees. */
  private static HiveChance hive(String colony, String yard, double own, Counted counted) {
    return new HiveChance(colony, yard, own, List.of(), counted);
  }

  private static double logistic(double x) {
    return 1 / (1 + Math.exp(-x));
  }

  /** The luck in bees and in other losses that a hive is asked about. */
  private static List<double[]> seen(HiveChance hive) {
    List<double[]> seen = new ArrayList<>();
    HiveChance spy =
        new HiveChance(
            hive.colony(),
            hive.yard(),
            hive.chance(),
            List.of(),
            (w, bees, others) -> {
              seen.add(new double[] {bees, others});
              return 0.5;
            });
    new YardPoints(List.of(spy)).fitted(spy);
    return seen;
  }

  @Test
  void pointsAreTheMiddlesOfEquallyLikelyParts() {
    List<double[]> seen = seen(hive("A", "", 0.5, (w, b, o) -> 0.5));
    assertThat(seen).hasSize(POINTS);
    for (int c = 0; c < 2; c++) {
      int at = c;
      double[] parts =
          seen.stream().mapToDouble(p -> NORMAL.cumulativeProbability(p[at])).sorted().toArray();
      for (int k = 0; k < POINTS; k++) {
        assertThat(parts[k]).isCloseTo((k + 0.5) / POINTS, within(1e-9));
      }
    }
    assertThat(seen.stream().filter(p -> p[0] == p[1]).count())
        .as("the two are not one")
        .isLessThan(POINTS / 4);
  }

  /**
   * A member of rank r counts as much as its place in what is shared is likely at a point: the
   * normal density around the shared part, over that of all. From two members the shared part can
   * be told, and the others must agree with it.
   */
  @Test
  void membersCountByTheirRanks() {
    short[] ranks = {4, 0, 3, 1, 2};
    double share = 0.36;
    List<double[]> weights = new ArrayList<>();
    HiveChance hive =
        new HiveChance(
            "A",
            "",
            0.5,
            List.of(new Ranked("growth", share, ranks)),
            (w, bees, others) -> {
              weights.add(w.clone());
              return 0.5;
            });
    new YardPoints(List.of(hive)).fitted(hive);
    assertThat(weights).hasSize(POINTS);
    double[] q =
        IntStream.range(0, 5)
            .mapToDouble(i -> NORMAL.inverseCumulativeProbability((ranks[i] + 0.5) / 5))
            .toArray();
    double[] told = new double[POINTS];
    for (int p = 0; p < POINTS; p++) {
      double[] w = weights.get(p);
      double ratio = Math.log(w[0] / w[1]);
      // log w is q^2 / 2 - (q - 0.6 u)^2 / 1.28, so two of them differ by a line in u
      double squares = (q[0] * q[0] - q[1] * q[1]) * (0.5 - 1 / 1.28);
      double u = (ratio - squares) / (2 * 0.6 * (q[0] - q[1]) / 1.28);
      for (int i = 0; i < 5; i++) {
        double expected =
            0.5 * (q[i] * q[i] - q[1] * q[1])
                - (Math.pow(q[i] - 0.6 * u, 2) - Math.pow(q[1] - 0.6 * u, 2)) / 1.28;
        assertThat(Math.log(w[i] / w[1])).isCloseTo(expected, within(1e-4));
      }
      assertThat(Arrays.stream(w).max().orElseThrow()).isEqualTo(1);
      told[p] = NORMAL.cumulativeProbability(u);
    }
    Arrays.sort(told);
    for (int k = 0; k < POINTS; k++) {
      assertThat(told[k]).isCloseTo((k + 0.5) / POINTS, within(1e-4));
    }
  }

  /** What is shared of two things multiplies, and each thing has a point of its own. */
  @Test
  void twoSharedThingsMultiply() {
    short[] first = {0, 1, 2};
    short[] second = {2, 0, 1};
    List<double[]> both = weights(new Ranked("a", 0.3, first), new Ranked("b", 0.5, second));
    List<double[]> one = weights(new Ranked("a", 0.3, first), new Ranked("b", 0, second));
    List<double[]> other = weights(new Ranked("a", 0, first), new Ranked("b", 0.5, second));
    Set<Double> ratios = new HashSet<>();
    for (int p = 0; p < POINTS; p++) {
      for (int i = 0; i < 3; i++) {
        assertThat(both.get(p)[i]).isCloseTo(one.get(p)[i] * other.get(p)[i], within(1e-5));
      }
      ratios.add(one.get(p)[0] / one.get(p)[1] - other.get(p)[1] / other.get(p)[2]);
    }
    assertThat(ratios).hasSizeGreaterThan(POINTS / 2);
  }

  private static List<double[]> weights(Ranked... shared) {
    List<double[]> out = new ArrayList<>();
    HiveChance hive =
        new HiveChance(
            "A",
            "",
            0.5,
            List.of(shared),
            (w, bees, others) -> {
              out.add(w.clone());
              return 0.5;
            });
    new YardPoints(List.of(hive)).fitted(hive);
    return out;
  }

  /** Chances move together on the logit until their mean is the hive's own. */
  @ParameterizedTest
  @ValueSource(doubles = {0.02, 0.3, 0.77, 0.999})
  void aHiveKeepsItsOwnChance(double own) {
    double[] chances = {0.1, 0.5, 0.9, 0.3};
    double[] fitted = YardPoints.fitted(chances, own);
    assertThat(Arrays.stream(fitted).average().orElseThrow()).isCloseTo(own, within(1e-9));
    double shift = Math.log(fitted[0] / (1 - fitted[0])) - Math.log(0.1 / 0.9);
    for (int i = 0; i < 4; i++) {
      assertThat(fitted[i])
          .isCloseTo(logistic(Math.log(chances[i] / (1 - chances[i])) + shift), within(1e-9));
    }
  }

  @Test
  void whatIsCertainStaysCertain() {
    double[] chances = {0.1, 0.5};
    assertThat(YardPoints.fitted(chances, 0)).containsExactly(0, 0);
    assertThat(YardPoints.fitted(chances, 1)).containsExactly(1, 1);
    assertThat(YardPoints.fitted(chances, 1e-9)).containsExactly(1e-9, 1e-9);
    // chances of nothing and of all are as near to both as a billionth
    double[] ends = YardPoints.fitted(new double[] {0, 1}, 0.5);
    assertThat(ends[0]).isCloseTo(1e-9, within(1e-11));
    assertThat(ends[1]).isCloseTo(1 - 1e-9, within(1e-11));
  }

  @Test
  void yardsAndTheirHivesStandInOrder() {
    List<HiveChance> hives = new ArrayList<>();
    for (String name : List.of("west B", "east C", "west A", "east D", "B")) {
      String[] parts = name.split(" ", -1);
      hives.add(
          hive(parts[parts.length - 1], parts.length > 1 ? parts[0] : "", 0.5, (w, b, o) -> 0.5));
    }
    List<List<HiveChance>> yards = YardPoints.yards(hives, h -> h);
    assertThat(yards.stream().map(y -> y.stream().map(HiveChance::colony).toList()))
        .containsExactly(List.of("B"), List.of("C", "D"), List.of("A", "B"));
  }

  private static final DoubleUnaryOperator[] BY_BEES = {
    b -> logistic(b - 1), b -> logistic(-0.5 * b), b -> 0.3, b -> logistic(2 * b + 1)
  };

  /** All sixteen outcomes of four hives whose chances rise and fall with the need of bees. */
  @Test
  void theCountOfAYardIsTheSumOverItsOutcomes() {
    double[] own = {0.2, 0.55, 0.3, 0.8};
    List<HiveChance> hives = new ArrayList<>();
    for (int h = 0; h < 4; h++) {
      DoubleUnaryOperator chance = BY_BEES[h];
      hives.add(hive("H" + h, "yard", own[h], (w, b, o) -> chance.applyAsDouble(b)));
    }
    double[][] at = new double[4][];
    List<double[]> points = seen(hives.get(0));
    for (int h = 0; h < 4; h++) {
      DoubleUnaryOperator chance = BY_BEES[h];
      at[h] =
          YardPoints.fitted(
              points.stream().mapToDouble(p -> chance.applyAsDouble(p[0])).toArray(), own[h]);
    }
    double[] expected = new double[5];
    for (int p = 0; p < POINTS; p++) {
      for (int lost = 0; lost < 16; lost++) {
        double chance = 1;
        for (int h = 0; h < 4; h++) {
          chance *= (lost >> h & 1) == 1 ? at[h][p] : 1 - at[h][p];
        }
        expected[Integer.bitCount(lost)] += chance / POINTS;
      }
    }
    ApiaryCount count = ApiaryCount.of(hives);
    assertThat(count.distribution()).containsExactly(expected, within(1e-12));
    assertThat(count.hives()).isEqualTo(4);
    assertThat(count.mean()).isCloseTo(1.85, within(1e-12));
    double sum = 0;
    for (int k = 0; k < 5; k++) {
      int most = k;
      assertThat(count.quantile(sum + expected[k] / 2)).isEqualTo(most);
      sum += expected[k];
    }
    assertThat(count.median()).isEqualTo(count.quantile(0.5));
    assertThat(count.low()).isEqualTo(count.quantile(0.05));
    assertThat(count.high()).isEqualTo(count.quantile(0.95));
  }

  @Test
  void oneHiveIsCountedOrNot() {
    ApiaryCount count = ApiaryCount.of(List.of(hive("A", "", 0.2, (w, b, o) -> logistic(b))));
    assertThat(count.distribution()).containsExactly(0.8, 0.2);
    ApiarySaving saving =
        ApiarySaving.of(
            List.of(
                new ApiarySaving.Hive(
                    hive("A", "", 1, (w, b, o) -> 1), hive("A", "", 0, (w, b, o) -> 0)),
                new ApiarySaving.Hive(
                    hive("B", "", 1, (w, b, o) -> 1), hive("B", "", 0, (w, b, o) -> 0))));
    assertThat(saving.median()).isEqualTo(2);
  }

  /** Sixty-four simulated colonies: what a count keeps of each, and its rank in what is shared. */
  @Test
  void aHiveKeepsWhatItsRunsSay() {
    ColonyCase c = Invented.colony().throughWinter().in("Ridge");
    try (Workers workers = new Workers(1)) {
      SeasonPosterior posterior = Invented.posterior(c, 64, workers);
      Plan wait = Plan.waiting("wait");
      PlanRun run = Comparison.of(c, posterior, List.of(wait), workers, Progress.NONE).reference();
      LocalDate low = run.springLow().orElseThrow().day();
      double threshold = c.thresholdOn(c.now()).orElseThrow();
      HiveChance over = HiveChance.over(posterior, run, c.now()).orElseThrow();
      assertThat(over.colony()).isEqualTo("A");
      assertThat(over.yard()).isEqualTo("Ridge");
      assertThat(over.chance()).isEqualTo(run.chanceOver(threshold, c.now()));
      Counted.Over counted = (Counted.Over) over.seasons().counted();
      assertThat(counted.living()).containsExactly(run.living(c.now()));
      double[] infestation = run.infestation(c.now());
      for (int m = 0; m < 64; m++) {
        assertThat(counted.over()[m]).isEqualTo(Decision.over(infestation[m], threshold));
      }
      ranked(over, SharedDraws.of(posterior, run.run().scenario(), c.now()));
      HiveChance lost = HiveChance.lost(posterior, run).orElseThrow();
      assertThat(lost.chance()).isEqualTo(run.shareLost(low));
      Counted.Lost dead = (Counted.Lost) lost.seasons().counted();
      assertThat(dead.from()).isEqualTo(run.knownAlive());
      assertThat(dead.day()).isEqualTo(low);
      double[] then = run.run().values(Quantity.ADULTS, dead.from());
      double[] least = run.run().least(Quantity.ADULTS, dead.from(), low);
      for (int m = 0; m < 64; m++) {
        assertThat((double) dead.then()[m]).isEqualTo(then[m]);
        assertThat((double) dead.least()[m]).isEqualTo(least[m]);
      }
      ranked(lost, SharedDraws.of(posterior, run.run().scenario(), low));
      PlanRun shorter = run.upTo(c.until(low.minusDays(1)));
      assertThat(HiveChance.lost(posterior, shorter)).isEmpty();
    }
  }

  /** The rank of a draw is how many are smaller. */
  private static void ranked(HiveChance hive, List<SharedDraws> shared) {
    assertThat(shared).isNotEmpty();
    assertThat(hive.shared()).hasSameSizeAs(shared);
    for (int k = 0; k < shared.size(); k++) {
      assertThat(hive.shared().get(k).what()).isEqualTo(shared.get(k).what());
      assertThat(hive.shared().get(k).share()).isEqualTo(shared.get(k).share());
      double[] draws = shared.get(k).draws();
      short[] ranks = hive.seasons().ranks().get(k);
      assertThat(ranks).hasSize(64);
      for (int m = 0; m < 64; m++) {
        double own = draws[m];
        long smaller = Arrays.stream(draws).limit(64).filter(d -> d < own).count();
        long before = Arrays.stream(draws).limit(m).filter(d -> d == own).count();
        assertThat((long) ranks[m]).isEqualTo(smaller + before);
      }
    }
  }

  @Test
  void quantilesAreTheFirstCountThatReachesThem() {
    double[] d = {0.25, 0.25, 0.5};
    assertThat(ApiaryCount.quantile(d, 0)).isZero();
    assertThat(ApiaryCount.quantile(d, 0.25)).isZero();
    assertThat(ApiaryCount.quantile(d, 0.26)).isEqualTo(1);
    assertThat(ApiaryCount.quantile(d, 0.5)).isEqualTo(1);
    assertThat(ApiaryCount.quantile(d, 0.51)).isEqualTo(2);
    assertThat(ApiaryCount.quantile(d, 1)).isEqualTo(2);
    assertThat(ApiaryCount.together(new double[] {0.5, 0.5}, new double[] {0.25, 0, 0.75}))
        .containsExactly(0.125, 0.125, 0.375, 0.375);
  }

  /** Many hives: what is left out of the ends is nothing that could be seen. */
  @Test
  void aLargeYardStillAddsUp() {
    List<HiveChance> hives = new ArrayList<>();
    for (int h = 0; h < 300; h++) {
      hives.add(hive("H" + h, "", h % 2 == 0 ? 0.001 : 0.999, (w, b, o) -> logistic(3 * b)));
    }
    double[] d = ApiaryCount.of(hives).distribution();
    assertThat(Arrays.stream(d).sum()).isCloseTo(1, within(1e-12));
    double mean = IntStream.range(0, 301).mapToDouble(k -> k * d[k]).sum();
    assertThat(mean).isCloseTo(150, within(1e-8));
    assertThat(Arrays.stream(d).min().orElseThrow()).isNotNegative();
  }

  /**
   * Hives that are saved, brought to death, or neither; at each point each by itself. What the
   * seasons lack of a hive's own saving goes to saved or to brought.
   */
  @ParameterizedTest
  @ValueSource(doubles = {0.1, -0.1, 0})
  void whatAPlanSavesIsTheSumOverItsOutcomes(double more) {
    double[] waiting = {0.6, 0.3 + more, 0.45};
    double[] with = {0.25, 0.3, 0.4};
    List<ApiarySaving.Hive> hives = new ArrayList<>();
    for (int h = 0; h < 3; h++) {
      DoubleUnaryOperator lost = BY_BEES[h];
      DoubleUnaryOperator less = BY_BEES[h + 1];
      hives.add(
          new ApiarySaving.Hive(
              hive("H" + h, "yard", waiting[h], (w, b, o) -> lost.applyAsDouble(b)),
              hive("H" + h, "yard", with[h], (w, b, o) -> less.applyAsDouble(b))));
    }
    List<double[]> points = seen(hives.get(0).with());
    double[][] saved = new double[3][POINTS];
    double[][] brought = new double[3][POINTS];
    for (int h = 0; h < 3; h++) {
      for (int p = 0; p < POINTS; p++) {
        double change =
            BY_BEES[h].applyAsDouble(points.get(p)[0])
                - BY_BEES[h + 1].applyAsDouble(points.get(p)[0]);
        saved[h][p] = Math.max(0, change);
        brought[h][p] = Math.max(0, -change);
      }
      double save = Arrays.stream(saved[h]).sum() / POINTS;
      double bring = Arrays.stream(brought[h]).sum() / POINTS;
      double lacks = waiting[h] - with[h] - (save - bring);
      saved[h] = YardPoints.fitted(saved[h], save + Math.max(0, lacks));
      brought[h] = YardPoints.fitted(brought[h], bring + Math.max(0, -lacks));
    }
    double[] expected = new double[7];
    for (int p = 0; p < POINTS; p++) {
      for (int outcome = 0; outcome < 27; outcome++) {
        double chance = 1;
        int net = 3;
        for (int h = 0, o = outcome; h < 3; h++, o /= 3) {
          double s = saved[h][p];
          double b = Math.min(brought[h][p], 1 - s);
          chance *= o % 3 == 0 ? b : o % 3 == 1 ? 1 - s - b : s;
          net += o % 3 - 1;
        }
        expected[net] += chance / POINTS;
      }
    }
    ApiarySaving saving = ApiarySaving.of(hives);
    double sum = 0;
    for (int k = 0; k < 7; k++) {
      if (expected[k] > 1e-9) {
        assertThat(saving.quantile(sum + expected[k] / 2)).isEqualTo(k - 3);
        assertThat(saving.quantile(sum + expected[k] * 0.999)).isEqualTo(k - 3);
        assertThat(saving.quantile(sum + expected[k] * 0.001)).isEqualTo(k - 3);
      }
      sum += expected[k];
    }
    assertThat(saving.mean()).isCloseTo(0.4 + more, within(1e-12));
    assertThat(saving.low()).isEqualTo(saving.quantile(0.05));
    assertThat(saving.median()).isEqualTo(saving.quantile(0.5));
    assertThat(saving.high()).isEqualTo(saving.quantile(0.95));
  }

  @Test
  void thoseOverAreCountedAmongTheLiving() {
    Counted over = new Counted.Over(new double[] {1, 0.5, 0}, new boolean[] {true, false, true});
    // 2 of 2 + 3 / 2
    assertThat(over.at(new double[] {2, 3, 9}, 0, 0)).isCloseTo(2 / 3.5, within(1e-12));
    assertThat(over.at(new double[] {0, 0, 1}, 0, 0)).isZero();
    Counted less = (w, b, o) -> 0.4;
    assertThat(over.only(less, new double[] {1, 2, 0}, 0, 0)).isCloseTo(0.1, within(1e-12));
    assertThat(less.only(over, new double[] {1, 2, 0}, 0, 0)).isZero();
  }

  private static Counted.Lost lost(Survival survival, float... least) {
    return Counted.Lost.of(survival, FROM, TO, new float[] {20_000, 9_000, 14_000}, least);
  }

  /** Lost are those that had enough bees and have not, or that something else takes. */
  @Test
  void theLostAreThoseThatAreNotThereAnyMore() {
    Survival survival = Survival.in(Shipped.model("temperate"));
    double[] w = {1, 2, 0.5};
    double bees = 0.4;
    double others = -0.7;
    double[] then = {20_000, 9_000, 14_000};
    double[] least = {9_000, 3_000, 14_000};
    double before = 0;
    double after = 0;
    for (int i = 0; i < 3; i++) {
      before += w[i] * survival.enough(then[i], bees);
      after += w[i] * survival.enough(least[i], bees);
    }
    double spared = survival.spared(FROM, TO, others);
    Counted.Lost some = lost(survival, 9_000, 3_000, 14_000);
    assertThat(some.at(w, bees, others)).isCloseTo(1 - spared * after / before, within(1e-6));
    assertThat(some.at(w, bees, others)).isBetween(0.05, 0.95);
    assertThat(some.at(new double[3], bees, others)).isEqualTo(1);
    // with the plan the first keeps more bees, the second fewer, the third as many
    Counted.Lost with = lost(survival, 15_000, 2_000, 14_000);
    double kept = survival.enough(15_000, bees) - survival.enough(9_000, bees);
    assertThat(some.only(with, w, bees, others)).isCloseTo(spared * kept / before, within(1e-6));
    double fewer = 2 * (survival.enough(3_000, bees) - survival.enough(2_000, bees));
    assertThat(with.only(some, w, bees, others)).isCloseTo(spared * fewer / before, within(1e-6));
    assertThat(some.only(with, new double[3], bees, others)).isZero();
    Counted none = (x, b, o) -> 0.01;
    assertThat(some.only(none, w, bees, others))
        .isCloseTo(some.at(w, bees, others) - 0.01, within(1e-12));
  }

  /** Losses over 41 lucks in bees and 41 in other losses, each as likely, by hand. */
  @Test
  void theLuckOfAYardSpreadsItsLosses() {
    Survival survival = Survival.in(Shipped.model("temperate"));
    double[] then = {12_000, 7_000};
    double[] least = {6_000, 5_000};
    double[] losses = new double[41 * 41];
    double[] weights = new double[41 * 41];
    for (int i = 0; i < 41; i++) {
      double luck = NORMAL.inverseCumulativeProbability((i + 0.5) / 41);
      double had = survival.enough(then[0], luck) + survival.enough(then[1], luck);
      double has = survival.enough(least[0], luck) + survival.enough(least[1], luck);
      for (int j = 0; j < 41; j++) {
        double other = NORMAL.inverseCumulativeProbability((j + 0.5) / 41);
        losses[41 * i + j] = 1 - has / had * survival.spared(FROM, TO, other);
        weights[41 * i + j] = had;
      }
    }
    QuantileSummary expected = QuantileSummary.of(losses, weights);
    QuantileSummary found = YardLuck.losses(survival, then, least, FROM, TO);
    assertThat(found.q05()).isCloseTo(expected.q05(), within(1e-6));
    assertThat(found.median()).isCloseTo(expected.median(), within(1e-6));
    assertThat(found.q95()).isCloseTo(expected.q95(), within(1e-6));
    QuantileSummary none = YardLuck.losses(survival, new double[] {0}, new double[] {0}, FROM, TO);
    assertThat(none.q05()).isEqualTo(1);
  }
}
