package broodtide.page;

import broodtide.files.Csv;
import broodtide.forms.Faults;
import broodtide.table.Sheet;
import broodtide.web.Refused;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * A table as it stands on the page: cells as they were typed. Row {@code i} is line {@code i + 2}
 * of the file that it makes.
 *
 * @param columns names of the columns
 * @param rows cells, one for each column
 */
record PageTable(List<String> columns, List<List<String>> rows) {
  /** Most rows that a page can show. */
  static final int MOST_ROWS = 5000;

  private static final int MOST_COLUMNS = 40;
  private static final int LONGEST = 2000;

  PageTable {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
  }

  /**
   * Reads a table as the page sends it; rows without anything in them are passed over.
   *
   * @throws Refused when it is none
   */
  static PageTable of(JsonNode node) {
    List<String> columns = texts(node.path("columns"));
    if (columns.isEmpty() || columns.size() > MOST_COLUMNS || !node.path("rows").isArray()) {
      throw bad();
    }
    if (node.path("rows").size() > MOST_ROWS) {
      throw tooMany();
    }
    List<List<String>> rows = new ArrayList<>();
    for (JsonNode row : node.path("rows")) {
      List<String> cells = texts(row);
      if (cells.size() != columns.size()) {
        throw bad();
      }
      rows.add(cells);
    }
    return new PageTable(columns, rows);
  }

  /**
   * Reads a table of a file or of a clipboard. Where its first line names no known column, the
   * columns are taken in the usual order.
   *
   * @param text the text
   * @param name what messages call it
   * @param known columns that there may be
   * @param usual their usual order
   * @throws broodtide.forms.BadInput when it is no table
   */
  static PageTable of(String text, String name, Set<String> known, List<String> usual) {
    Sheet sheet = Sheet.of(text, name, known, usual);
    if (sheet.columns.stream().noneMatch(known::contains)) {
      char between = text.contains("\t") ? '\t' : text.contains(";") ? ';' : ',';
      String first = text.strip().lines().findFirst().orElse("");
      int wide = Math.min(usual.size(), first.split(String.valueOf(between), -1).length);
      String head = String.join(String.valueOf(between), usual.subList(0, wide));
      sheet = Sheet.of(head + "\n" + text, name, known, usual);
    }
    List<List<String>> rows = new ArrayList<>();
    sheet.each(
        (line, cells) -> {
          if (rows.size() == MOST_ROWS) {
            throw tooMany();
          }
          rows.add(List.of(cells));
        },
        new Faults(name));
    return new PageTable(sheet.columns, rows);
  }

  /** {@return the table as the page takes it} */
  ObjectNode json() {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    columns.forEach(node.putArray("columns")::add);
    ArrayNode all = node.putArray("rows");
    rows.forEach(row -> row.forEach(all.addArray()::add));
    return node;
  }

  /** {@return the table as a file} */
  String csv() {
    Csv csv = new Csv(columns);
    rows.forEach(csv::row);
    return csv.finish();
  }

  /** {@return a cell; empty when there is no such column} */
  String cell(int row, String column) {
    int at = columns.indexOf(column);
    return at < 0 ? "" : rows.get(row).get(at);
  }

  /** {@return one row of it alone} */
  PageTable only(int row) {
    return new PageTable(columns, List.of(rows.get(row)));
  }

  private static List<String> texts(JsonNode array) {
    List<String> out = new ArrayList<>();
    for (JsonNode each : array) {
      if (!each.isTextual() || each.textValue().length() > LONGEST) {
        throw bad();
      }
      // A line break in a cell would part lines from rows.
      out.add(each.textValue().replaceAll("[\\r\\n\\x00]+", " ").strip());
    }
    return out;
  }

  private static Refused bad() {
    return Refused.bad("expected a table with columns and as many cells in each row");
  }

  private static Refused tooMany() {
    return Refused.bad(
        "the page shows up to " + MOST_ROWS + " rows; ask about larger tables with the commands");
  }
}
