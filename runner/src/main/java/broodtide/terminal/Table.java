package broodtide.terminal;

import java.util.ArrayList;
import java.util.List;

/**
 * A table for the terminal.
 *
 * @param columns its columns
 * @param rows its rows
 */
public record Table(List<Column> columns, List<Row> rows) {
  /** How the cells of a column stand. */
  public enum Align {
    /** Words. */
    LEFT,
    /** Numbers, so that their digits stand below each other. */
    RIGHT
  }

  /**
   * A column.
   *
   * @param head what stands above it
   * @param align numbers stand right, words left
   * @param wraps whether its text may be broken into several lines
   */
  public record Column(String head, Align align, boolean wraps) {
    /**
     * {@return a column of words}
     *
     * @param head what stands above it
     */
    public static Column words(String head) {
      return new Column(head, Align.LEFT, false);
    }

    /**
     * {@return a column of numbers}
     *
     * @param head what stands above it
     */
    public static Column numbers(String head) {
      return new Column(head, Align.RIGHT, false);
    }

    /**
     * {@return a column of sentences, broken where the width asks for it}
     *
     * @param head what stands above it
     */
    public static Column sentences(String head) {
      return new Column(head, Align.LEFT, true);
    }
  }

  /**
   * A row.
   *
   * @param cells one text for each column
   * @param strong whether it stands out
   */
  public record Row(List<String> cells, boolean strong) {
    public Row {
      cells = List.copyOf(cells);
    }
  }

  public Table {
    columns = List.copyOf(columns);
    rows = List.copyOf(rows);
    for (Row row : rows) {
      if (row.cells().size() != columns.size()) {
        throw new IllegalArgumentException(
            "table row " + row.cells() + " needs " + columns.size() + " cells");
      }
    }
  }

  /**
   * {@return an empty table}
   *
   * @param columns the columns, at least one
   */
  public static Table of(Column... columns) {
    return new Table(List.of(columns), List.of());
  }

  /**
   * {@return this table with a row more}
   *
   * @param cells one text per column
   */
  public Table row(String... cells) {
    return with(new Row(List.of(cells), false));
  }

  /**
   * {@return this table with a row more that stands out}
   *
   * @param cells one text per column
   */
  public Table strongRow(String... cells) {
    return with(new Row(List.of(cells), true));
  }

  private Table with(Row row) {
    List<Row> more = new ArrayList<>(rows);
    more.add(row);
    return new Table(columns, more);
  }
}
