package broodtide.wash;

import broodtide.measure.OutOfRange;
import broodtide.measure.Tag;

/**
 * A factor between what is in the colony and what a wash shows, with how well it is known.
 *
 * @param mean its mean, a pure number, above 0
 * @param sd its standard deviation, 0 or more
 * @param tag how the mean is known; the standard deviation is a choice unless the source says more
 * @param source where it comes from
 */
public record Factor(double mean, double sd, Tag tag, String source) {
  /** Checks the range. */
  public Factor {
    OutOfRange.check("mean", mean, 1e-6, 1e6, "1");
    OutOfRange.check("sd", sd, 0, mean, "1");
  }
}
