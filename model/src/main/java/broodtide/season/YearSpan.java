package broodtide.season;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.format.DateTimeParseException;
import java.util.Optional;

/**
 * A stretch of the year that comes back every year, both ends included; it may run over New Year.
 * One that holds 28 February holds the 29th of a leap year too, so that a stretch to the end of
 * February and one from 1 March leave no day between them.
 *
 * @param from first day
 * @param to last day
 */
public record YearSpan(MonthDay from, MonthDay to) {
  private static final int LEAP_YEAR = 2000;
  private static final MonthDay LEAP_DAY = MonthDay.of(2, 29);
  private static final MonthDay EVE_OF_LEAP_DAY = MonthDay.of(2, 28);

  /**
   * {@return the span that a text like {@code 05-10..07-25} names; empty when it names none}
   *
   * @param text month and day of both ends
   */
  public static Optional<YearSpan> parse(String text) {
    String[] ends = text.split("[.][.]", -1);
    if (ends.length != 2) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new YearSpan(MonthDay.parse("--" + ends[0]), MonthDay.parse("--" + ends[1])));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /**
   * {@return whether the day lies in the span}
   *
   * @param day the day
   */
  public boolean holds(LocalDate day) {
    MonthDay d = MonthDay.from(day);
    return holds(d) || (d.equals(LEAP_DAY) && holds(EVE_OF_LEAP_DAY));
  }

  private boolean holds(MonthDay d) {
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
