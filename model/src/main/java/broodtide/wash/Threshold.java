package broodtide.wash;

import broodtide.measure.OutOfRange;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A treatment threshold for a part of the year, in mites per as many bees as its {@link
 * ThresholdSet} counts by. It holds in a stage, or on days of the calendar, or, with neither, on
 * every day.
 *
 * @param stage the stage of the year, or null
 * @param days days of the calendar as they are north of the equator, or null
 * @param mites infestation at which the source advises to act; 0.01 to 1,000
 * @param upTo upper end where the source gives a range, else null
 * @param fall mites that fall on a board in a day above which the source advises to act, 0.01 to
 *     1,000; null where it says nothing of it
 * @param note how the source's figure was taken over, may be null
 */
public record Threshold(
    @Nullable Stage stage,
    @Nullable YearSpan days,
    double mites,
    @Nullable Double upTo,
    @Nullable Double fall,
    @Nullable String note) {
  /**
   * Checks the ranges.
   *
   * @throws OutOfRange when a figure lies outside its range, or both stage and days are given
   */
  public Threshold {
    if (stage != null && days != null) {
      throw new OutOfRange("days", "beside \"stage\"", "one of the two");
    }
    OutOfRange.check("mites", mites, 0.01, 1000, "mites");
    if (upTo != null) {
      OutOfRange.check("upTo", upTo, mites, 1000, "mites");
    }
    if (fall != null) {
      OutOfRange.check("dailyFall", fall, 0.01, 1000, "mites a day");
    }
  }

  /** Whether it holds on a day of a stage. */
  boolean holds(Stage current, LocalDate day, boolean southern) {
    if (days != null) {
      return (southern ? days.southern() : days).holds(day);
    }
    return stage == null || stage == current;
  }

  /** When it holds, in words for messages. */
  String when() {
    return stage != null ? stage.id() : days != null ? days.from() + " to " + days.to() : "any day";
  }
}
