package broodtide.report;

import broodtide.assessment.PlanRun;
import broodtide.files.Csv;
import java.util.List;
import java.util.function.Function;

/**
 * One outcome of a plan, as it stands in the table of the terminal, in that of the page and in
 * {@code plans.csv}. A new outcome is one more column in {@link PlanColumns}.
 *
 * @param head a word or two above the column in the terminal
 * @param title what stands above it in the page
 * @param meaning what it is, in a sentence
 * @param terminal whether the terminal, which has little room, shows it
 * @param cell what the table says of a plan
 * @param figures its figures for {@code plans.csv}
 */
record PlanColumn(
    String head,
    String title,
    String meaning,
    boolean terminal,
    Function<PlanRun, Cell> cell,
    List<Figure> figures) {
  /** Copies the list. */
  public PlanColumn {
    figures = List.copyOf(figures);
  }

  /**
   * What a table says of one outcome of one plan.
   *
   * @param middle the figure itself
   * @param range the range of nine seasons in ten, or a word more; may be empty
   */
  public record Cell(String middle, String range) {
    /** When there is nothing to say. */
    static final Cell NONE = new Cell("-", "");
  }

  /**
   * A figure of {@code plans.csv}.
   *
   * @param name name of the column
   * @param text the cell, made by {@link Csv}
   */
  public record Figure(String name, Function<PlanRun, String> text) {}
}
