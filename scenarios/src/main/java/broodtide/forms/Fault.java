package broodtide.forms;

import org.jspecify.annotations.Nullable;

/**
 * One fault in an input, with its place.
 *
 * @param file the file's name as the user gave it
 * @param line line from 1; 0 when the fault is of the whole file
 * @param column cell of the line from 1 in a table, character of the line from 1 in JSON; 0 when
 *     the fault is of the whole line
 * @param field column name or JSON path; empty when the fault is of no field
 * @param value what stands there, or null when nothing does
 * @param message what is allowed and how to mend it
 */
public record Fault(
    String file, int line, int column, String field, @Nullable String value, String message) {
  private static final int LONGEST = 60;

  /**
   * {@return a fault of a whole file}
   *
   * @param file name of the file or option
   * @param message what is wrong, what is allowed and how to mend it
   */
  public static Fault of(String file, String message) {
    return new Fault(file, 0, 0, "", null, message);
  }

  /** {@return the fault on one line: where, what, what is allowed} */
  public String text() {
    StringBuilder out = new StringBuilder(file);
    if (line > 0) {
      out.append(", line ").append(line);
    }
    if (column > 0) {
      out.append(", column ").append(column);
    }
    if (!field.isEmpty()) {
      out.append(", ").append(HiddenCharacters.blanked(field));
    }
    out.append(": ");
    if (value != null) {
      out.append(quoted(value)).append(" is not valid; ");
    }
    return out.append(message).toString();
  }

  /** A value in quotes, made short and free of hidden characters. */
  public static String quoted(String value) {
    boolean whole = value.codePointCount(0, value.length()) <= LONGEST;
    String shown = whole ? value : value.substring(0, value.offsetByCodePoints(0, LONGEST)) + "...";
    return '"' + HiddenCharacters.blanked(shown) + '"';
  }
}
