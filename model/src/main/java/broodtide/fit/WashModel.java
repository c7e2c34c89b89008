package broodtide.fit;

import broodtide.wash.HalfCup;
import broodtide.wash.Wash;
import org.apache.commons.math3.special.Gamma;
import org.apache.commons.math3.util.FastMath;

/**
 * How a wash comes about: a negative binomial around bees x recovery x frame factor x mites per
 * bee. Spread from the method, the frame and bees that were not counted adds to the spread between
 * scoops.
 */
final class WashModel {
  private final int mites;
  private final double exposure;
  private final double extraVariance;
  private final double logFactorial;

  WashModel(Wash wash) {
    mites = wash.mites();
    exposure = wash.exposure();
    double recovery = wash.method().recovery().sd() / wash.method().recovery().mean();
    double frame = wash.frame().factor().sd() / wash.frame().factor().mean();
    double bees = wash.beesAssumed() ? HalfCup.usual().sd() / HalfCup.usual().bees() : 0;
    extraVariance = recovery * recovery + frame * frame + bees * bees;
    logFactorial = Gamma.logGamma(mites + 1.0);
  }

  /** Mites expected. */
  double mean(double mitesPerBee) {
    return exposure * mitesPerBee;
  }

  /** Size of the negative binomial when scoops alone would have a given one. */
  double size(double dispersion) {
    return 1 / (1 / dispersion + extraVariance);
  }

  /** Log-likelihood of the count. */
  double logLikelihood(double mitesPerBee, double dispersion) {
    return logProbability(mites, mean(mitesPerBee), size(dispersion), logFactorial);
  }

  /** Log-probability of any count. */
  static double logProbability(int count, double mean, double size) {
    return logProbability(count, mean, size, Gamma.logGamma(count + 1.0));
  }

  private static double logProbability(int count, double mean, double size, double logFactorial) {
    if (!(mean > 0)) {
      return count == 0 ? 0 : Double.NEGATIVE_INFINITY;
    }
    double noneInOne = -FastMath.log1p(mean / size);
    double rest = FastMath.log(mean / (size + mean));
    return Gamma.logGamma(count + size)
        - Gamma.logGamma(size)
        - logFactorial
        + size * noneInOne
        + (count == 0 ? 0 : count * rest);
  }
}
