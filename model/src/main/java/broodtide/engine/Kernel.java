package broodtide.engine;

/**
 * Arithmetic over lanes that the steps share. The loops are kept small, over separate arrays and a
 * bare index, without branches and without {@code Math.exp}: so written, the compiler turns them
 * into vector instructions, and the results are the same on every machine.
 */
final class Kernel {
  private static final int SQUARINGS = 8;
  private static final double SHRINK = 1.0 / (1 << SQUARINGS);

  private Kernel() {}

  /**
   * out = exp(-x) for x of 0 or more: a Taylor polynomial of x/256, squared eight times. Relative
   * error below 1e-13 up to x = 8; beyond, the absolute error stays below 1e-16. Values above 64
   * count as 64.
   */
  static void expOfMinus(double[] out, double[] x) {
    for (int l = 0; l < out.length; l++) {
      double y = -Math.min(x[l], 64.0) * SHRINK;
      double p = 1 + y * (1.0 / 7);
      p = 1 + y * (1.0 / 6) * p;
      p = 1 + y * (1.0 / 5) * p;
      p = 1 + y * (1.0 / 4) * p;
      p = 1 + y * (1.0 / 3) * p;
      p = 1 + y * (1.0 / 2) * p;
      p = 1 + y * p;
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
   * out = (1 + a x / k)^-n for n = k or k + 1. The usual k = 2 takes plain products; any other
   * takes {@code StrictMath.pow}, which is slower and as reproducible.
   */
  static void clumped(double[] out, double[] x, double a, double k, double n) {
    double scale = a / k;
    if (n == 2) {
      for (int l = 0; l < out.length; l++) {
        double b = 1 / (1 + scale * x[l]);
        out[l] = b * b;
      }
    } else if (n == 3) {
      for (int l = 0; l < out.length; l++) {
        double b = 1 / (1 + scale * x[l]);
        out[l] = b * b * b;
      }
    } else {
      for (int l = 0; l < out.length; l++) {
        out[l] = StrictMath.pow(1 + scale * x[l], -n);
      }
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
