package broodtide.fit;

import broodtide.measure.OutOfRange;
import broodtide.wash.Interval;

/**
 * What share of the spread of an answer would be left if all unknowns but one were known: what that
 * one accounts for by itself and together with others (Homma &amp; Saltelli 1996, Reliab. Eng.
 * Syst. Saf. 52:1). It is meant for unknowns that do not depend on each other, as before any wash.
 *
 * <p>It is estimated by picking and freezing: each draw is answered again with the one unknown
 * drawn anew and all others frozen; half of the mean squared difference is held against the
 * variance (Jansen 1999, Comput. Phys. Commun. 117:35).
 *
 * @param share the estimate, 0 or more
 * @param range its 90 % range, by the first-order variance of a ratio of means
 */
public record TotalIndex(double share, Interval range) {
  /** Fewest draws. */
  public static final int LEAST = 64;

  private static final double LEVEL = 0.9;

  /** {@return whether it can be told from 0} */
  public boolean differsFromZero() {
    return range.low() > 0;
  }

  /**
   * Estimates it.
   *
   * @param answer the answer of each draw, {@value #LEAST} or more
   * @param anew the answer of each draw with the one unknown drawn anew
   * @return the index
   */
  public static TotalIndex of(double[] answer, double[] anew) {
    int n = answer.length;
    OutOfRange.check("draws", n, LEAST, Integer.MAX_VALUE, "1");
    OutOfRange.check("draws anew", anew.length, n, n, "1");
    double mean = 0;
    for (int i = 0; i < n; i++) {
      mean += (answer[i] + anew[i]) / (2 * n);
    }
    // Both answers of a draw have the same distribution, so both tell of the variance.
    double[] moved = new double[n];
    double[] spread = new double[n];
    double sumMoved = 0;
    double sumSpread = 0;
    for (int i = 0; i < n; i++) {
      double d = answer[i] - anew[i];
      double a = answer[i] - mean;
      double b = anew[i] - mean;
      moved[i] = d * d / 2;
      spread[i] = (a * a + b * b) / 2;
      sumMoved += moved[i];
      sumSpread += spread[i];
    }
    if (sumSpread == 0 || sumMoved == 0) {
      return new TotalIndex(0, new Interval(0, 0, LEVEL));
    }
    double share = sumMoved / sumSpread;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double influence = (moved[i] - share * spread[i]) * n / sumSpread;
      squares += influence * influence;
    }
    double error = Prior.NINE_IN_TEN * Math.sqrt(squares) / n;
    return new TotalIndex(share, new Interval(share - error, share + error, LEVEL));
  }
}
