package broodtide.words;

import java.time.LocalDate;
import java.time.MonthDay;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Days and infestations as people write them. */
public final class Plain {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT =
      DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
  private static final DateTimeFormatter EVERY_YEAR =
      DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);

  private static final double LEAST = 0.01;

  /** One mite per bee; what lies above it is not told apart. */
  private static final int ONE_A_BEE = 100;

  private Plain() {}

  /**
   * {@return a day in a sentence: {@code 5 October 2025}}
   *
   * @param day the day
   */
  public static String day(LocalDate day) {
    return DAY.format(day);
  }

  /**
   * {@return a day in a table: {@code 5 Oct}}
   *
   * @param day the day
   */
  public static String shortDay(LocalDate day) {
    return SHORT.format(day);
  }

  /**
   * {@return a day of every year: {@code 5 October}}
   *
   * @param day the day
   */
  public static String day(MonthDay day) {
    return EVERY_YEAR.format(day);
  }

  /**
   * {@return an infestation in mites per 100 bees, from {@code under 0.01}, a mite or two in a
   * whole colony, to {@code over 100}}
   *
   * @param perHundred mites per 100 bees, 0 or more
   */
  public static String level(double perHundred) {
    if (toldApart(perHundred)) {
      return Digits.two(perHundred);
    }
    return perHundred < LEAST ? "under " + LEAST : "over " + ONE_A_BEE;
  }

  /** Whether an infestation is written as a figure and not as under or over one. */
  static boolean toldApart(double perHundred) {
    return !(perHundred > 0 && perHundred < LEAST) && !(perHundred >= ONE_A_BEE);
  }

  /**
   * {@return a range of infestations: {@code 15 to over 100}}
   *
   * @param low lower end, mites per 100 bees
   * @param high upper end, mites per 100 bees
   */
  public static String levels(double low, double high) {
    String from = level(low);
    String to = level(high);
    return from.equals(to) ? from : from + " to " + to;
  }

  /**
   * {@return a treatment threshold in two digits, without zeros that say nothing: {@code 3}, {@code
   * 4.7}}
   *
   * @param perHundred mites per 100 adult bees
   */
  public static String threshold(double perHundred) {
    return Digits.plain(Digits.rounded(perHundred).doubleValue());
  }
}
