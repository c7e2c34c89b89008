package broodtide.terminal;

import java.util.ArrayList;
import java.util.List;

/**
 * Sets one table; where it cannot fit even with broken sentences, each row becomes a small list.
 */
final class TableSetter {
  private static final int GAP = 2;
  private static final int LEAST_SENTENCE = 16;

  private final Terminal terminal;
  private final Table table;

  TableSetter(Terminal terminal, Table table) {
    this.terminal = terminal;
    this.table = table;
  }

  String set() {
    int[] widths = widths();
    StringBuilder out = new StringBuilder();
    if (total(widths) > terminal.width()) {
      return list();
    }
    List<String> heads = table.columns().stream().map(Table.Column::head).toList();
    for (String line : lines(heads, widths)) {
      out.append(terminal.faint(line)).append('\n');
    }
    for (Table.Row row : table.rows()) {
      for (String line : lines(row.cells(), widths)) {
        out.append(row.strong() ? terminal.strong(line) : line).append('\n');
      }
    }
    return out.toString();
  }

  boolean fits() {
    return total(widths()) <= terminal.width();
  }

  /** The width of each column: its widest text; sentences give way evenly until all fits. */
  private int[] widths() {
    int n = table.columns().size();
    int[] widths = new int[n];
    for (int c = 0; c < n; c++) {
      widths[c] = Terminal.length(Terminal.clean(table.columns().get(c).head()));
      for (Table.Row row : table.rows()) {
        widths[c] = Math.max(widths[c], Terminal.length(Terminal.clean(row.cells().get(c))));
      }
    }
    while (total(widths) > terminal.width()) {
      int widest = -1;
      for (int c = 0; c < n; c++) {
        boolean gives = table.columns().get(c).wraps() && widths[c] > LEAST_SENTENCE;
        if (gives && (widest < 0 || widths[c] > widths[widest])) {
          widest = c;
        }
      }
      if (widest < 0) {
        return widths;
      }
      widths[widest]--;
    }
    return widths;
  }

  private static int total(int[] widths) {
    int sum = GAP * Math.max(0, widths.length - 1);
    for (int w : widths) {
      sum += w;
    }
    return sum;
  }

  private List<String> lines(List<String> cells, int[] widths) {
    List<List<String>> broken = new ArrayList<>();
    int height = 1;
    for (int c = 0; c < cells.size(); c++) {
      String cell = Terminal.clean(cells.get(c));
      // What fits is left as it is: a drawing may begin with blanks.
      broken.add(
          Terminal.length(cell) <= widths[c] ? List.of(cell) : Terminal.broken(cell, widths[c]));
      height = Math.max(height, broken.get(c).size());
    }
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < height; i++) {
      StringBuilder line = new StringBuilder();
      for (int c = 0; c < cells.size(); c++) {
        String text = i < broken.get(c).size() ? broken.get(c).get(i) : "";
        String pad = " ".repeat(widths[c] - Terminal.length(text));
        boolean right = table.columns().get(c).align() == Table.Align.RIGHT;
        line.append(c == 0 ? "" : " ".repeat(GAP)).append(right ? pad + text : text + pad);
      }
      lines.add(line.toString().stripTrailing());
    }
    return lines;
  }

  /** First cells at the margin, the others below them with their heads. */
  private String list() {
    StringBuilder out = new StringBuilder();
    for (Table.Row row : table.rows()) {
      for (int c = 0; c < table.columns().size(); c++) {
        String cell = Terminal.clean(row.cells().get(c)).strip();
        String text = c == 0 ? cell : table.columns().get(c).head() + ": " + cell;
        int indent = c == 0 ? 0 : 2;
        List<String> lines = Terminal.broken(text, terminal.width() - indent - 2);
        String set = " ".repeat(indent) + String.join("\n" + " ".repeat(indent + 2), lines);
        out.append(c == 0 ? terminal.strong(set) : set).append('\n');
      }
    }
    return out.toString();
  }
}
