package broodtide.engine;

import java.util.ArrayList;
import java.util.List;

/**
 * Turns the denominators of a day into their reciprocals, five or four to a division: with p = a b,
 * 1 / a = b / p and 1 / b = a / p. Denominators lie between 1e-12 and 1e40, so that no product of
 * five leaves the range of doubles.
 */
final class Reciprocals {
  private static final int MOST = 5;

  private final double[][][] batches;

  /**
   * Takes note of the arrays.
   *
   * @param denominators arrays of equal length; their number is a sum of fives and fours
   */
  Reciprocals(List<double[]> denominators) {
    List<double[][]> all = new ArrayList<>();
    int from = 0;
    while (from < denominators.size()) {
      int left = denominators.size() - from;
      int to = from + (left % MOST == 0 ? MOST : MOST - 1);
      all.add(denominators.subList(from, to).toArray(new double[0][]));
      from = to;
    }
    batches = all.toArray(new double[0][][]);
  }

  /** Replaces every element of every array by its reciprocal. */
  void invert() {
    for (double[][] b : batches) {
      if (b.length == MOST) {
        invert(b[0], b[1], b[2], b[3], b[4]);
      } else {
        invert(b[0], b[1], b[2], b[3]);
      }
    }
  }

  private static void invert(double[] a, double[] b, double[] c, double[] d, double[] e) {
    for (int l = 0; l < a.length; l++) {
      double ab = a[l] * b[l];
      double abc = ab * c[l];
      double abcd = abc * d[l];
      double overAbcde = 1 / (abcd * e[l]);
      double overAbcd = overAbcde * e[l];
      e[l] = overAbcde * abcd;
      double overAbc = overAbcd * d[l];
      d[l] = overAbcd * abc;
      double overAb = overAbc * c[l];
      c[l] = overAbc * ab;
      double overA = overAb * b[l];
      b[l] = overAb * a[l];
      a[l] = overA;
    }
  }

  private static void invert(double[] a, double[] b, double[] c, double[] d) {
    for (int l = 0; l < a.length; l++) {
      double ab = a[l] * b[l];
      double abc = ab * c[l];
      double overAbcd = 1 / (abc * d[l]);
      double overAbc = overAbcd * d[l];
      d[l] = overAbcd * abc;
      double overAb = overAbc * c[l];
      c[l] = overAbc * ab;
      double overA = overAb * b[l];
      b[l] = overAb * a[l];
      a[l] = overA;
    }
  }
}
