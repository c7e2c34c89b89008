package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.assessment.HiveChance.Ranked;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.GrowthBias;
import broodtide.fit.SeasonPosterior;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Counts of an apiary whose colonies share a part of their season. */
class ApiaryCountTest {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
  private static final int MEMBERS = 250;
  private static final double[] SHARES = {0.64, 0.75, 0.64};
  private static final List<String> WHAT = List.of("growth", "late", "so far");

  @Test
  void oneColonyIsCountedWithItsOwnChance() {
    ApiaryCount one = ApiaryCount.of(List.of(hive("A", "", 0.2, WHAT)));
    assertThat(one.distribution()).containsExactly(0.8, 0.2);
    assertThat(one.mean()).isEqualTo(0.2);
    assertThat(one.low()).isZero();
    assertThat(one.high()).isOne();
  }

  @Test
  void coloniesThatShareNothingMakeABinomialCount() {
    List<HiveChance> hives =
        IntStream.range(0, 8).mapToObj(i -> hive("H" + i, "", 0.3, List.of())).toList();
    ApiaryCount count = ApiaryCount.of(hives);
    BinomialDistribution binomial = new BinomialDistribution(null, 8, 0.3);
    for (int k = 0; k <= 8; k++) {
      assertThat(count.distribution()[k]).isCloseTo(binomial.probability(k), within(1e-9));
    }
  }

  /** What is shared spreads the count and leaves its mean alone. */
  @Test
  void whatIsSharedSpreadsTheCount() {
    ApiaryCount apart = ApiaryCount.of(yard(8, "", List.of()));
    ApiaryCount together = ApiaryCount.of(yard(8, "", WHAT));
    assertThat(together.mean()).isEqualTo(apart.mean());
    assertThat(mean(together)).isCloseTo(together.mean(), within(1e-9));
    assertThat(variance(together)).isGreaterThan(2 * variance(apart));
    assertThat(Arrays.stream(together.distribution()).sum()).isCloseTo(1, within(1e-12));
  }

  /** Two colonies whose chance is one half meet as often as two normals of that correlation. */
  @Test
  void twoColoniesAgreeAsTheirCorrelationSays() {
    List<HiveChance> two =
        List.of(hive("A", "", 0.5, WHAT.subList(0, 1)), hive("B", "", 0.5, WHAT.subList(0, 1)));
    double both = ApiaryCount.of(two).distribution()[2];
    // Sheppard 1899: a quarter and the arc sine of the correlation over two pi
    assertThat(both).isCloseTo(0.25 + Math.asin(0.64) / (2 * Math.PI), within(0.003));
  }

  @Test
  void neitherOrderNorOtherYardsMatter() {
    List<HiveChance> hives = new ArrayList<>(yard(6, "north", WHAT));
    double[] alone = ApiaryCount.of(hives).distribution();
    Collections.shuffle(hives, new java.util.Random(4));
    assertThat(ApiaryCount.of(hives).distribution()).containsExactly(alone);
    List<HiveChance> south = yard(3, "south", WHAT);
    hives.addAll(south);
    double[] both = ApiaryCount.of(hives).distribution();
    assertThat(both).hasSize(10);
    double none = alone[0] * ApiaryCount.of(south).distribution()[0];
    assertThat(both[0]).isCloseTo(none, within(1e-12));
    Collections.reverse(hives);
    assertThat(ApiaryCount.of(hives).distribution()).containsExactly(both);
  }

  /** Two colonies of different yards meet as often as the part that all yards share makes them. */
  @Test
  void yardsAgreeAsWhatAllOfThemShareSays() {
    List<HiveChance> apart = List.of(doubted("A", "north", 0.3), doubted("B", "south", 0.3));
    ApiaryCount count = ApiaryCount.of(apart);
    // Sheppard 1899, with the correlation between yards in place of that within one
    double both = 0.25 + Math.asin(0.3) / (2 * Math.PI);
    assertThat(count.distribution()[2]).isCloseTo(both, within(0.003));
    assertThat(mean(count)).isCloseTo(1, within(1e-9));
    assertThat(ApiaryCount.of(List.of(apart.get(1), apart.get(0))).distribution())
        .containsExactly(count.distribution());
    ApiaryCount one = ApiaryCount.of(List.of(doubted("A", "", 0.3), doubted("B", "", 0.3)));
    assertThat(one.distribution()[2])
        .as("within a yard, what all yards share is a part of what it shares")
        .isCloseTo(0.25 + Math.asin(0.64) / (2 * Math.PI), within(0.003));
    List<ApiarySaving.Hive> saved =
        apart.stream().map(h -> new ApiarySaving.Hive(h, spared(h))).toList();
    ApiarySaving saving = ApiarySaving.of(saved);
    assertThat(saving.mean()).isEqualTo(1);
    assertThat(saving.quantile(1 - both + 0.004)).isEqualTo(2);
    assertThat(saving.quantile(1 - both - 0.004)).isEqualTo(1);
    assertThat(saving.quantile(both - 0.004)).isZero();
    assertThat(saving.quantile(both + 0.004)).isEqualTo(1);
  }

  /** A colony whose chance is one half by its growth, of which all yards share a part. */
  private static HiveChance doubted(String colony, String yard, double common) {
    HiveChance hive = hive(colony, yard, 0.5, WHAT.subList(0, 1));
    HiveChance.Share growth = new HiveChance.Share("growth", SHARES[0], common);
    Counted counted = hive.seasons().counted();
    return new HiveChance(colony, yard, 0.5, List.of(new Ranked(growth, RANKS[0])), counted);
  }

  /** The same colony with a plan that never lets it be counted. */
  private static HiveChance spared(HiveChance hive) {
    List<Ranked> ranked = List.of(new Ranked(hive.shared().get(0), RANKS[0]));
    return new HiveChance(hive.colony(), hive.yard(), 0, ranked, (weights, bees, others) -> 0);
  }

  @Test
  void nothingIsNothing() {
    assertThat(ApiaryCount.of(List.of()).distribution()).containsExactly(1);
    ApiaryCount none = ApiaryCount.of(List.of(hive("A", "", 0, WHAT), hive("B", "", 0, WHAT)));
    assertThat(none.distribution()).containsExactly(1, 0, 0);
    ApiaryCount all = ApiaryCount.of(List.of(hive("A", "", 1, WHAT), hive("B", "", 1, WHAT)));
    assertThat(all.distribution()).containsExactly(0, 0, 1);
  }

  /** Colonies read from washes: their chances are those that their plans give. */
  @Test
  void coloniesReadFromWashesAreCountedWithTheirOwnChances() {
    ColonyCase one = Invented.colony().throughWinter().in("Ridge");
    ColonyCase other = one.with(one.priors());
    List<HiveChance> over = new ArrayList<>();
    List<HiveChance> lost = new ArrayList<>();
    try (Workers workers = new Workers(2)) {
      for (ColonyCase c : List.of(one, other)) {
        SeasonPosterior posterior = Invented.posterior(c, 256, workers);
        PlanRun wait =
            Comparison.of(c, posterior, List.of(Plan.waiting("wait")), workers, Progress.NONE)
                .reference();
        over.add(HiveChance.over(posterior, wait, c.now()).orElseThrow());
        lost.add(HiveChance.lost(posterior, wait).orElseThrow());
        assertThat(over.get(0).chance())
            .isEqualTo(wait.chanceOver(c.thresholdOn(c.now()).orElseThrow(), c.now()));
        assertThat(lost.get(0).chance())
            .isEqualTo(wait.shareLost(wait.springLow().orElseThrow().day()));
      }
    }
    assertThat(over.get(1).yard()).isEqualTo("Ridge");
    for (List<HiveChance> two : List.of(over, lost)) {
      ApiaryCount count = ApiaryCount.of(two);
      double chance = two.get(0).chance();
      assertThat(count.mean()).isEqualTo(2 * chance);
      assertThat(mean(count)).isCloseTo(2 * chance, within(1e-9));
      // what the two share makes both and none likelier than by themselves
      assertThat(count.distribution()[2]).isGreaterThan(chance * chance);
      assertThat(count.distribution()[0]).isGreaterThan((1 - chance) * (1 - chance));
    }
  }

  /** What records leave in doubt is shared: hives meet more often, and each keeps its chance. */
  @Test
  void doubtOfTheRecordsIsSharedByTheHives() {
    ColonyCase usual = Invented.colony().throughWinter();
    ColonyCase doubted = usual.with(usual.priors().with(new GrowthBias(-0.3, 0.25)));
    try (Workers workers = new Workers(2)) {
      HiveChance before = lost(usual, workers);
      HiveChance after = lost(doubted, workers);
      assertThat(after.chance()).as("flat records").isLessThan(before.chance());
      ApiaryCount one = ApiaryCount.of(List.of(after));
      assertThat(one.distribution()).containsExactly(1 - after.chance(), after.chance());
      ApiaryCount eight = ApiaryCount.of(Collections.nCopies(8, after));
      assertThat(mean(eight)).isCloseTo(8 * after.chance(), within(1e-9));
      double growth = share(after);
      assertThat(growth).isGreaterThan(share(before));
      // own variance .36 of .5 squared, beside which .25 squared is shared
      assertThat(1 - growth).isCloseTo(0.36 * 0.25 / (0.25 + 0.0625), within(1e-9));
    }
  }

  private static double share(HiveChance hive) {
    return hive.shared().stream()
        .filter(s -> s.what().startsWith("growthToCome"))
        .mapToDouble(HiveChance.Share::share)
        .findFirst()
        .orElseThrow();
  }

  private static HiveChance lost(ColonyCase c, Workers workers) {
    SeasonPosterior posterior = Invented.posterior(c, 256, workers);
    PlanRun wait =
        Comparison.of(c, posterior, List.of(Plan.waiting("wait")), workers, Progress.NONE)
            .reference();
    return HiveChance.lost(posterior, wait).orElseThrow();
  }

  /** Over invented yards that share what they are said to share, intervals hold what they say. */
  @Test
  void intervalsHoldWhatTheySay() {
    assertThat(held(8, 400, 3, WHAT)).isBetween(0.87, 0.93);
    assertThat(held(8, 400, 3, List.of())).isLessThan(0.75);
  }

  @Tag("slow")
  @Test
  void intervalsHoldWhatTheySayInSmallAndLargeYards() {
    for (int hives : new int[] {3, 12, 40}) {
      double together = held(hives, 600, 11, WHAT);
      double apart = held(hives, 600, 11, List.of());
      assertThat(together).as("%d colonies", hives).isBetween(0.87, 0.93);
      assertThat(apart).as("%d colonies alone", hives).isLessThan(together - 0.01);
    }
  }

  /**
   * Share of yards whose count lies in the 90 % interval, at random where the interval's ends have
   * more chance than is needed. A colony is counted when its own score, of which it shares a part
   * with its yard, lies above what its chance says.
   */
  private static double held(int hives, int yards, long seed, List<String> told) {
    SplittableRandom random = new SplittableRandom(seed);
    double held = 0;
    for (int y = 0; y < yards; y++) {
      double[] u = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
      List<HiveChance> yard = new ArrayList<>();
      int counted = 0;
      for (int h = 0; h < hives; h++) {
        double chance = NORMAL.cumulativeProbability(1.2 * random.nextGaussian() - 0.4);
        yard.add(hive("H" + h, "", chance, told));
        double score = 0;
        for (int j = 0; j < 3; j++) {
          double q = Math.sqrt(SHARES[j]) * u[j] + Math.sqrt(1 - SHARES[j]) * random.nextGaussian();
          score += WEIGHTS[j] * q;
        }
        counted += score > -NORMAL.inverseCumulativeProbability(chance) ? 1 : 0;
      }
      held += within90(ApiaryCount.of(yard).distribution(), counted);
    }
    return held / yards;
  }

  private static double within90(double[] distribution, int count) {
    double from = 0;
    for (int k = 0; k < count; k++) {
      from += distribution[k];
    }
    double to = from + distribution[count];
    return to > from
        ? Math.max(0, Math.min(0.95, to) - Math.max(0.05, from)) / (to - from)
        : from > 0.05 && from < 0.95 ? 1 : 0;
  }

  /** How much each of what is shared weighs in the score of an invented colony. */
  private static final double[] WEIGHTS = {0.8, 0.5, Math.sqrt(1 - 0.64 - 0.25)};

  private static final short[][] RANKS = ranks();
  private static final double[] SCORES = scores();

  private static short[][] ranks() {
    SplittableRandom random = new SplittableRandom(99);
    short[][] out = new short[3][MEMBERS];
    for (short[] ranks : out) {
      for (int i = 0; i < MEMBERS; i++) {
        int other = random.nextInt(i + 1);
        ranks[i] = ranks[other];
        ranks[other] = (short) i;
      }
    }
    return out;
  }

  private static double[] scores() {
    double[] out = new double[MEMBERS];
    for (int i = 0; i < MEMBERS; i++) {
      for (int j = 0; j < 3; j++) {
        out[i] += WEIGHTS[j] * NORMAL.inverseCumulativeProbability((RANKS[j][i] + 0.5) / MEMBERS);
      }
    }
    return out;
  }

  /** An invented colony that is counted with a chance, and shares what is said. */
  private static HiveChance hive(String colony, String yard, double chance, List<String> shares) {
    double[] sorted = SCORES.clone();
    Arrays.sort(sorted);
    double least =
        chance <= 0
            ? Double.POSITIVE_INFINITY
            : sorted[(int) Math.min(MEMBERS - 1, Math.round((1 - chance) * MEMBERS))];
    if (shares.size() == 1) {
      // what one thing alone decides
      int from = (int) Math.round((1 - chance) * MEMBERS);
      return hive(colony, yard, chance, shares, i -> RANKS[0][i] >= from);
    }
    return hive(colony, yard, chance, shares, i -> SCORES[i] >= least);
  }

  private static HiveChance hive(
      String colony,
      String yard,
      double chance,
      List<String> shares,
      java.util.function.IntPredicate over) {
    List<Ranked> ranked = new ArrayList<>();
    for (int j = 0; j < shares.size(); j++) {
      ranked.add(new Ranked(shares.get(j), SHARES[j], RANKS[j]));
    }
    Counted counted =
        (weights, bees, others) -> {
          if (shares.isEmpty()) {
            return chance;
          }
          double all = 0;
          double some = 0;
          for (int i = 0; i < weights.length; i++) {
            all += weights[i];
            some += over.test(i) ? weights[i] : 0;
          }
          return some / all;
        };
    return new HiveChance(colony, yard, chance, ranked, counted);
  }

  private static List<HiveChance> yard(int hives, String name, List<String> shares) {
    return IntStream.range(0, hives)
        .mapToObj(i -> hive("H" + i, name, 0.1 + 0.1 * i, shares))
        .toList();
  }

  private static double mean(ApiaryCount count) {
    double[] p = count.distribution();
    return IntStream.range(0, p.length).mapToDouble(k -> k * p[k]).sum();
  }

  private static double variance(ApiaryCount count) {
    double[] p = count.distribution();
    double mean = mean(count);
    return IntStream.range(0, p.length).mapToDouble(k -> (k - mean) * (k - mean) * p[k]).sum();
  }
}
