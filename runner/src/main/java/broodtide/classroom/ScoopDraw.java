package broodtide.classroom;

import broodtide.measure.OutOfRange;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.BinomialDistribution;

/**
 * Counts in scoops taken from one colony on one day. Every bee of a scoop carries a mite with the
 * same chance and every mite is found, so all that differs is chance: a binomial count.
 *
 * @param counts one count per scoop
 * @param low nine in ten scoops have this count or more, and {@code high} or fewer
 * @param high see {@code low}
 */
record ScoopDraw(int[] counts, int low, int high) {
  private static final double MIDDLE = 0.9;

  /**
   * Draws scoops.
   *
   * @param infestation mites per 100 bees, 0 to 100
   * @param bees bees in a scoop
   * @param scoops scoops
   * @param seed the same seed gives the same counts
   */
  static ScoopDraw of(double infestation, int bees, int scoops, long seed) {
    OutOfRange.check("infestation", infestation, 0, 100, "mites per 100 adult bees");
    SplittableRandom random = new SplittableRandom(seed);
    double chance = infestation / 100;
    int[] counts = new int[scoops];
    for (int i = 0; i < scoops; i++) {
      SplittableRandom scoop = random.split();
      for (int bee = 0; bee < bees; bee++) {
        counts[i] += scoop.nextDouble() < chance ? 1 : 0;
      }
    }
    BinomialDistribution all = new BinomialDistribution(null, bees, chance);
    return new ScoopDraw(
        counts,
        all.inverseCumulativeProbability((1 - MIDDLE) / 2),
        all.inverseCumulativeProbability((1 + MIDDLE) / 2));
  }

  /** The lowest count. */
  int lowest() {
    return Arrays.stream(counts).min().orElseThrow();
  }

  /** The highest count. */
  int highest() {
    return Arrays.stream(counts).max().orElseThrow();
  }
}
