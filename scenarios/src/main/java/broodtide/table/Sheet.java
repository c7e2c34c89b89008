package broodtide.table;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Faults;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.csv.CsvFactory;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A table with a header line, cells parted by commas, semicolons or tabs, whichever finds the most
 * of the known columns in the header. Lines before the header that start with {@code #}, and a
 * spreadsheet's {@code sep=;}, are passed over.
 */
public final class Sheet {
  /** Takes one row. */
  public interface Row {
    /**
     * @param line line of the file, from 1
     * @param cells the cells under the header, stripped, empty where the row is short; reused
     */
    void take(int line, String[] cells);
  }

  /** Most rows below the header. */
  public static final int MOST_ROWS = 1_000_000;

  private static final CsvFactory CSV = new CsvFactory();

  private final String file;
  private final String body;
  private final char separator;
  private final int linesBefore;

  /** Column names: lower case, underscores for spaces and hyphens. */
  public final List<String> columns;

  /** What stands before the header: remarks, each on a line that begins with {@code #}. */
  public final String remarks;

  /** Line of the header, from 1. */
  final int headerLine;

  private Sheet(
      String file,
      String remarks,
      String body,
      char separator,
      int linesBefore,
      List<String> columns) {
    this.file = file;
    this.remarks = remarks;
    this.body = body;
    this.separator = separator;
    this.linesBefore = linesBefore;
    this.columns = columns;
    this.headerLine = linesBefore + 1;
  }

  /**
   * Finds the header of a table.
   *
   * @param text the whole text
   * @param file name to show in messages
   * @param known names of columns that make a header a header
   * @param required names to show when there is none
   * @throws BadInput when there is no line for a header
   */
  public static Sheet of(String text, String file, Set<String> known, List<String> required) {
    int at = 0;
    int lines = 0;
    while (at < text.length()) {
      int end = lineEnd(text, at);
      String line = text.substring(at, end).strip();
      boolean passed = line.startsWith("#") || line.regionMatches(true, 0, "sep=", 0, 4);
      if (!line.isEmpty() && !passed) {
        return headed(text, at, line, file, lines, known);
      }
      at = end + (text.startsWith("\r\n", end) ? 2 : 1);
      lines++;
    }
    throw BadInput.of(
        Fault.of(
            file, "is empty; the first line must be the header " + String.join(",", required)));
  }

  private static Sheet headed(
      String text, int at, String line, String file, int linesBefore, Set<String> known) {
    char best = ',';
    List<String> columns = List.of();
    long most = -1;
    for (char separator : new char[] {',', ';', '\t'}) {
      List<String> names = names(line, separator);
      long found = names.stream().filter(known::contains).count();
      if (found > most) {
        best = separator;
        columns = names;
        most = found;
      }
    }
    String remarks =
        text.substring(0, at)
            .lines()
            .filter(l -> l.strip().startsWith("#"))
            .collect(Collectors.joining("\n"));
    return new Sheet(file, remarks, text.substring(at), best, linesBefore, columns);
  }

  private static List<String> names(String line, char separator) {
    List<String> names = new ArrayList<>();
    for (String cell : line.split(String.valueOf(separator), -1)) {
      String bare = strip(cell);
      if (bare.length() >= 2 && bare.startsWith("\"") && bare.endsWith("\"")) {
        bare = strip(bare.substring(1, bare.length() - 1));
      }
      names.add(
          bare.toLowerCase(Locale.ROOT).replace('\u00A0', ' ').replace(' ', '_').replace('-', '_'));
    }
    return List.copyOf(names);
  }

  /** {@return what parts the cells of a row} */
  public char separator() {
    return separator;
  }

  /** Gives every row below the header that is not blank, in order; may be called again. */
  public void each(Row row, Faults faults) {
    try (CsvParser parser = CSV.createParser(new StringReader(body))) {
      parser.setSchema(CsvSchema.emptySchema().withColumnSeparator(separator));
      walk(parser, row, faults);
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? 0 : linesBefore + e.getLocation().getLineNr();
      String message =
          "a quotation mark is opened and not closed, or text follows a closed one; write \"\" for"
              + " a quotation mark within quotes";
      throw BadInput.of(new Fault(file, line, 0, "", null, message));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void walk(CsvParser parser, Row row, Faults faults) throws IOException {
    String[] cells = new String[columns.size()];
    int rows = 0;
    boolean header = true;
    while (parser.nextToken() == JsonToken.START_ARRAY) {
      int line = 0;
      Arrays.fill(cells, "");
      int filled = 0;
      boolean blank = true;
      while (parser.nextToken() != JsonToken.END_ARRAY) {
        if (filled == 0) {
          line = linesBefore + parser.currentTokenLocation().getLineNr();
        }
        String cell = strip(parser.getText());
        if (!cell.isEmpty()) {
          blank = false;
          if (filled >= cells.length && !header) {
            faults.add(
                line,
                filled + 1,
                "",
                cell,
                "the header has "
                    + cells.length
                    + " columns and this row more; put text that"
                    + " holds the separator in quotation marks");
          }
        }
        if (filled < cells.length) {
          cells[filled] = cell;
        }
        filled++;
      }
      if (!header && !blank) {
        if (++rows > MOST_ROWS) {
          String message = "has more than " + MOST_ROWS + " rows; split it by colony or by year";
          throw BadInput.of(Fault.of(file, message));
        }
        row.take(line, cells);
      }
      header = false;
    }
  }

  private static int lineEnd(String text, int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) != '\n' && text.charAt(at) != '\r') {
      at++;
    }
    return at;
  }

  /** Without spaces at the ends, the no-break spaces of spreadsheets among them. */
  private static String strip(String cell) {
    int from = 0;
    int to = cell.length();
    while (from < to && blank(cell.charAt(from))) {
      from++;
    }
    while (to > from && blank(cell.charAt(to - 1))) {
      to--;
    }
    return cell.substring(from, to);
  }

  private static boolean blank(char c) {
    return Character.isWhitespace(c) || c == '\u00A0';
  }
}
