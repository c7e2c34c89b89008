package broodtide.chart;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** Small drawings in a row of letters. */
public final class Spark {
  private static final String BLOCKS = "\u2581\u2582\u2583\u2584\u2585\u2586\u2587\u2588";
  private static final String ASCII = "_.-=+*%#";

  private Spark() {}

  /**
   * {@return a line of one letter per value, low to high}
   *
   * @param values the values; those that are not numbers leave a blank
   * @param unicode whether block letters may be used
   */
  public static String line(List<Double> values, boolean unicode) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double v : values) {
      low = Double.isFinite(v) ? Math.min(low, v) : low;
      high = Double.isFinite(v) ? Math.max(high, v) : high;
    }
    String steps = unicode ? BLOCKS : ASCII;
    StringBuilder s = new StringBuilder();
    for (double v : values) {
      double share = high > low ? (v - low) / (high - low) : 0;
      s.append(Double.isFinite(v) ? steps.charAt((int) Math.round(share * 7)) : ' ');
    }
    return s.toString();
  }

  /**
   * {@return a value with its 50 and 90 % ranges on a scale shared by several rows, for instance
   * {@code --==|===----}}
   *
   * @param e the value; ranges it lacks are not drawn
   * @param scale what the row spans; values beyond it are moved to its ends
   * @param width letters in the row, 5 or more
   * @param unicode whether line letters may be used
   */
  public static String fan(Estimate e, Interval scale, int width, boolean unicode) {
    if (width < 5 || !(scale.high() > scale.low())) {
      throw new IllegalArgumentException(
          "a fan needs 5 letters or more and a scale with some length; it has "
              + width
              + " and "
              + scale);
    }
    char[] row = " ".repeat(width).toCharArray();
    fill(row, e.most(), scale, unicode ? '\u2500' : '-');
    fill(row, e.half(), scale, unicode ? '\u2501' : '=');
    row[place(e.median(), scale, width)] = unicode ? '\u254b' : '|';
    return new String(row);
  }

  private static void fill(char[] row, @Nullable Interval range, Interval scale, char letter) {
    if (range == null) {
      return;
    }
    int to = place(range.high(), scale, row.length);
    for (int i = place(range.low(), scale, row.length); i <= to; i++) {
      row[i] = letter;
    }
  }

  private static int place(double value, Interval scale, int width) {
    double share = (value - scale.low()) / (scale.high() - scale.low());
    return (int) Math.round(Math.max(0, Math.min(1, share)) * (width - 1));
  }
}
