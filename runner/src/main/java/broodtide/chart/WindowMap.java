package broodtide.chart;

import java.time.LocalDate;
import java.util.List;

/**
 * Outcomes of controls begun on different days: a row for each control, a column for each day.
 *
 * @param heading title and subtitle
 * @param outcome what the number in a cell is, with its unit
 * @param lowerIsBetter whether the best cell is the lowest
 * @param starts first days, in order, one for each column
 * @param rows one or more controls
 * @param size picture size
 */
public record WindowMap(
    Heading heading,
    String outcome,
    boolean lowerIsBetter,
    List<LocalDate> starts,
    List<Row> rows,
    Size size)
    implements Picture {
  /** One place of the map. */
  public sealed interface Cell permits Outcome, Masked {}

  /**
   * A control begun on that day can be judged.
   *
   * @param value the outcome, finite
   * @param labelDecides whether honey supers stand and the label decides; drawn as a line along the
   *     upper edge
   * @param tied whether it cannot be told from the best; drawn as a dot
   */
  public record Outcome(double value, boolean labelDecides, boolean tied) implements Cell {
    public Outcome {
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException(
            "outcome is " + value + "; give a number, or mask the cell with the reason");
      }
    }

    /**
     * A cell that nothing stands against, worse than the best.
     *
     * @param value the outcome, finite
     */
    public Outcome(double value) {
      this(value, false, false);
    }
  }

  /**
   * A control cannot begin on that day.
   *
   * @param code one letter, drawn in the cell
   * @param reason a few words for the key
   */
  public record Masked(char code, String reason) implements Cell {}

  /**
   * One control.
   *
   * @param name written at the left
   * @param cells one for each start
   */
  public record Row(String name, List<Cell> cells) {
    public Row {
      cells = List.copyOf(cells);
    }
  }

  public WindowMap {
    starts = List.copyOf(starts);
    rows = List.copyOf(rows);
    if (starts.isEmpty() || rows.isEmpty()) {
      throw new IllegalArgumentException("a window map needs a control and a start day");
    }
    for (Row row : rows) {
      if (row.cells().size() != starts.size()) {
        throw new IllegalArgumentException(
            "row '"
                + row.name()
                + "' has "
                + row.cells().size()
                + " cells for "
                + starts.size()
                + " start days; give one for each");
      }
    }
  }

  /**
   * {@return a map for a page, no higher than its rows need}
   *
   * @param heading what stands above
   * @param outcome what cells are judged by, with its unit
   * @param lowerIsBetter whether small values are good
   * @param starts the columns, rising
   * @param rows one per control
   */
  public static WindowMap of(
      Heading heading,
      String outcome,
      boolean lowerIsBetter,
      List<LocalDate> starts,
      List<Row> rows) {
    Size size = new Size(720, 240);
    return new WindowMap(heading, outcome, lowerIsBetter, starts, rows, size);
  }

  @Override
  public WindowMap sized(Size other) {
    return new WindowMap(heading, outcome, lowerIsBetter, starts, rows, other);
  }

  @Override
  public Size drawn() {
    return new WindowMapPainter(this).size();
  }

  @Override
  public String description() {
    return outcome
        + ". "
        + new WindowMapPainter(this).bestInWords()
        + (labelDecides() ? " Lined cells: " + WindowMapKey.LABEL_DECIDES + "." : "");
  }

  /** {@return whether any open cell depends on the label} */
  public boolean labelDecides() {
    return rows.stream()
        .flatMap(row -> row.cells().stream())
        .anyMatch(cell -> cell instanceof Outcome o && o.labelDecides());
  }

  /** {@return whether any open cell but the best is tied with it} */
  public boolean tied() {
    return rows.stream()
            .flatMap(row -> row.cells().stream())
            .filter(cell -> cell instanceof Outcome o && o.tied())
            .count()
        > 1;
  }

  /**
   * {@return where a cell stands in the picture as it is drawn: left, top, width, height, each as a
   * share of the picture's}
   *
   * @param row number of a control, from 0
   * @param column number of a start day, from 0
   */
  public List<Double> place(int row, int column) {
    WindowMapPainter painter = new WindowMapPainter(this);
    Size drawn = painter.size();
    Box box = painter.box(row, column);
    return List.of(
        box.x() / drawn.width(),
        box.y() / drawn.height(),
        box.width() / drawn.width(),
        box.height() / drawn.height());
  }

  @Override
  public void paint(Canvas canvas) {
    new WindowMapPainter(this).paint(canvas);
  }
}
