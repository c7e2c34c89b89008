package broodtide.engine;

/**
 * Arithmetic over lanes that the steps share. The compiler turns a loop over lanes into vector
 * instructions only when it is written for that, and the steps keep to what was found to work on
 * JDK 17 to 25:
 *
 * <ul>
 *   <li>one array per variable, a bare index, no branch, no call but {@code Math.max} and such as
 *       the compiler writes out in place; an element that a sum uses twice is read into a local;
 *   <li>six times the arrays and once the operations come to no more than about fifty: so many
 *       nodes a loop has in the compiler, which leaves alone what has over sixty (its {@code
 *       LoopUnrollLimit});
 *   <li>sums that are multiplied with one another are not all written alike: with (n + a m)(n + b
 *       m) the compiler seems to take one factor for the other in the next lane, and gives up; so
 *       some are written as differences, {@code n - -a * m};
 *   <li>a division lasts as long as thirty other operations, but those of the same loop run while
 *       it is under way: so what is divided shares one division ({@code 1 / a = b / (a b)}), and
 *       loops divide that have something else to do.
 * </ul>
 *
 * Plus, minus, times and division are the same bit for bit on every machine, and so are results.
 */
final class Kernel {
  /** Stands in for nothing in a denominator: so few that no result shows it. */
  static final double FEW = 1e-12;

  private static final double SEVENTH = 1.0 / 5040;
  private static final double SIXTH = 1.0 / 720;
  private static final double FIFTH = 1.0 / 120;
  private static final double FOURTH = 1.0 / 24;
  private static final double THIRD = 1.0 / 6;

  private Kernel() {}

  /**
   * out = exp(-x) for x of 0 or more: a Taylor polynomial of x/256, squared eight times. Relative
   * error below 1e-13 up to x = 8; beyond, the absolute error stays below 1e-16. Values above 64
   * count as 64.
   */
  static void expOfMinus(double[] out, double[] x) {
    for (int l = 0; l < out.length; l++) {
      double y = Math.max(x[l] * (-1.0 / 256), -0.25);
      double p = expNearZero(y);
      p = p * p;
      p = p * p;
      p = p * p;
      p = p * p;
      p = p * p;
      p = p * p;
      p = p * p;
      out[l] = p * p;
    }
  }

  /**
   * {@return exp(-x) for x of 0 or more: x/32, squared five times} Relative error below 1e-10 up to
   * x = 4; beyond, the absolute error stays below 1e-10. Values above 64 count as 64.
   *
   * @param x 0 or more
   */
  static double expOfMinus(double x) {
    double p = expNearZero(Math.max(x * (-1.0 / 32), -2));
    p = p * p;
    p = p * p;
    p = p * p;
    p = p * p;
    return p * p;
  }

  /** The Taylor polynomial of exp to the seventh power. */
  private static double expNearZero(double y) {
    double p = SEVENTH * y + SIXTH;
    p = p * y + FIFTH;
    p = p * y + FOURTH;
    p = p * y + THIRD;
    p = p * y + 0.5;
    p = p * y + 1;
    return p * y + 1;
  }

  /** sum += x. */
  static void add(double[] sum, double[] x) {
    for (int l = 0; l < sum.length; l++) {
      sum[l] += x[l];
    }
  }

  /** sum += x + y. */
  static void add(double[] sum, double[] x, double[] y) {
    for (int l = 0; l < sum.length; l++) {
      sum[l] += x[l] + y[l];
    }
  }

  /** x *= factor. */
  static void scale(double[] x, double factor) {
    for (int l = 0; l < x.length; l++) {
      x[l] *= factor;
    }
  }

  /** x *= factor, lane by lane. */
  static void scale(double[] x, double[] factor) {
    for (int l = 0; l < x.length; l++) {
      x[l] *= factor[l];
    }
  }
}
