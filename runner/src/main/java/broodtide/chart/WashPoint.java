package broodtide.chart;

import java.time.LocalDate;

/**
 * One wash as drawn: a point with an interval bar, longer on one side as need be.
 *
 * @param date day of the wash
 * @param value what it says, in the unit of the chart
 * @param interval the range it leaves open
 * @param note words shown when the pointer rests on it; may be empty
 */
public record WashPoint(LocalDate date, double value, Range interval, String note) {
  public WashPoint {
    if (!(value >= interval.low() && value <= interval.high())) {
      throw new IllegalArgumentException(
          "wash of "
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
