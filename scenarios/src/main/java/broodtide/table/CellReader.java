package broodtide.table;

import broodtide.forms.Faults;
import broodtide.forms.TextForm;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Reads the cells of a row by column name and reports what cannot be read. */
public final class CellReader {
  private static final Pattern WHOLE = Pattern.compile("[+]?(\\d{1,9})([.,]0{1,2})?");
  private static final Pattern DECIMAL = Pattern.compile("[+]?\\d{1,9}([.,]\\d{1,9})?");

  private final Map<String, Integer> places = new HashMap<>();
  private final Faults faults;

  public CellReader(List<String> columns, Faults faults) {
    for (int i = 0; i < columns.size(); i++) {
      places.putIfAbsent(columns.get(i), i);
    }
    this.faults = faults;
  }

  /**
   * The cell's text, with plain spaces for the no-break spaces of spreadsheets; empty when it is
   * blank or the table has no such column.
   */
  public String text(String[] row, String column) {
    String text = name(row, column);
    return text.indexOf('\u00A0') < 0 ? text : text.replace('\u00A0', ' ');
  }

  /** The same as it is written, for names, which nothing may make equal. */
  public String name(String[] row, String column) {
    Integer place = places.get(column);
    return place == null ? "" : row[place];
  }

  /** The cell's text, which must not be blank. */
  public String required(int line, String[] row, String column, String mend) {
    String text = text(row, column);
    if (text.isEmpty()) {
      faults.add(line, place(column), column, null, "the cell is blank; " + mend);
    }
    return text;
  }

  /** Reports a text that is longer than any needs to be, and a name with hidden characters. */
  public void limit(int line, String[] row, String column, TextForm form) {
    String text = text(row, column);
    if (text.codePointCount(0, text.length()) > form.longest()) {
      fault(line, row, column, "expected up to " + form.longest() + " characters; shorten it");
    } else {
      form.refusal(text).ifPresent(why -> fault(line, row, column, why));
    }
  }

  /** A whole number from 0; empty when the cell is blank or cannot be read. */
  public OptionalInt count(int line, String[] row, String column) {
    String text = text(row, column);
    if (text.isEmpty()) {
      return OptionalInt.empty();
    }
    Matcher whole = WHOLE.matcher(text);
    if (whole.matches()) {
      return OptionalInt.of(Integer.parseInt(whole.group(1)));
    }
    fault(line, row, column, countFault(text, column));
    return OptionalInt.empty();
  }

  private static String countFault(String text, String column) {
    String allowed = "expected a whole number from 0";
    if (text.matches("-\\d+([.,]\\d+)?")) {
      return "a count is never negative; " + allowed;
    }
    if (text.matches("\\d{1,3}([.,' ]\\d{3})+")) {
      return "it may be a decimal or thousands; " + allowed + " without marks, such as 300";
    }
    return column.equals("bees")
        ? allowed + "; leave the cell blank when the bees were not counted"
        : allowed;
  }

  /** A number from 0, decimal point or comma; empty when the cell is blank or cannot be read. */
  public OptionalDouble number(int line, String[] row, String column) {
    String text = text(row, column);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    if (DECIMAL.matcher(text).matches()) {
      return OptionalDouble.of(Double.parseDouble(text.replace(',', '.')));
    }
    fault(line, row, column, "expected a number from 0, such as 7.5");
    return OptionalDouble.empty();
  }

  /**
   * A number of either sign, decimal point or comma; empty when the cell is blank or cannot be
   * read.
   */
  public OptionalDouble signed(int line, String[] row, String column) {
    String text = text(row, column).replace('\u2212', '-');
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    String digits = text.startsWith("-") ? text.substring(1) : text;
    if (DECIMAL.matcher(digits).matches()) {
      double size = Double.parseDouble(digits.replace(',', '.'));
      return OptionalDouble.of(text.startsWith("-") ? -size : size);
    }
    fault(line, row, column, "expected a number, such as 21.5 or -3");
    return OptionalDouble.empty();
  }

  /** A word as names are written: lower case with hyphens. */
  public static String word(String text) {
    return text.toLowerCase(Locale.ROOT).replace(' ', '-').replace('_', '-');
  }

  /** One of several words; hyphens, spaces and underscores are alike. */
  public <E> E choice(
      int line, String[] row, String column, E[] all, Function<E, String> id, E whenBlank) {
    String text = text(row, column);
    if (text.isEmpty()) {
      return whenBlank;
    }
    String word = word(text);
    for (E each : all) {
      if (id.apply(each).equals(word)) {
        return each;
      }
    }
    String choice = Arrays.stream(all).map(id).collect(Collectors.joining(", "));
    fault(line, row, column, "choose one of " + choice + ", or leave the cell blank");
    return whenBlank;
  }

  /** Reports a fault of one cell. */
  public void fault(int line, String[] row, String column, String message) {
    String text = text(row, column);
    faults.add(line, place(column), column, text.isEmpty() ? null : text, message);
  }

  private int place(String column) {
    Integer place = places.get(column);
    return place == null ? 0 : place + 1;
  }
}
