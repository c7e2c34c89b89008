package broodtide.decision;

import broodtide.fit.Streams;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * The luck of the washes of every member on every wash day, drawn once so that all rules meet the
 * same luck. A wash is binomial in its bees; what it could find at all differs from wash to wash by
 * a gamma factor of mean 1, which together is near to the negative binomial by which washes are
 * read.
 */
final class WashDraws {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
  private static final double NO_SPREAD = 1e5;

  private final WashRound round;
  private final double[][] factor;
  private final double[][] rank;

  private WashDraws(WashRound round, double[][] factor, double[][] rank) {
    this.round = round;
    this.factor = factor;
    this.rank = rank;
  }

  /**
   * Draws.
   *
   * @param round how washes are taken
   * @param dispersions sizes of the members' negative binomials from sample to sample
   * @param washes number of wash days
   * @param seed seed; every member has a stream of its own, split again for every wash
   */
  static WashDraws of(WashRound round, double[] dispersions, int washes, long seed) {
    SplittableRandom[] own = Streams.of(seed, Streams.Purpose.RULE_WASHES, dispersions.length);
    double[][] factor = new double[washes][dispersions.length];
    double[][] rank = new double[washes][dispersions.length];
    for (int m = 0; m < dispersions.length; m++) {
      double shape = 1 / (1 / dispersions[m] + round.spread() * round.spread());
      for (int k = 0; k < washes; k++) {
        SplittableRandom stream = own[m].split();
        factor[k][m] = shape > NO_SPREAD ? 1 : gamma(shape, stream) / shape;
        rank[k][m] = stream.nextDouble();
      }
    }
    return new WashDraws(round, factor, rank);
  }

  /**
   * Mites in a wash.
   *
   * @param wash number of the wash day
   * @param member the member
   * @param perHundred mites per 100 adult bees in truth
   */
  int count(int wash, int member, double perHundred) {
    double found = perHundred / 100 * round.recovery() * factor[wash][member];
    return binomial(round.bees(), Math.min(1, found), rank[wash][member]);
  }

  /** The count of a binomial that has a share {@code rank} of the chance at or below it. */
  static int binomial(int trials, double p, double rank) {
    if (p > 0.5) {
      return trials - binomial(trials, 1 - p, 1 - rank);
    }
    double chance = Math.pow(1 - p, trials);
    double odds = p / (1 - p);
    double sum = chance;
    int count = 0;
    while (sum < rank && count < trials) {
      chance *= odds * (trials - count) / (count + 1);
      sum += chance;
      count++;
    }
    return count;
  }

  /** Marsaglia & Tsang 2000, ACM Trans. Math. Softw. 26:363; below shape 1 by their boost. */
  private static double gamma(double shape, SplittableRandom random) {
    if (shape < 1) {
      double boost = Math.pow(1 - random.nextDouble(), 1 / shape);
      return boost * gamma(shape + 1, random);
    }
    double d = shape - 1.0 / 3;
    double c = 1 / Math.sqrt(9 * d);
    while (true) {
      double z = NORMAL.inverseCumulativeProbability(Math.max(0x1p-54, random.nextDouble()));
      double v = Math.pow(Math.max(0, 1 + c * z), 3);
      double u = 1 - random.nextDouble();
      if (v > 0 && Math.log(u) < z * z / 2 + d - d * v + d * Math.log(v)) {
        return d * v;
      }
    }
  }
}
