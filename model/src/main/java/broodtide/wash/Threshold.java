package broodtide.wash;

import broodtide.measure.OutOfRange;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The threshold of one stage, in mites per as many bees as its {@link ThresholdSet} counts by.
 *
 * @param stage the stage of the year
 * @param mites from this count on, treatment or another measure is held to be worth it; above 0
 * @param upTo upper end where the source gives a range, else null
 * @param bands advice in words from the lowest count up; may be empty
 * @param note where and when in the year the source's figure stands, may be null
 */
public record Threshold(
    Stage stage, double mites, @Nullable Double upTo, List<Band> bands, @Nullable String note) {
  /** Checks the ranges and the order of the bands. */
  public Threshold {
    OutOfRange.check("mites", mites, 0.01, 1000, "mites");
    if (upTo != null) {
      OutOfRange.check("upTo", upTo, mites, 1000, "mites");
    }
    bands = Band.inOrder(bands);
  }

  /**
   * {@return the words for a count, in the set's own unit}
   *
   * @param count mites, in the bees that the threshold is per
   */
  public Optional<Band> bandAt(double count) {
    return Band.at(bands, count);
  }
}
