package broodtide.wash;

/**
 * What a count is divided by to become a rate: a product of known numbers, a recovery (beta, so
 * never above 1) and lognormal factors, as a finite mixture of values. The nodes are fixed, so that
 * the same wash always gives the same figures.
 */
final class Divisor {
  // In standard deviations. The trapezoid rule on bell curves converges so fast that these steps
  // leave less than 1e-5 of a chance, up to counts of a hundred mites and more.
  private static final double STEP = 0.5;
  private static final double REACH = 5.5;
  private static final double SHARE_STEP = 0.75;
  private static final int SHARE_STEPS = 8;

  /** Nodes. */
  final double[] values;

  /** Weights of the nodes, adding up to 1. */
  final double[] weights;

  private Divisor(double[] values, double[] weights) {
    this.values = values;
    this.weights = weights;
  }

  /** A divisor known without error. */
  static Divisor known(double value) {
    return new Divisor(new double[] {value}, new double[] {1});
  }

  /** This divisor times a known number. */
  Divisor times(double known) {
    return cross(new double[] {known}, new double[] {1});
  }

  /**
   * This divisor times an uncertain share between 0 and 1: a beta with that mean and deviation, by
   * the trapezoid rule over the share's logit, where a beta has no corners.
   */
  Divisor timesShare(double mean, double sd) {
    double size = mean * (1 - mean) / (sd * sd) - 1;
    double a = mean * size;
    double b = (1 - mean) * size;
    double step = SHARE_STEP * Math.sqrt(1 / a + 1 / b);
    double[] v = new double[2 * SHARE_STEPS + 1];
    double[] w = new double[v.length];
    double sum = 0;
    for (int i = 0; i < v.length; i++) {
      double odds = mean / (1 - mean) * Math.exp((i - SHARE_STEPS) * step);
      v[i] = odds / (1 + odds);
      w[i] = Math.exp(a * Math.log(v[i] / mean) - b * Math.log((1 + odds) * (1 - mean)));
      sum += w[i];
    }
    for (int i = 0; i < w.length; i++) {
      w[i] /= sum;
    }
    return cross(v, w);
  }

  /** This divisor times a lognormal factor of mean 1 whose logarithm has the variance given. */
  Divisor timesLognormal(double logVariance) {
    return timesLognormal(logVariance, STEP);
  }

  /**
   * The same in other steps. A wide factor beside a large count needs small ones, or the few values
   * that it can have show.
   *
   * @param step in standard deviations
   */
  Divisor timesLognormal(double logVariance, double step) {
    double s = Math.sqrt(logVariance);
    int steps = (int) Math.round(REACH / step);
    double[] v = new double[2 * steps + 1];
    double[] w = new double[v.length];
    double sum = 0;
    for (int i = 0; i < v.length; i++) {
      double z = (i - steps) * step;
      v[i] = Math.exp(s * z - logVariance / 2);
      w[i] = Math.exp(-z * z / 2);
      sum += w[i];
    }
    for (int i = 0; i < w.length; i++) {
      w[i] /= sum;
    }
    return cross(v, w);
  }

  private Divisor cross(double[] v, double[] w) {
    double[] products = new double[values.length * v.length];
    double[] shares = new double[products.length];
    int at = 0;
    for (int i = 0; i < values.length; i++) {
      for (int j = 0; j < v.length; j++, at++) {
        products[at] = values[i] * v[j];
        shares[at] = weights[i] * w[j];
      }
    }
    return new Divisor(products, shares);
  }
}
