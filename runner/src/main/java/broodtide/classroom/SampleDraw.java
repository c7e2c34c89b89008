package broodtide.classroom;

import broodtide.measure.OutOfRange;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BinomialDistribution;

/**
 * Counts in washes taken from one colony on one day. Every bee of a wash carries a mite with the
 * same chance and every mite is found, so all that differs is chance: a binomial count.
 *
 * @param counts one count per wash
 * @param low nine in ten washes have this count or more, and {@code high} or fewer
 * @param high see {@code low}
 * @param theory chance of each count from 0 on, as far as they are likely at all
 */
record SampleDraw(int[] counts, int low, int high, double[] theory) {
  private static final double MIDDLE = 0.9;
  private static final double ALL = 0.9999;

  /**
   * Draws washes.
   *
   * @param infestation mites per 100 bees, 0 to 100
   * @param bees bees in a wash
   * @param washes washes
   * @param seed the same seed gives the same counts
   */
  static SampleDraw of(double infestation, int bees, int washes, long seed) {
    OutOfRange.check("infestation", infestation, 0, 100, "mites per 100 adult bees");
    SplittableRandom random = new SplittableRandom(seed);
    double chance = infestation / 100;
    int[] counts = new int[washes];
    for (int i = 0; i < washes; i++) {
      SplittableRandom sample = random.split();
      for (int bee = 0; bee < bees; bee++) {
        counts[i] += sample.nextDouble() < chance ? 1 : 0;
      }
    }
    BinomialDistribution all = new BinomialDistribution(null, bees, chance);
    return new SampleDraw(
        counts,
        all.inverseCumulativeProbability((1 - MIDDLE) / 2),
        all.inverseCumulativeProbability((1 + MIDDLE) / 2),
        IntStream.rangeClosed(0, all.inverseCumulativeProbability(ALL))
            .mapToDouble(all::probability)
            .toArray());
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
