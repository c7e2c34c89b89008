package broodtide.catalog;

import broodtide.measure.OutOfRange;
import broodtide.measure.Tag;
import java.util.Optional;

/**
 * One trial of a control: a product in one place and season. Immutable.
 *
 * @param share share of the mites that fell under the treatment, as published, 0 to 1
 * @param untreated share that fell of themselves in untreated hives meanwhile, 0 to below 1; empty
 *     where there were none, or where the published share allows for it
 * @param colonies treated colonies; empty where the number was not seen
 * @param high mean daily high over the treatment, degrees Celsius; empty where it is not known
 * @param pooled whether it counts towards the control's efficacy; one that does not is shown beside
 *     it, as a check
 * @param tag how the share is known
 * @param source where it comes from, with the place
 */
public record EfficacyTrial(
    double share,
    Optional<Double> untreated,
    Optional<Integer> colonies,
    Optional<Double> high,
    boolean pooled,
    Tag tag,
    String source) {
  /** Checks ranges. */
  public EfficacyTrial {
    OutOfRange.check("share", share, Math.nextUp(0.0), Math.nextDown(1.0), "1");
    untreated.ifPresent(u -> OutOfRange.check("untreated", u, 0, Math.nextDown(share), "1"));
    colonies.ifPresent(n -> OutOfRange.check("colonies", n, 1, 100_000, "colonies"));
    high.ifPresent(h -> OutOfRange.check("high", h, -60, 60, "degrees Celsius"));
  }

  /**
   * {@return the share that the treatment itself took, 0 to 1: of the mites that would have lived
   * without it (Abbott 1925, J. Econ. Entomol. 18:265)}
   */
  public double corrected() {
    double fell = untreated.orElse(0.0);
    return (share - fell) / (1 - fell);
  }
}
