package broodtide.wash;

import broodtide.measure.OutOfRange;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Gamma;

/**
 * What is believed of a rate in mites per 100 bees after a wash. The count is Poisson about rate x
 * divisor; the prior of the rate is Jeffreys' (its square root inverted), so that given the divisor
 * the rate is gamma with shape mites + 1/2; the divisor's uncertainty is mixed in.
 */
public final class RatePosterior {
  /** Shape of Jeffreys' prior. */
  private static final double PRIOR_SHAPE = 0.5;

  /** Steps of the doubt about boards, in standard deviations; good up to some thousand mites. */
  private static final double BOARD_STEP = 0.05;

  private final double shape;
  private final Divisor divisor;

  RatePosterior(int mites, Divisor beesTimesFactors) {
    shape = mites + PRIOR_SHAPE;
    divisor = beesTimesFactors.times(0.01);
  }

  /**
   * {@return what is believed of a rate after mites were counted on a board, with the doubt about
   * what boards show of the mites that die, and from board to board}
   *
   * @param board the board
   * @param deaths mites that die in the colony while the board lies, for each mite per 100 bees;
   *     above 0
   */
  public static RatePosterior ofBoard(BoardCount board, double deaths) {
    if (!(deaths > 0)) {
      throw new OutOfRange("deaths", Double.toString(deaths), "above 0");
    }
    double variance =
        BoardCount.LOG_SD * BoardCount.LOG_SD
            + Math.log1p(BoardCount.BETWEEN_BOARDS * BoardCount.BETWEEN_BOARDS);
    // What a board shows is known by its median, and the divisor's factor has a mean of 1.
    double shown = BoardCount.SHOWN * Math.exp(variance / 2);
    return new RatePosterior(
        board.mites(), Divisor.known(100 * shown * deaths).timesLognormal(variance, BOARD_STEP));
  }

  /**
   * {@return chance that the rate is at most this, 0 to 1}
   *
   * @param perHundred mites per 100 bees, 0 or more
   */
  public double chanceAtMost(double perHundred) {
    if (perHundred <= 0) {
      return 0;
    }
    double sum = 0;
    for (int i = 0; i < divisor.values.length; i++) {
      sum +=
          divisor.weights[i]
              * Gamma.regularizedGammaP(shape, perHundred * divisor.values[i], 1e-13, 100_000);
    }
    return Math.min(1, sum);
  }

  /**
   * {@return chance that the rate is above this limit, 0 to 1}
   *
   * @param perHundred mites per 100 bees, 0 or more
   */
  public double chanceAbove(double perHundred) {
    return 1 - chanceAtMost(perHundred);
  }

  /**
   * {@return chances that the rate is above this limit, by equal shares of the doubt about method,
   * frame and half cup, those that find the fewest mites first; their mean is {@link #chanceAbove}}
   * Counts that the same hand made share that doubt.
   *
   * @param perHundred mites per 100 bees, 0 or more
   * @param shares how many, at least one
   */
  public double[] chancesAbove(double perHundred, int shares) {
    return byShare(d -> perHundred <= 0 ? 1 : upper(shape, perHundred * d), shares);
  }

  /**
   * {@return the same chances by several counts of one rate, read as one: mites and bees add up}
   * The doubt about method, frame and half cup goes together in all of them, so that a second count
   * by the same hand does not make it smaller.
   *
   * @param counts what each count says alone, at least one
   * @param perHundred mites per 100 bees, 0 or more
   * @param shares how many, at least one
   */
  public static double[] chancesAbove(List<RatePosterior> counts, double perHundred, int shares) {
    if (counts.size() == 1) {
      return counts.get(0).chancesAbove(perHundred, shares);
    }
    double shape = PRIOR_SHAPE;
    double[] divisors = new double[shares];
    for (RatePosterior count : counts) {
      shape += count.shape - PRIOR_SHAPE;
      double[] own = count.byShare(d -> d, shares);
      for (int s = 0; s < shares; s++) {
        divisors[s] += own[s];
      }
    }
    double[] out = new double[shares];
    for (int s = 0; s < shares; s++) {
      out[s] = perHundred <= 0 ? 1 : upper(shape, perHundred * divisors[s]);
    }
    return out;
  }

  /** Means of a function of the divisor in equal shares of the belief in it, smallest first. */
  private double[] byShare(DoubleUnaryOperator of, int shares) {
    int[] order =
        IntStream.range(0, divisor.values.length)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> divisor.values[i]))
            .mapToInt(i -> i)
            .toArray();
    double[] out = new double[shares];
    double below = 0;
    for (int i : order) {
      double value = of.applyAsDouble(divisor.values[i]);
      double upTo = below + divisor.weights[i] * shares;
      for (int s = (int) below; s < shares && s < upTo; s++) {
        out[s] += value * (Math.min(upTo, s + 1) - Math.max(below, s));
      }
      below = upTo;
    }
    return out;
  }

  private static double upper(double shape, double expected) {
    return Gamma.regularizedGammaQ(shape, expected, 1e-13, 100_000);
  }

  /** {@return mean rate, mites per 100 bees} */
  public double mean() {
    double sum = 0;
    for (int i = 0; i < divisor.values.length; i++) {
      sum += divisor.weights[i] / divisor.values[i];
    }
    return shape * sum;
  }

  /**
   * The rate with a share {@code p} of the belief below it.
   *
   * @param p between 0 and 1
   * @return mites per 100 bees
   */
  public double quantile(double p) {
    if (!(p > 0 && p < 1)) {
      throw new OutOfRange("p", Double.toString(p), "between 0 and 1, for example 0.9");
    }
    double high = mean();
    while (chanceAtMost(high) < p) {
      high *= 2;
    }
    double low = high;
    while (chanceAtMost(low) > p) {
      low /= 2;
    }
    if (low == high) {
      return low;
    }
    double lowLog = Math.log(low);
    double highLog = Math.log(high);
    return Math.exp(
        new BrentSolver(1e-12, 1e-12)
            .solve(1000, x -> chanceAtMost(Math.exp(x)) - p, lowLog, highLog));
  }

  /** {@return median rate, mites per 100 bees} */
  public double median() {
    return quantile(0.5);
  }

  /**
   * {@return the middle interval that holds a share {@code level} of the belief}
   *
   * @param level between 0 and 1
   */
  public Interval interval(double level) {
    double tail = (1 - level) / 2;
    return new Interval(quantile(tail), quantile(1 - tail), level);
  }
}
