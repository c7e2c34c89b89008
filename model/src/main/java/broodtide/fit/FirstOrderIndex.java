package broodtide.fit;

import broodtide.measure.OutOfRange;
import broodtide.wash.Interval;
import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * What share of the spread of an answer one unknown accounts for by itself: the variance of the
 * mean answer at a given value of the unknown over the variance of the answer (Sobol' 1993, Math.
 * Model. Comput. Exp. 1:407). Unknowns that depend on each other, as they do once washes are known,
 * share what they have in common, so that shares may add up to more than 1.
 *
 * <p>It is estimated from draws that are there already (Plischke, Borgonovo &amp; Smith 2013, Eur.
 * J. Oper. Res. 226:536): the draws are parted into classes of equal size by the unknown, and the
 * spread of the class means is held against the whole. What class means spread by chance alone is
 * taken off (Kelley 1935, Proc. Natl. Acad. Sci. 21:554).
 *
 * @param share the estimate; may fall a little below 0 by chance
 * @param range its 90 % range, by the first-order variance of a ratio of means; draws count as
 *     independent
 */
public record FirstOrderIndex(double share, Interval range) {
  /** Fewest draws. */
  public static final int LEAST = 64;

  /** Classes at most, and draws in each at least; choice. */
  private static final int MOST_CLASSES = 48;

  private static final int LEAST_IN_CLASS = 16;
  private static final double LEVEL = 0.9;

  /** {@return whether it can be told from 0} */
  public boolean differsFromZero() {
    return range.low() > 0;
  }

  /**
   * Estimates it.
   *
   * @param unknown the unknown, {@value #LEAST} draws or more; only their order counts
   * @param answer the answer of each draw; when all are the same, nothing accounts for anything
   * @return the index
   */
  public static FirstOrderIndex of(double[] unknown, double[] answer) {
    int n = answer.length;
    OutOfRange.check("draws", n, LEAST, Integer.MAX_VALUE, "1");
    OutOfRange.check("draws of the unknown", unknown.length, n, n, "1");
    // The sort is stable, so that equals keep the order of the draws.
    int[] order =
        IntStream.range(0, n)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> unknown[i]))
            .mapToInt(i -> i)
            .toArray();
    double mean = IntStream.range(0, n).mapToDouble(i -> answer[i]).average().orElseThrow();
    double[] y = IntStream.of(order).mapToDouble(i -> answer[i] - mean).toArray();
    int classes = Math.min(MOST_CLASSES, n / LEAST_IN_CLASS);
    double[] m = classMeans(y, classes);
    double all = 0;
    double within = 0;
    for (int i = 0; i < n; i++) {
      all += y[i] * y[i];
      within += (y[i] - m[i]) * (y[i] - m[i]);
    }
    if (all == 0) {
      return new FirstOrderIndex(0, new Interval(0, 0, LEVEL));
    }
    double share = 1 - within / (n - classes) / (all / (n - 1));
    double error = standardError(y, m, all / n, 1 - within / all);
    return new FirstOrderIndex(
        share,
        new Interval(
            share - Prior.NINE_IN_TEN * error,
            Math.min(1, share + Prior.NINE_IN_TEN * error),
            LEVEL));
  }

  /** The mean of its class for each draw. */
  private static double[] classMeans(double[] y, int classes) {
    double[] out = new double[y.length];
    for (int c = 0; c < classes; c++) {
      int from = (int) ((long) c * y.length / classes);
      int to = (int) ((c + 1L) * y.length / classes);
      double mean = IntStream.range(from, to).mapToDouble(i -> y[i]).average().orElseThrow();
      Arrays.fill(out, from, to, mean);
    }
    return out;
  }

  /** By what each draw moves the ratio of the two variances. */
  private static double standardError(double[] y, double[] m, double variance, double ratio) {
    double sum = 0;
    for (int i = 0; i < y.length; i++) {
      double between = 2 * y[i] * m[i] - m[i] * m[i];
      double moved = (between - ratio * y[i] * y[i]) / variance;
      sum += moved * moved;
    }
    return Math.sqrt(sum) / y.length;
  }
}
