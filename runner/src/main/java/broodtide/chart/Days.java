package broodtide.chart;

import java.time.LocalDate;
import java.time.format.TextStyle;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Places days along the foot of a chart.
 *
 * @param first day at the left edge
 * @param last day at the right edge, after the first
 * @param left left edge in picture units
 * @param right right edge
 */
record Days(LocalDate first, LocalDate last, double left, double right) {
  /** Up to this many days the axis shows weeks of the month, from there on only months. */
  private static final int SHORT = 75;

  public Days {
    if (!first.isBefore(last)) {
      throw new IllegalArgumentException(
          "a chart needs two days or more; it has " + first + " to " + last);
    }
  }

  /**
   * A mark on the axis.
   *
   * @param date the day
   * @param x where it stands
   * @param label its name; empty when there is no room for it
   * @param year the year, on the first mark that is named and where the year changes; else empty
   */
  record Tick(LocalDate date, double x, String label, String year) {}

  double at(LocalDate date) {
    return left
        + (right - left)
            * ChronoUnit.DAYS.between(first, date)
            / ChronoUnit.DAYS.between(first, last);
  }

  /** Places days, counted from the first. */
  Scale scale() {
    return new Scale(0, number(last), false, left, right);
  }

  /** How many days after the first. */
  double number(LocalDate date) {
    return ChronoUnit.DAYS.between(first, date);
  }

  /** The marks: month starts, and on a short axis the 8th, 15th and 22nd too. */
  List<Tick> ticks(Type type) {
    List<LocalDate> dates = marks();
    double widest = 0;
    for (LocalDate d : dates) {
      widest = Math.max(widest, Lettering.width(label(d), type.size(), type.bold()));
    }
    double room = dates.size() < 2 ? right - left : at(dates.get(1)) - at(dates.get(0));
    int every = every((widest + 8) / room);
    List<Tick> ticks = new ArrayList<>();
    int year = Integer.MIN_VALUE;
    for (LocalDate d : dates) {
      boolean named =
          shortAxis() ? dates.indexOf(d) % every == 0 : (d.getMonthValue() - 1) % every == 0;
      boolean newYear = named && d.getYear() != year;
      year = newYear ? d.getYear() : year;
      ticks.add(
          new Tick(d, at(d), named ? label(d) : "", newYear ? Integer.toString(d.getYear()) : ""));
    }
    return ticks;
  }

  private boolean shortAxis() {
    return ChronoUnit.DAYS.between(first, last) <= SHORT;
  }

  private List<LocalDate> marks() {
    List<LocalDate> dates = new ArrayList<>();
    int[] days = shortAxis() ? new int[] {1, 8, 15, 22} : new int[] {1};
    for (LocalDate m = first.withDayOfMonth(1); !m.isAfter(last); m = m.plusMonths(1)) {
      for (int day : days) {
        LocalDate d = m.withDayOfMonth(day);
        if (!d.isBefore(first) && !d.isAfter(last)) {
          dates.add(d);
        }
      }
    }
    return dates;
  }

  private String label(LocalDate d) {
    String month = d.getMonth().getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
    String name = month.substring(0, 3);
    return shortAxis() ? d.getDayOfMonth() + " " + name : name;
  }

  /** The fewest marks per name that leave each name its room; divides the year evenly. */
  private static int every(double needed) {
    for (int n : new int[] {1, 2, 3, 4, 6}) {
      if (n >= needed) {
        return n;
      }
    }
    return 12;
  }
}
