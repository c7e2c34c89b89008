package broodtide.decision;

import java.util.Arrays;

/**
 * What an observation is worth before it is made: for every result that it may have, the belief is
 * moved, the best choice is made, and all is averaged over the results (Raiffa &amp; Schlaifer
 * 1961, Applied Statistical Decision Theory). Sums over counts, no random numbers.
 *
 * @param best number of the best choice after each result
 * @param chance chance of each result
 * @param value expected loss when the choice waits for the result
 */
@SuppressWarnings("ArrayRecordComponent") // thousands of figures, read only, never compared
record Preposterior(int[] best, double[] chance, double value) {
  /**
   * Works it out.
   *
   * @param likelihood chance of each result in each state, by result then state; a state's chances
   *     add up to 1
   * @param weight weight of each state, adding up to 1
   * @param loss loss of each choice in each state, by choice then state
   * @return what the observation is worth
   */
  public static Preposterior of(double[][] likelihood, double[] weight, double[][] loss) {
    int[] best = new int[likelihood.length];
    double value = 0;
    double[] joint = new double[weight.length];
    for (int y = 0; y < likelihood.length; y++) {
      for (int s = 0; s < weight.length; s++) {
        joint[s] = likelihood[y][s] * weight[s];
      }
      double least = Double.POSITIVE_INFINITY;
      for (int a = 0; a < loss.length; a++) {
        double expected = expected(joint, loss[a]);
        if (expected < least) {
          least = expected;
          best[y] = a;
        }
      }
      value += least;
    }
    return new Preposterior(best, chances(likelihood, weight), value);
  }

  /**
   * {@return chance of each result}
   *
   * @param likelihood chance of each result in each state, by result then state
   * @param weight weight of each state, adding up to 1
   */
  public static double[] chances(double[][] likelihood, double[] weight) {
    return Arrays.stream(likelihood).mapToDouble(l -> expected(weight, l)).toArray();
  }

  /**
   * {@return expected loss of the best choice when nothing more is learned}
   *
   * @param weight weight of each state, adding up to 1
   * @param loss loss of each choice in each state, by choice then state
   */
  public static double blind(double[] weight, double[][] loss) {
    return Arrays.stream(loss).mapToDouble(l -> expected(weight, l)).min().orElseThrow();
  }

  /**
   * {@return number of the best choice when nothing more is learned, the first of equals}
   *
   * @param weight weight of each state, adding up to 1
   * @param loss loss of each choice in each state, by choice then state
   */
  public static int bestBlind(double[] weight, double[][] loss) {
    int best = 0;
    for (int a = 1; a < loss.length; a++) {
      best = expected(weight, loss[a]) < expected(weight, loss[best]) ? a : best;
    }
    return best;
  }

  /**
   * {@return expected loss when the state itself is known before the choice}
   *
   * @param weight weight of each state, adding up to 1
   * @param loss loss of each choice in each state, by choice then state
   */
  public static double knowing(double[] weight, double[][] loss) {
    double sum = 0;
    for (int s = 0; s < weight.length; s++) {
      double least = Double.POSITIVE_INFINITY;
      for (double[] l : loss) {
        least = Math.min(least, l[s]);
      }
      sum += weight[s] * least;
    }
    return sum;
  }

  private static double expected(double[] weight, double[] loss) {
    double sum = 0;
    for (int s = 0; s < weight.length; s++) {
      sum += weight[s] * loss[s];
    }
    return sum;
  }
}
