package broodtide.fit;

import broodtide.measure.OutOfRange;
import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.util.FastMath;

/** A forecast of the mites in one wash, as the probability of every count. */
public final class CountDistribution {
  private static final double TAIL = 1e-10;
  private static final int MOST = 50_000;

  /** A size so large that the negative binomial is a Poisson to rounding of its sum. */
  private static final double AS_POISSON = 1e9;

  private final double[] cumulative;

  private CountDistribution(double[] probabilities, int used) {
    cumulative = new double[used];
    double sum = 0;
    for (int y = 0; y < used; y++) {
      sum += probabilities[y];
      cumulative[y] = sum;
    }
    for (int y = 0; y < used; y++) {
      cumulative[y] /= sum;
    }
  }

  /**
   * {@return a mixture of negative binomials of equal weight}
   *
   * @param means mites expected, one per part, 0 or more
   * @param sizes sizes, one per part, above 0
   */
  public static CountDistribution mixture(double[] means, double[] sizes) {
    double[] weights = new double[means.length];
    Arrays.fill(weights, 1);
    return mixture(means, sizes, weights);
  }

  /**
   * {@return a mixture of negative binomials}
   *
   * @param means mites expected, one per part, 0 or more
   * @param sizes sizes, one per part, above 0
   * @param weights weights, one per part, 0 or more, one of them above 0
   */
  public static CountDistribution mixture(double[] means, double[] sizes, double[] weights) {
    double[] p = new double[MOST];
    double all = Arrays.stream(weights).sum();
    int used = 1;
    for (int i = 0; i < means.length; i++) {
      used = Math.max(used, add(p, means[i], sizes[i], weights[i] / all));
    }
    return new CountDistribution(p, used);
  }

  /**
   * {@return Poisson around a lognormal rate}
   *
   * @param median median of the mites expected, above 0
   * @param logSd spread of its logarithm, 0 or more
   */
  public static CountDistribution logNormalPoisson(double median, double logSd) {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    int parts = 400;
    double[] means = new double[parts];
    double[] sizes = new double[parts];
    for (int i = 0; i < parts; i++) {
      double z = normal.inverseCumulativeProbability((i + 0.5) / parts);
      means[i] = median * FastMath.exp(logSd * z);
      sizes[i] = AS_POISSON;
    }
    return mixture(means, sizes);
  }

  /** Adds one part; counts beyond the end of the array are taken as its end. */
  private static int add(double[] p, double wanted, double size, double weight) {
    if (!(wanted > 0)) {
      p[0] += weight;
      return 1;
    }
    double mean = Math.min(wanted, MOST / 2.0);
    double ratio = mean / (size + mean);
    int mode = (int) Math.min(MOST - 1.0, Math.max(0, mean * (1 - 1 / size)));
    double atMode = FastMath.exp(WashModel.logProbability(mode, mean, size));
    double q = atMode;
    for (int y = mode; y > 0 && q > TAIL * atMode; y--) {
      p[y] += weight * q;
      q *= y / ((y - 1 + size) * ratio);
      if (y == 1) {
        p[0] += weight * q;
      }
    }
    if (mode == 0) {
      p[0] += weight * q;
    }
    q = atMode;
    int y = mode;
    while (y < MOST - 1 && q > TAIL * atMode) {
      q *= (y + size) / (y + 1.0) * ratio;
      y++;
      p[y] += weight * q;
    }
    if (y == MOST - 1) {
      // of a falling tail, all but a part in 1 / (1 - ratio) is still to come
      p[y] += weight * q * ratio / (1 - ratio);
    }
    return y + 1;
  }

  /**
   * {@return chance of this many mites or fewer}
   *
   * @param count mites, any whole number
   */
  public double atMost(int count) {
    return count < 0 ? 0 : cumulative[Math.min(count, cumulative.length - 1)];
  }

  /**
   * {@return the smallest count that is reached with this probability, 0 to 1}
   *
   * @param level 0 to 1
   */
  public int quantile(double level) {
    OutOfRange.check("level", level, 0, 1, "1");
    int low = 0;
    int high = cumulative.length - 1;
    while (low < high) {
      int mid = (low + high) >>> 1;
      if (cumulative[mid] >= level) {
        high = mid;
      } else {
        low = mid + 1;
      }
    }
    return low;
  }

  /**
   * {@return whether a count lies in the central band, whose ends are counts themselves}
   *
   * @param count mites
   * @param level width of the central band, 0 to 1
   */
  public boolean holds(int count, double level) {
    return count >= quantile((1 - level) / 2) && count <= quantile((1 + level) / 2);
  }

  /**
   * {@return where a count stands, 0 to 1: the chance of fewer, and half the chance of the same}
   *
   * @param count mites in the wash, 0 or more
   */
  public double place(int count) {
    return 0.5 * (atMost(count) + atMost(count - 1));
  }

  /**
   * {@return continuous ranked probability score on log(1 + count): the integral of the squared
   * distance between the forecast's cumulative distribution and the step at the outcome (Gneiting
   * &amp; Raftery 2007, J} Am. Stat. Assoc. 102:359). Smaller is better.
   *
   * @param count mites in the wash, 0 or more
   */
  public double crpsOfLog(int count) {
    double sum = 0;
    int last = Math.max(cumulative.length, count + 1);
    for (int y = 0; y < last; y++) {
      double step = FastMath.log((y + 2.0) / (y + 1.0));
      double gap = y < count ? atMost(y) : 1 - atMost(y);
      sum += gap * gap * step;
    }
    return sum;
  }
}
