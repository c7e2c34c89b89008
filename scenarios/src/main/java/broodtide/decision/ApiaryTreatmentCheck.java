package broodtide.decision;

import broodtide.decision.TreatmentCheck.Verdict;
import broodtide.fit.Prior;
import broodtide.fit.RandomEffects;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.util.FastMath;

/**
 * Whether a treatment worked in an apiary, from the hives that were given it together. What the
 * washes of each hive say of its strength is pooled; hives differ among themselves as the colonies
 * of a trial do, so that many hives which say little may tell together, and one hive alone does not
 * speak for the rest. Immutable.
 *
 * @param hives hives with washes that say something
 * @param strength middle of the treatment's strength against the usual, over the apiary
 * @param low strength that is exceeded nineteen times in twenty
 * @param high strength that is exceeded once in twenty
 * @param chanceWorked chance that it acted with at least half of its usual strength, 0 to 1, had
 *     that been as likely as not before the washes
 * @param measured logarithm of the strength by the washes alone, whatever was believed before
 * @param error standard error of {@code measured}
 */
public record ApiaryTreatmentCheck(
    int hives,
    double strength,
    double low,
    double high,
    double chanceWorked,
    double measured,
    double error) {
  /** A hive whose washes take less than this share of the prior's variance says nothing. */
  private static final double SAYS_NOTHING = 0.02;

  /**
   * {@return what the hives say together; empty when there are fewer than two that say anything}
   *
   * @param checks one per hive, of the same treatment
   */
  public static Optional<ApiaryTreatmentCheck> of(List<TreatmentCheck> checks) {
    double prior = TreatmentCheck.OPEN * TreatmentCheck.OPEN;
    List<double[]> told = new ArrayList<>();
    for (TreatmentCheck check : checks) {
      double mean = StatUtils.mean(check.strength());
      double variance = StatUtils.variance(check.strength());
      if (!check.noMites() && variance < (1 - SAYS_NOTHING) * prior) {
        // what the washes say by themselves: the posterior less the prior about a middle of 0
        double alone = 1 / (1 / variance - 1 / prior);
        told.add(new double[] {alone * mean / variance, alone});
      }
    }
    if (told.size() < 2) {
      return Optional.empty();
    }
    double between = checks.get(0).usualSpread();
    RandomEffects hives =
        RandomEffects.given(
            told.stream().mapToDouble(t -> t[0]).toArray(),
            told.stream().mapToDouble(t -> t[1]).toArray(),
            between);
    double precision = 1 / prior + 1 / (hives.standardError() * hives.standardError());
    double sd = FastMath.sqrt(1 / precision);
    double mean = hives.mean() / (hives.standardError() * hives.standardError()) / precision;
    double worked = above(mean, sd);
    double before = above(0, TreatmentCheck.OPEN);
    double odds = worked / before / Math.max(Double.MIN_NORMAL, (1 - worked) / (1 - before));
    return Optional.of(
        new ApiaryTreatmentCheck(
            told.size(),
            FastMath.exp(mean),
            FastMath.exp(mean - Prior.NINE_IN_TEN * sd),
            FastMath.exp(mean + Prior.NINE_IN_TEN * sd),
            odds / (1 + odds),
            hives.mean(),
            hives.standardError()));
  }

  private static double above(double mean, double sd) {
    return 1
        - new NormalDistribution(null, mean, sd)
            .cumulativeProbability(FastMath.log(TreatmentCheck.HALF));
  }

  /** {@return what can be said of the treatment in this apiary} */
  public Verdict verdict() {
    return TreatmentCheck.sure(chanceWorked / (1 - chanceWorked));
  }
}
