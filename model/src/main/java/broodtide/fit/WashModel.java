package broodtide.fit;

import broodtide.wash.HalfCup;
import broodtide.wash.Wash;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.special.Beta;
import org.apache.commons.math3.special.Gamma;
import org.apache.commons.math3.util.FastMath;

/**
 * How a wash comes about: a negative binomial around bees x recovery x frame factor x mites per
 * bee. Spread from the method, the frame and bees that were not counted adds to the spread between
 * washes.
 */
final class WashModel {
  /** Most mites for which a product is faster than gamma functions, and cannot grow too small. */
  private static final int FEW = 64;

  /** One over 1, 2, 3 and so on. */
  private static final double[] SHARE =
      IntStream.rangeClosed(1, FEW).mapToDouble(k -> 1.0 / k).toArray();

  private final int mites;
  private final double bees;
  private final double exposure;
  private final double extraVariance;

  WashModel(Wash wash) {
    mites = wash.mites();
    bees = wash.beesOrAssumed();
    exposure = wash.exposure();
    double recovery = wash.method().recovery().sd() / wash.method().recovery().mean();
    double frame = wash.frame().factor().sd() / wash.frame().factor().mean();
    double cup = wash.beesAssumed() ? HalfCup.usual().sd() / HalfCup.usual().bees() : 0;
    extraVariance = recovery * recovery + frame * frame + cup * cup;
  }

  /** Mites expected; at most one on every bee, since more cannot be believed of any wash. */
  double mean(double mitesPerBee) {
    return Math.min(bees, exposure * mitesPerBee);
  }

  /** Size of the negative binomial when washes alone would have a given one. */
  double size(double dispersion) {
    return 1 / (1 / dispersion + extraVariance);
  }

  /**
   * Variance of a wash's mites over its bees besides that between washes, in squares of the mean.
   */
  double extraVariance() {
    return extraVariance;
  }

  /**
   * Log-likelihood of the count: but for the last digits {@link #logProbability}, with a product in
   * place of gamma functions where mites are few.
   */
  double logLikelihood(double mitesPerBee, double dispersion) {
    double mean = mean(mitesPerBee);
    double size = size(dispersion);
    if (mites == 0 || mites > FEW || !(mean > 0)) {
      return logProbability(mites, mean, size);
    }
    double ratio = mean / (size + mean);
    double product = 1;
    for (int k = 0; k < mites; k++) {
      product *= (size + k) * ratio * SHARE[k];
    }
    return FastMath.log(product) - size * FastMath.log1p(mean / size);
  }

  /** Log-probability of any count under a negative binomial of a mean and a size. */
  static double logProbability(int count, double mean, double size) {
    if (!(mean > 0)) {
      return count == 0 ? 0 : Double.NEGATIVE_INFINITY;
    }
    double none = -size * FastMath.log1p(mean / size);
    return count == 0
        ? none
        : none + count * FastMath.log(mean / (size + mean)) + logWays(count, size);
  }

  /**
   * Log of gamma(count + size) / (gamma(size) count!), as one slower beta function where the
   * difference of two large logarithms would lose digits.
   */
  private static double logWays(int count, double size) {
    return size < 1e5
        ? Gamma.logGamma(count + size) - Gamma.logGamma(size) - Gamma.logGamma(count + 1.0)
        : -FastMath.log(count) - Beta.logBeta(count, size);
  }

  /** Draws a count: a Poisson around a gamma. */
  static int draw(double mean, double size, RandomGenerator random) {
    if (!(mean > 0)) {
      return 0;
    }
    double rate = new GammaDistribution(random, size, mean / size).sample();
    return rate > 0 ? new PoissonDistribution(random, rate, 1e-12, 1_000_000).sample() : 0;
  }
}
