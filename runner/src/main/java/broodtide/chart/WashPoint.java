package broodtide.chart;

import java.time.LocalDate;

/**
 * One count as drawn: a point with an interval bar, longer on one side as need be.
 *
 * @param date day of the count
 * @param value what it says, in the unit of the chart
 * @param interval the range it leaves open
 * @param note words shown when the pointer rests on it; may be empty
 * @param kind how the mites were counted, which sets the shape
 */
public record WashPoint(LocalDate date, double value, Range interval, String note, Kind kind) {
  /** How mites were counted. */
  public enum Kind {
    /** In a wash: a full dot. */
    WASH,
    /** On a board under the colony: a hollow diamond. */
    BOARD
  }

  /**
   * A wash.
   *
   * @param date day of the wash
   * @param value what it says, in the unit of the chart
   * @param interval the range it leaves open
   * @param note words shown when the pointer rests on it; may be empty
   */
  public WashPoint(LocalDate date, double value, Range interval, String note) {
    this(date, value, interval, note, Kind.WASH);
  }

  public WashPoint {
    if (!(value >= interval.low() && value <= interval.high())) {
      throw new IllegalArgumentException(
          (kind == Kind.WASH ? "wash of " : "board of ")
              + date
              + " is "
              + value
              + ", outside its own interval of "
              + interval.low()
              + " to "
              + interval.high());
    }
  }
}
