package broodtide.page;

import broodtide.table.Sheet;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * How somebody lays a table out: remarks before the header, what parts cells, how columns are
 * spelled. A table that is saved keeps it.
 *
 * @param marked whether the file begins with a byte order mark, by which spreadsheets know UTF-8
 * @param remarks lines before the header; empty for none
 * @param separator what parts cells
 * @param spelled columns that the file has, and how it spells them
 */
record TableLayout(boolean marked, String remarks, char separator, Map<String, String> spelled) {
  /** The layout of a table that is new. */
  static final TableLayout USUAL = new TableLayout(false, "", ',', Map.of());

  private static final String END = "\r\n";

  TableLayout {
    spelled = Map.copyOf(spelled);
  }

  /**
   * {@return the layout of a file}
   *
   * @param file its bytes
   * @param text the same as text
   * @param name its name
   * @param known columns that there may be
   * @throws broodtide.forms.BadInput when it has no header
   */
  static TableLayout of(byte[] file, String text, String name, Set<String> known) {
    Sheet sheet = Sheet.of(text, name, known, List.of());
    if (sheet.columns.stream().noneMatch(known::contains)) {
      return USUAL;
    }
    Map<String, String> spelled = new HashMap<>();
    String header =
        text.lines()
            .map(String::strip)
            .filter(
                l ->
                    !l.isEmpty()
                        && !l.startsWith("#")
                        && !l.toLowerCase(Locale.ROOT).startsWith("sep="))
            .findFirst()
            .orElse("");
    String[] words = header.split(Pattern.quote("" + sheet.separator()), -1);
    for (int i = 0; i < sheet.columns.size(); i++) {
      String word = words[i].strip();
      boolean quoted = word.length() >= 2 && word.startsWith("\"") && word.endsWith("\"");
      spelled.put(sheet.columns.get(i), quoted ? word.substring(1, word.length() - 1) : word);
    }
    boolean marked =
        file.length > 2
            && (file[0] & 0xFF) == 0xEF
            && (file[1] & 0xFF) == 0xBB
            && (file[2] & 0xFF) == 0xBF;
    return new TableLayout(marked, sheet.remarks, sheet.separator(), spelled);
  }

  /** {@return whether the file has a column, so that it stays even when it is empty} */
  boolean has(String column) {
    return spelled.containsKey(column);
  }

  /** {@return the file that a table makes in this layout} */
  byte[] file(PageTable table) {
    List<String> lines = new ArrayList<>(remarks.lines().toList());
    lines.add(line(table.columns().stream().map(c -> spelled.getOrDefault(c, c)).toList()));
    table.rows().forEach(row -> lines.add(line(row)));
    String text = (marked ? "\uFEFF" : "") + String.join(END, lines) + END;
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private String line(List<String> cells) {
    return cells.stream().map(this::quoted).collect(Collectors.joining("" + separator));
  }

  private String quoted(String cell) {
    boolean plain = cell.chars().noneMatch(c -> c == separator || c == '\t' || c == '"');
    return plain && cell.strip().equals(cell) ? cell : '"' + cell.replace("\"", "\"\"") + '"';
  }
}
