package broodtide.words;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as people read them: no more digits than are known. Always English, on any machine. */
public final class Digits {
  private static final MathContext TWO = new MathContext(2, RoundingMode.HALF_EVEN);

  private Digits() {}

  /**
   * An uncertain value with two significant digits: {@code 0.012}, {@code 4.0}, {@code 37}, {@code
   * 24,000}.
   *
   * @param value the number, finite
   * @return {@code unknown} for a value that is not a number
   */
  public static String two(double value) {
    if (!Double.isFinite(value)) {
      return Double.isNaN(value) ? "unknown" : value > 0 ? "unlimited" : "unlimited below 0";
    }
    if (value == 0) {
      return "0";
    }
    BigDecimal rounded = rounded(value);
    int decimals = Math.max(0, rounded.precision() < 2 ? rounded.scale() + 1 : rounded.scale());
    return String.format(Locale.ROOT, "%,." + decimals + "f", rounded);
  }

  /** A finite value with two significant digits. */
  static BigDecimal rounded(double value) {
    return new BigDecimal(value).round(TWO);
  }

  /**
   * {@return a range of uncertain values: {@code 1.2 to 4.0}; one value when both ends read alike}
   *
   * @param low lower end
   * @param high upper end, not below the lower
   */
  public static String range(double low, double high) {
    String from = two(low);
    String to = two(high);
    return from.equals(to) ? from : from + " to " + to;
  }

  /**
   * {@return a middle value with its range: {@code 2.3 (1.2 to 4.0)}}
   *
   * @param middle the figure between them
   * @param low lower end
   * @param high upper end, not below the lower
   */
  public static String withRange(double middle, double low, double high) {
    return two(middle) + " (" + range(low, high) + ")";
  }

  /**
   * {@return a whole number that is known exactly: {@code 24,810}}
   *
   * @param value the number, finite
   */
  public static String count(long value) {
    return String.format(Locale.ROOT, "%,d", value);
  }

  /**
   * {@return a number of things that is known exactly: {@code 1 mite}, {@code 24 mites}}
   *
   * @param count 0 or more
   * @param noun the thing, in the singular; an s makes it many
   */
  public static String counted(long count, String noun) {
    return count(count) + " " + noun + (count == 1 ? "" : "s");
  }

  /**
   * {@return a known number such as a mark on an axis, without needless digits: {@code 0.5}, {@code
   * 3}}
   *
   * @param value the number, finite
   */
  public static String plain(double value) {
    BigDecimal v = new BigDecimal(value).round(new MathContext(6)).stripTrailingZeros();
    return String.format(Locale.ROOT, "%,." + Math.max(0, v.scale()) + "f", v);
  }

  /**
   * {@return a share in hundredths: {@code 37 %}} Shares that would round to nothing or to all
   * without being it read {@code under 1 %} and {@code over 99 %}.
   *
   * @param share 0 to 1; values outside are written as they are
   */
  public static String percent(double share) {
    return Double.isFinite(share) ? hundredths(share) + " %" : hundredths(share);
  }

  /**
   * {@return a range of shares in hundredths: {@code 46 to 98 %}}
   *
   * @param low 0 to 1; values outside are written as they are
   * @param high no less than that
   */
  public static String percents(double low, double high) {
    return hundredths(low) + " to " + percent(high);
  }

  private static String hundredths(double share) {
    if (!Double.isFinite(share)) {
      return "unknown";
    }
    if (share > 0 && share < 0.01) {
      return "under 1";
    }
    if (share > 0.99 && share < 1) {
      return "over 99";
    }
    return String.format(Locale.ROOT, "%,.0f", Math.rint(share * 100) + 0.0);
  }

  /**
   * {@return a chance estimated by simulated seasons: as {@link #percent}, but never nothing and
   * never all, for so many seasons cannot show that}
   *
   * @param chance 0 to 1
   */
  public static String chance(double chance) {
    return percent(possible(chance));
  }

  /**
   * {@return a range of such chances: {@code 4 to 68 %}; one value when both ends read alike}
   *
   * @param low 0 to 1
   * @param high 0 to 1, no less than that
   */
  public static String chances(double low, double high) {
    String to = chance(high);
    return chance(low).equals(to) ? to : hundredths(possible(low)) + " to " + to;
  }

  private static double possible(double chance) {
    return chance <= 0 ? Double.MIN_VALUE : chance >= 1 ? Math.nextDown(1.0) : chance;
  }
}
