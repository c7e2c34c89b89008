package broodtide.decision;

import broodtide.measure.OutOfRange;
import broodtide.wash.Interval;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.util.CombinatoricsUtils;

/**
 * The share of mites that a treatment took, from counts alone. Counts are taken as Poisson about
 * their rates; intervals are exact and hold the chance of the washes, not the difference between
 * frames or between colonies.
 *
 * @param share point estimate, 1 when no mite was left; below 0 when there were more than before
 * @param interval exact interval of the share; may reach down to minus infinity
 */
public record CountedEfficacy(double share, Interval interval) {
  /**
   * A count.
   *
   * @param mites mites found
   * @param exposure bees times what a wash finds of their mites, above 0
   */
  public record Count(int mites, double exposure) {
    /** Checks ranges. */
    public Count {
      OutOfRange.check("mites", mites, 0, Integer.MAX_VALUE, "mites");
      OutOfRange.check("exposure", exposure, 1e-9, 1e9, "bees");
    }

    double rate() {
      return mites / exposure;
    }
  }

  /**
   * After against before, as it is: what the season did meanwhile is in it. The interval is the
   * exact one for the ratio of two Poisson rates, by the binomial of the one count in their sum
   * (Przyborowski &amp; Wilenski 1940, Biometrika 31:313; from memory).
   *
   * @param level for example 0.9
   * @param before count before the treatment
   * @param after count after it
   * @return empty when no mite was found before, for then there is nothing to take away
   */
  public static Optional<CountedEfficacy> alone(Count before, Count after, double level) {
    if (before.mites() == 0) {
      return Optional.empty();
    }
    Interval share = Interval.binomial(after.mites(), before.mites() + after.mites(), level);
    double scale = before.exposure() / after.exposure();
    Interval efficacy =
        new Interval(1 - scale * odds(share.high()), 1 - scale * odds(share.low()), level);
    return Optional.of(new CountedEfficacy(1 - after.rate() / before.rate(), efficacy));
  }

  /**
   * After against before, set against the same of an untreated neighbour: 1 - (Ta / Tb) (Cb / Ca)
   * (Henderson &amp; Tilton 1955, J. Econ. Entomol. 48:157). The interval is Fisher's exact one for
   * the odds ratio of the four counts, scaled by the bees.
   *
   * @param level for example 0.9
   * @param before count before the treatment
   * @param after count after it
   * @param neighbourBefore count of the untreated neighbour on the first day
   * @param neighbourAfter count of the untreated neighbour on the second day
   * @return empty when the treated colony had no mite before, or the neighbour none at one of its
   *     washes, for then the formula divides by nothing
   */
  public static Optional<CountedEfficacy> againstNeighbour(
      Count before, Count after, Count neighbourBefore, Count neighbourAfter, double level) {
    if (before.mites() == 0 || neighbourAfter.mites() == 0 || neighbourBefore.mites() == 0) {
      return Optional.empty();
    }
    double ratio = after.rate() / before.rate() * (neighbourBefore.rate() / neighbourAfter.rate());
    double scale =
        before.exposure()
            * neighbourAfter.exposure()
            / (after.exposure() * neighbourBefore.exposure());
    Interval odds =
        oddsRatio(
            after.mites(), before.mites(), neighbourAfter.mites(), neighbourBefore.mites(), level);
    return Optional.of(
        new CountedEfficacy(
            1 - ratio, new Interval(1 - scale * odds.high(), 1 - scale * odds.low(), level)));
  }

  /**
   * Exact interval of the odds ratio (a d) / (b c) of four counts, given their sums: each end is
   * where what was seen, or more of it, has half of the remaining chance.
   */
  static Interval oddsRatio(int a, int b, int c, int d, double level) {
    double tail = (1 - level) / 2;
    int first = a + b;
    int second = c + d;
    int hits = a + c;
    int least = Math.max(0, hits - second);
    int most = Math.min(first, hits);
    double low =
        a == least ? 0 : where(log -> 1 - atMost(a - 1, first, second, hits, log), tail, true);
    double high =
        a == most
            ? Double.POSITIVE_INFINITY
            : where(log -> atMost(a, first, second, hits, log), tail, false);
    return new Interval(low, high, level);
  }

  /** The odds ratio at which a chance that rises or falls with its logarithm meets a level. */
  private static double where(DoubleUnaryOperator chance, double level, boolean rising) {
    double low = -40;
    double high = 40;
    for (int i = 0; i < 200; i++) {
      double mid = 0.5 * (low + high);
      if (chance.applyAsDouble(mid) < level == rising) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return Math.exp(0.5 * (low + high));
  }

  /** Chance of at most x in a non-central hypergeometric distribution. */
  private static double atMost(int x, int first, int second, int hits, double logOdds) {
    int least = Math.max(0, hits - second);
    int most = Math.min(first, hits);
    double top = Double.NEGATIVE_INFINITY;
    double[] log = new double[most - least + 1];
    for (int k = least; k <= most; k++) {
      log[k - least] =
          CombinatoricsUtils.binomialCoefficientLog(first, k)
              + CombinatoricsUtils.binomialCoefficientLog(second, hits - k)
              + k * logOdds;
      top = Math.max(top, log[k - least]);
    }
    double below = 0;
    double all = 0;
    for (int k = least; k <= most; k++) {
      double p = Math.exp(log[k - least] - top);
      all += p;
      below += k <= x ? p : 0;
    }
    return below / all;
  }

  private static double odds(double share) {
    return share >= 1 ? Double.POSITIVE_INFINITY : share / (1 - share);
  }
}
