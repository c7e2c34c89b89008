package broodtide.files;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * A table as RFC 4180 writes it: UTF-8 without a mark, commas, lines that end in CR LF, quotes
 * around cells that need them.
 *
 * <p>Spreadsheets take a cell that begins with {@code = + - @}, a tab or a line break for a formula
 * and run it. Texts that begin so, after blanks or not, get an apostrophe in front, which
 * spreadsheets show as the sign for plain text; other programs should take it off. Where a
 * semicolon or a tab parts cells, a spreadsheet may cut a text there: what would then begin a cell
 * gets its apostrophe too. Numbers are written by {@link #number} alone and stay as they are.
 */
public final class Csv {
  private static final String BLANKS = "[\\s\\p{Z}\\p{Cf}\"]*";
  private static final String SIGN = "[=+\\-@\uff1d\uff0b\uff0d\uff20]";
  private static final Pattern OPENING = Pattern.compile("[\\s\\p{Z}\\p{Cf}]*" + SIGN);
  private static final Pattern BREAK = Pattern.compile("[\t\r\n]");
  private static final Pattern INNER = Pattern.compile("([,;|\t\r\n]" + BLANKS + ")(" + SIGN + ")");

  /** Less than one mite or one chance in any number of colonies that can be simulated. */
  private static final double LEAST = 1e-6;

  private static final MathContext SIX = new MathContext(6);

  private final StringBuilder out = new StringBuilder();
  private final int columns;

  /**
   * A table without rows.
   *
   * @param head names of its columns
   */
  public Csv(List<String> head) {
    columns = head.size();
    line(head);
  }

  /**
   * Adds a row of cells made by {@link #text}, {@link #number} and the like.
   *
   * @param cells one for each column
   * @return this table
   * @throws IllegalArgumentException when there are not as many cells as columns
   */
  public Csv row(List<String> cells) {
    if (cells.size() != columns) {
      throw new IllegalArgumentException(
          "row " + cells + " has " + cells.size() + " cells; the table has " + columns);
    }
    line(cells);
    return this;
  }

  /**
   * {@return a cell of text that no spreadsheet will run}
   *
   * @param text any text
   */
  public static String text(String text) {
    boolean begins = OPENING.matcher(text).lookingAt() || BREAK.matcher(text).lookingAt();
    return (begins ? "'" : "") + INNER.matcher(text).replaceAll("$1'$2");
  }

  /**
   * {@return a number with six significant digits and without an exponent; 0 for what no colony can
   * hold; empty when it is not finite}
   *
   * @param value any number
   */
  public static String number(double value) {
    if (Math.abs(value) < LEAST) {
      return "0";
    }
    return Double.isFinite(value)
        ? new BigDecimal(value).round(SIX).stripTrailingZeros().toPlainString()
        : "";
  }

  /**
   * {@return cells of values: texts as {@link #text} has them, fractions as {@link #number}, days
   * as ISO 8601, nothing for null}
   *
   * @param values texts, numbers and days
   */
  public static List<String> cells(List<? extends @Nullable Object> values) {
    return values.stream().map(Csv::cell).toList();
  }

  private static String cell(@Nullable Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof String text) {
      return text(text);
    }
    return value instanceof Double number ? number(number) : value.toString();
  }

  /** {@return the table's text} */
  public String finish() {
    return out.toString();
  }

  private void line(List<String> cells) {
    String between = "";
    for (String cell : cells) {
      out.append(between).append(quoted(cell));
      between = ",";
    }
    out.append("\r\n");
  }

  private static String quoted(String cell) {
    boolean plain = cell.chars().noneMatch(c -> ",;\t\"\r\n".indexOf(c) >= 0);
    return plain && cell.strip().equals(cell) ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }
}
