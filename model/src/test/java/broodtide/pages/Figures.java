package broodtide.pages;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as a page shows them: plain digits, no exponent where people would not write one. */
public final class Figures {
  private Figures() {}

  /**
   * A number to so many digits, without trailing zeros behind the point.
   *
   * @param value the number
   * @param digits significant digits, 1 to 15
   * @return for example 0.0045, 27.3 or 12,400
   */
  public static String of(double value, int digits) {
    if (Double.isInfinite(value)) {
      return value > 0 ? "infinite" : "minus infinite";
    }
    if (value == 0) {
      return "0";
    }
    BigDecimal rounded = new BigDecimal(value).round(new MathContext(digits)).stripTrailingZeros();
    double size = Math.abs(value);
    if (size >= 1e7 || size < 1e-5) {
      return rounded.toString().replace("E+", "e").replace("E", "e");
    }
    String plain = rounded.toPlainString();
    return size < 10_000 ? plain : grouped(plain);
  }

  private static String grouped(String plain) {
    int point = plain.indexOf('.');
    int end = point < 0 ? plain.length() : point;
    StringBuilder out = new StringBuilder(plain);
    for (int at = end - 3; at > (plain.startsWith("-") ? 1 : 0); at -= 3) {
      out.insert(at, ',');
    }
    return out.toString();
  }
}
