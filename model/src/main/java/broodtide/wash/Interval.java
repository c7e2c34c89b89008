package broodtide.wash;

import broodtide.measure.OutOfRange;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.GammaDistribution;

/**
 * An interval for one quantity.
 *
 * @param low lower end, may be negative infinity where nothing bounds it
 * @param high upper end, at least {@code low}, may be infinity
 * @param level share of such intervals that hold the truth, between 0 and 1
 */
public record Interval(double low, double high, double level) {
  private static final double ACCURACY = 1e-13;

  /** Checks the order and the level. */
  public Interval {
    if (!(low <= high)) {
      throw new OutOfRange("low", Double.toString(low), "at most the upper end, " + high);
    }
    checkLevel(level);
  }

  /**
   * Exact interval for a share (Clopper &amp; Pearson 1934, Biometrika 26:404).
   *
   * @param hits hits, 0 to {@code trials}
   * @param trials trials, 1 or more
   * @param level for example 0.95
   * @return ends between 0 and 1
   */
  public static Interval binomial(int hits, int trials, double level) {
    OutOfRange.check("trials", trials, 1, Integer.MAX_VALUE, "1");
    OutOfRange.check("hits", hits, 0, trials, "1");
    double tail = (1 - checkLevel(level)) / 2;
    double low = hits == 0 ? 0 : beta(hits, trials - hits + 1.0, tail);
    double high = hits == trials ? 1 : beta(hits + 1.0, trials - hits, 1 - tail);
    return new Interval(low, high, level);
  }

  /**
   * Exact interval for the mean of a Poisson count (Garwood 1936, Biometrika 28:437).
   *
   * @param count the count, 0 or more
   * @param level for example 0.95
   * @return ends in counts
   */
  public static Interval poisson(int count, double level) {
    OutOfRange.check("count", count, 0, Integer.MAX_VALUE, "1");
    double tail = (1 - checkLevel(level)) / 2;
    double low = count == 0 ? 0 : gamma(count, tail);
    return new Interval(low, gamma(count + 1.0, 1 - tail), level);
  }

  /**
   * {@return the interval in other units: both ends times a positive factor}
   *
   * @param factor above 0
   */
  public Interval times(double factor) {
    return new Interval(low * factor, high * factor, level);
  }

  /**
   * {@return whether a value lies within, ends included}
   *
   * @param value the value
   */
  public boolean holds(double value) {
    return value >= low && value <= high;
  }

  private static double beta(double a, double b, double p) {
    return new BetaDistribution(null, a, b, ACCURACY).inverseCumulativeProbability(p);
  }

  private static double gamma(double shape, double p) {
    return new GammaDistribution(null, shape, 1, ACCURACY).inverseCumulativeProbability(p);
  }

  private static double checkLevel(double level) {
    if (!(level > 0 && level < 1)) {
      throw new OutOfRange("level", Double.toString(level), "between 0 and 1, for example 0.9");
    }
    return level;
  }
}
