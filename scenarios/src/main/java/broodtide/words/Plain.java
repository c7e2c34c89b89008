package broodtide.words;

import broodtide.assessment.QuantileSummary;
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

  private static final double LEAST = 0.1;

  /** No colony lives with more; values above it are not told apart. */
  private static final int MOST = 50;

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
   * {@return an infestation in mites per 100 bees, from {@code under 0.1}, too few for a wash to
   * show, to {@code more than 50}}
   *
   * @param perHundred mites per 100 bees, 0 or more
   */
  public static String level(double perHundred) {
    if (toldApart(perHundred)) {
      return Digits.two(perHundred);
    }
    return perHundred < LEAST ? "under " + LEAST : "more than " + MOST;
  }

  /** Whether an infestation is written as a figure and not as under or over one. */
  static boolean toldApart(double perHundred) {
    return !(perHundred > 0 && perHundred < LEAST) && !(perHundred > MOST);
  }

  /**
   * {@return a range of infestations: {@code 15 to more than 50}}
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
   * {@return an infestation with its interval: {@code 2.3 mites per 100 bees (90 % interval 1.2 to
   * 4.0)}}
   *
   * @param infestation mites per 100 bees
   */
  public static String levelWithRange(QuantileSummary infestation) {
    return level(infestation.median())
        + " mites per 100 bees (90 % interval "
        + levels(infestation.q05(), infestation.q95())
        + ")";
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

  /**
   * {@return a treatment threshold as pictures of infestations name it, where it lies a little
   * higher for what a wash misses: {@code 3 in a wash}}
   *
   * @param perHundred mites per 100 adult bees as a wash shows them
   */
  public static String inWash(double perHundred) {
    return threshold(perHundred) + " in a wash";
  }

  /**
   * {@return a sentence with a capital at its beginning}
   *
   * @param sentence one letter or more
   */
  public static String capital(String sentence) {
    return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
  }
}
