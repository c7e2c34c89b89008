package broodtide.pages;

import java.util.Collection;
import java.util.function.DoubleSupplier;

/**
 * A figure of the model to be held against one from outside the project. The tests and the page
 * both take it from here, so that neither can say what the other does not.
 *
 * @param what what is measured, and where
 * @param published the figure as its source gives it, and what was allowed by choice
 * @param low least value that agrees
 * @param high largest value that agrees, above {@code low}
 * @param source where the published figure comes from
 * @param misses why the model is known to miss it; blank when it agrees
 * @param measured the model's figure
 */
public record Check(
    String what,
    String published,
    double low,
    double high,
    String source,
    String misses,
    DoubleSupplier measured) {
  private static final int LEAST_DIGITS = 3;

  /**
   * A figure within a published range.
   *
   * @param what what is measured, and where
   * @param published the figure as its source gives it
   * @param low least value that agrees
   * @param high largest value that agrees
   * @param source where it comes from
   * @param measured the model's figure
   * @return the check
   */
  public static Check within(
      String what,
      String published,
      double low,
      double high,
      String source,
      DoubleSupplier measured) {
    return new Check(what, published, low, high, source, "", measured);
  }

  /**
   * The same, known to miss. It fails when the model comes to agree, so that no excuse outlives its
   * reason.
   *
   * @param why the reason, as far as it is known
   * @return the check
   */
  public Check missedBecause(String why) {
    return new Check(what, published, low, high, source, why, measured);
  }

  /** Fails unless the figure lies in the range, or outside it where it is known to miss. */
  public void verify() {
    double value = measured.getAsDouble();
    boolean agrees = value >= low && value <= high;
    if (agrees != misses.isBlank()) {
      throw new AssertionError(
          String.format(
              "%s: the model gives %s; published %s, agreeing from %s to %s%s",
              what,
              value,
              published,
              low,
              high,
              agrees ? "; it was known to miss, so take that remark away" : ""));
    }
  }

  /**
   * Checks as a table.
   *
   * @param checks in the order of the page
   * @return Markdown
   */
  public static String table(Collection<Check> checks) {
    MarkdownTable table =
        new MarkdownTable("what", "model:", "published", "held to", "verdict", "source");
    for (Check c : checks) {
      int digits = c.digits();
      table.row(
          c.what,
          Figures.of(c.measured.getAsDouble(), digits),
          c.published,
          c.range(digits),
          c.misses.isBlank() ? "agrees" : "misses: " + c.misses,
          c.source);
    }
    return table.toString();
  }

  /** As many digits as the narrowness of the range asks for, and no fewer than three. */
  private int digits() {
    double size = Math.max(Math.abs(low), Math.abs(high));
    double width = high - low;
    if (Double.isInfinite(size)) {
      return LEAST_DIGITS;
    }
    return Math.max(LEAST_DIGITS, (int) Math.ceil(Math.log10(size / width)) + 1);
  }

  private String range(int digits) {
    if (high == Double.POSITIVE_INFINITY) {
      return Figures.of(low, digits) + " or more";
    }
    return low == Double.NEGATIVE_INFINITY
        ? Figures.of(high, digits) + " or less"
        : Figures.of(low, digits) + " to " + Figures.of(high, digits);
  }

  @Override
  public String toString() {
    return what;
  }
}
