package broodtide.fit;

import broodtide.measure.OutOfRange;
import java.util.Arrays;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.stat.descriptive.moment.Mean;
import org.apache.commons.math3.util.FastMath;

/**
 * What several trials say together when each has a true value of its own: their true values are
 * normal about a common mean, and each trial saw its own with a known error. The spread between
 * trials is estimated by restricted maximum likelihood (Viechtbauer 2005, J. Educ. Behav. Stat.
 * 30:261), which unlike moments of the trials does not sink when they are few.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param mean common mean
 * @param standardError standard error of the mean
 * @param between standard deviation of the true values between trials, 0 or more
 * @param trials number of trials
 */
public record RandomEffects(double mean, double standardError, double between, int trials) {
  private static final int EVALUATIONS = 1000;

  /**
   * {@return the estimate}
   *
   * @param values what each trial saw, at least one
   * @param variances variance of the error of each, above 0
   * @throws OutOfRange when a variance is not above 0
   */
  public static RandomEffects of(double[] values, double[] variances) {
    if (values.length == 0 || values.length != variances.length) {
      throw new IllegalArgumentException("as many variances as values, and at least one");
    }
    for (double v : variances) {
      OutOfRange.check("variance of a trial", v, Double.MIN_NORMAL, Double.MAX_VALUE, "1");
    }
    double between = values.length == 1 ? 0 : between(values, variances);
    return given(values, variances, between);
  }

  /**
   * {@return the estimate where the spread between trials is known}
   *
   * @param values what each trial saw, at least one
   * @param variances variance of the error of each, above 0
   * @param between standard deviation of the true values between trials, 0 or more
   */
  public static RandomEffects given(double[] values, double[] variances, double between) {
    double[] weights = weights(variances, between * between);
    double sum = Arrays.stream(weights).sum();
    return new RandomEffects(
        new Mean().evaluate(values, weights), FastMath.sqrt(1 / sum), between, values.length);
  }

  private static double between(double[] values, double[] variances) {
    double middle = Arrays.stream(values).average().orElseThrow();
    double most =
        Arrays.stream(values).map(y -> (y - middle) * (y - middle)).sum()
            + Arrays.stream(variances).max().orElseThrow();
    UnivariateFunction likelihood = spread -> logLikelihood(values, variances, spread);
    double best =
        new BrentOptimizer(1e-10, 1e-12)
            .optimize(
                new MaxEval(EVALUATIONS),
                new UnivariateObjectiveFunction(likelihood),
                GoalType.MAXIMIZE,
                new SearchInterval(0, FastMath.sqrt(most)))
            .getPoint();
    return likelihood.value(0) >= likelihood.value(best) ? 0 : best;
  }

  /** The restricted log-likelihood, but for a constant. */
  private static double logLikelihood(double[] values, double[] variances, double between) {
    double[] weights = weights(variances, between * between);
    double mean = new Mean().evaluate(values, weights);
    double sum = 0;
    double log = 0;
    for (int i = 0; i < values.length; i++) {
      sum += weights[i];
      log += FastMath.log(weights[i]) - weights[i] * (values[i] - mean) * (values[i] - mean);
    }
    return 0.5 * (log - FastMath.log(sum));
  }

  private static double[] weights(double[] variances, double between) {
    return Arrays.stream(variances).map(v -> 1 / (v + between)).toArray();
  }
}
