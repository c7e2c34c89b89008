package broodtide.chart;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Numbers as they stand on axes and in descriptions; always English, on any machine. */
final class Numerals {
  private Numerals() {}

  /** An uncertain value with two digits that mean something. */
  static String two(double value) {
    if (!Double.isFinite(value)) {
      return Double.isNaN(value) ? "unknown" : value > 0 ? "unlimited" : "unlimited below 0";
    }
    if (value == 0) {
      return "0";
    }
    BigDecimal v = new BigDecimal(value).round(new MathContext(2, RoundingMode.HALF_EVEN));
    int decimals = Math.max(0, v.precision() < 2 ? v.scale() + 1 : v.scale());
    return String.format(Locale.ROOT, "%,." + decimals + "f", v);
  }

  /** A range of uncertain values; one value when both ends read alike. */
  static String range(double low, double high) {
    String from = two(low);
    String to = two(high);
    return from.equals(to) ? from : from + " to " + to;
  }

  /** A middle value with its range. */
  static String withRange(double middle, double low, double high) {
    return two(middle) + " (" + range(low, high) + ")";
  }

  /** An uncertain share in whole per cent; what is less says so. */
  static String percent(double share) {
    return share > 0 && share < 0.01 ? "under 1 %" : Math.round(100 * share) + " %";
  }

  /** A number that is known, such as a mark on an axis, without needless digits. */
  static String plain(double value) {
    BigDecimal v = new BigDecimal(value).round(new MathContext(6)).stripTrailingZeros();
    return String.format(Locale.ROOT, "%,." + Math.max(0, v.scale()) + "f", v);
  }
}
