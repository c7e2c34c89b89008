package broodtide.catalog;

import broodtide.fit.RandomEffects;
import java.util.List;
import org.apache.commons.math3.util.FastMath;

/**
 * What the trials of a control say together: random effects on the logits of their shares, each
 * corrected for the mites that fall of themselves. Immutable.
 *
 * @param logit mean of the trials, logit of the share
 * @param error standard error of that mean
 * @param between standard deviation between trials, logits
 * @param trials trials that count
 */
public record PooledEfficacy(double logit, double error, double between, int trials) {
  /**
   * Standard deviation of the logit between the colonies of one trial: derived from trials that
   * print one.
   */
  public static final double COLONIES = 0.8;

  /** Colonies of a trial whose number was not seen: {@value}, by choice. */
  public static final int USUAL_COLONIES = 8;

  /** Fewer trials than this cannot tell how far trials differ. Choice. */
  public static final int FEW = 3;

  /**
   * Standard deviation between trials, in logits, where there are too few to tell: the middle of
   * the uses with three trials or more, rounded.
   */
  public static final double USUAL_BETWEEN = 1.1;

  /**
   * {@return what trials say together}
   *
   * @param trials at least one that counts
   */
  public static PooledEfficacy of(List<EfficacyTrial> trials) {
    List<EfficacyTrial> counted = trials.stream().filter(EfficacyTrial::pooled).toList();
    double[] logits = counted.stream().mapToDouble(t -> logit(t.corrected())).toArray();
    double[] variances =
        counted.stream()
            .mapToDouble(t -> COLONIES * COLONIES / t.colonies().orElse(USUAL_COLONIES))
            .toArray();
    RandomEffects pooled =
        counted.size() < FEW
            ? RandomEffects.given(logits, variances, USUAL_BETWEEN)
            : RandomEffects.of(logits, variances);
    return new PooledEfficacy(
        pooled.mean(), pooled.standardError(), pooled.between(), pooled.trials());
  }

  /** {@return the share that the middle trial takes, 0 to 1} */
  public double share() {
    return share(0);
  }

  /**
   * {@return the share of one colony in one trial, so many standard deviations from the middle}
   *
   * @param deviations of trials and colonies together, any number
   */
  public double share(double deviations) {
    return 1 / (1 + FastMath.exp(-logit - deviations * spread()));
  }

  /**
   * {@return the share that a trial takes on average, so many standard deviations from the middle}
   *
   * @param deviations of trials alone, any number
   */
  public double trial(double deviations) {
    return 1 / (1 + FastMath.exp(-logit - deviations * between));
  }

  /** {@return standard deviation of the logit of one colony in one trial} */
  public double spread() {
    return FastMath.hypot(between, COLONIES);
  }

  private static double logit(double share) {
    return FastMath.log(share / (1 - share));
  }
}
