package broodtide.catalog;

import broodtide.fit.Prior;
import broodtide.measure.OutOfRange;
import broodtide.measure.Tag;

/**
 * What a miticide does in apiaries where mites resist it. Immutable.
 *
 * @param share share of the mites that it takes in the middle such apiary, 0 to 1
 * @param factor factor on its hazards that shows this share where its efficacy was measured
 * @param logSd spread of that factor between such apiaries and their colonies, in natural
 *     logarithms
 * @param source where the figures come from
 */
public record Resistance(double share, double factor, double logSd, String source) {
  /**
   * Standard deviation of the logit between such apiaries: eight normal draws lie 2.85 of them
   * apart, and eight apiaries lay from 4 to 89.5 %.
   */
  public static final double APIARIES = 1.87;

  /** Checks ranges. */
  public Resistance {
    OutOfRange.check("share", share, 0, 1, "1");
    OutOfRange.check("factor", factor, 1e-6, 1, "1");
    OutOfRange.check("logSd", logSd, 0, 5, "1");
  }

  /**
   * {@return the share of one colony in one such apiary, so many standard deviations from the
   * middle}
   *
   * @param deviations of apiaries and colonies together, any number
   */
  public double share(double deviations) {
    double spread = Math.hypot(APIARIES, PooledEfficacy.COLONIES);
    return 1 / (1 + (1 / share - 1) * Math.exp(-deviations * spread));
  }

  /** {@return what is believed of its efficacy factor in such an apiary} */
  public Prior belief() {
    return new Prior(
        "factor on the hazards of a miticide that mites resist",
        factor,
        logSd,
        5,
        Tag.DERIVED,
        source);
  }
}
