package broodtide.season;

import java.time.LocalDate;
import java.time.MonthDay;

/**
 * A stretch of the year that comes back every year, both ends included; it may run over New Year.
 *
 * @param from first day
 * @param to last day
 */
public record YearSpan(MonthDay from, MonthDay to) {
  private static final int LEAP_YEAR = 2000;

  /**
   * {@return whether the day lies in the span}
   *
   * @param day the day
   */
  public boolean holds(LocalDate day) {
    MonthDay d = MonthDay.from(day);
    boolean wraps = to.isBefore(from);
    boolean started = !d.isBefore(from);
    boolean open = !d.isAfter(to);
    return wraps ? started || open : started && open;
  }

  /** {@return the same season south of the equator, half a year later} */
  public YearSpan southern() {
    return new YearSpan(halfYearLater(from), halfYearLater(to));
  }

  private static MonthDay halfYearLater(MonthDay day) {
    LocalDate d = day.atYear(LEAP_YEAR);
    return d.getMonthValue() == 2 && d.getDayOfMonth() == 29
        ? MonthDay.of(8, 29)
        : MonthDay.from(d.plusMonths(6));
  }
}
