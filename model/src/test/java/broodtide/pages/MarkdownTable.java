package broodtide.pages;

import java.util.ArrayList;
import java.util.List;

/** A table of a page, one row a line, with a bar in a cell made harmless. */
public final class MarkdownTable {
  private final List<String> lines = new ArrayList<>();
  private final int columns;

  /**
   * An empty table.
   *
   * @param heads column heads; one that ends in a colon is set flush right
   */
  public MarkdownTable(String... heads) {
    columns = heads.length;
    List<String> rule = new ArrayList<>();
    List<String> names = new ArrayList<>();
    for (String head : heads) {
      rule.add(head.endsWith(":") ? "--:" : "---");
      names.add(head.endsWith(":") ? head.substring(0, head.length() - 1) : head);
    }
    add(names);
    add(rule);
  }

  /**
   * Adds a row.
   *
   * @param cells one text per column
   * @return this table
   */
  public MarkdownTable row(String... cells) {
    if (cells.length != columns) {
      throw new IllegalArgumentException("a row has " + columns + " cells");
    }
    add(List.of(cells));
    return this;
  }

  private void add(List<String> cells) {
    lines.add("| " + String.join(" | ", cells.stream().map(MarkdownTable::plain).toList()) + " |");
  }

  private static String plain(String cell) {
    return cell.replace("|", "\\|").replace("<", "&lt;");
  }

  @Override
  public String toString() {
    return String.join("\n", lines);
  }
}
