package broodtide.fit;

import broodtide.wash.Wash;
import java.util.List;
import org.apache.commons.math3.util.FastMath;

/**
 * Two ways to forecast a wash without a model of the colony. Each carries the uncertainty of its
 * own counts, with half a mite added so that a wash of nothing has a rate.
 */
final class Baselines {
  private static final double HALF_A_MITE = 0.5;

  private Baselines() {}

  /**
   * {@return the next wash is like the last}
   *
   * @param washes the washes before it, by date, at least one
   * @param next the wash to forecast; its count is not looked at
   */
  public static CountDistribution noChange(List<Wash> washes, Wash next) {
    Wash last = washes.get(washes.size() - 1);
    double shape = last.mites() + HALF_A_MITE;
    double mean = shape / last.exposure() * next.exposure();
    return CountDistribution.mixture(new double[] {mean}, new double[] {shape});
  }

  /**
   * {@return the line through the logarithms of the last two washes goes on; with one wash, no
   * change}
   *
   * @param washes the washes before it, by date, at least one
   * @param next the wash to forecast; its count is not looked at
   */
  public static CountDistribution exponential(List<Wash> washes, Wash next) {
    if (washes.size() < 2) {
      return noChange(washes, next);
    }
    Wash a = washes.get(washes.size() - 2);
    Wash b = washes.get(washes.size() - 1);
    double gone = b.date().toEpochDay() - a.date().toEpochDay();
    if (gone <= 0) {
      return noChange(washes, next);
    }
    double ahead = (next.date().toEpochDay() - b.date().toEpochDay()) / gone;
    double logA = FastMath.log((a.mites() + HALF_A_MITE) / a.exposure());
    double logB = FastMath.log((b.mites() + HALF_A_MITE) / b.exposure());
    double expected = logB + ahead * (logB - logA);
    double variance =
        (1 + ahead) * (1 + ahead) / (b.mites() + HALF_A_MITE)
            + ahead * ahead / (a.mites() + HALF_A_MITE);
    double most = FastMath.log(20_000);
    double log = Math.min(most, expected + FastMath.log(next.exposure()));
    return CountDistribution.logNormalPoisson(FastMath.exp(log), Math.sqrt(variance));
  }
}
