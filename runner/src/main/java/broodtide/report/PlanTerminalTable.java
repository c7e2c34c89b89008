package broodtide.report;

import broodtide.assessment.Comparison;
import broodtide.assessment.Decision;
import broodtide.assessment.PlanRun;
import broodtide.control.Control;
import broodtide.terminal.Table;
import broodtide.words.Plain;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Plans as a table for the terminal. */
public final class PlanTerminalTable {
  private PlanTerminalTable() {}

  /**
   * {@return the few columns that a terminal has room for}
   *
   * @param comparison the plans that were played
   */
  public static Table of(Comparison comparison) {
    List<PlanColumn> columns =
        PlanColumns.of(comparison).stream().filter(PlanColumn::terminal).toList();
    List<Table.Column> heads = new ArrayList<>();
    heads.add(Table.Column.sentences("Plan"));
    heads.add(Table.Column.words("from"));
    for (PlanColumn c : columns) {
      heads.add(Table.Column.numbers(c.head()));
      if (c == columns.get(0)) {
        heads.add(Table.Column.numbers("90 %"));
      }
    }
    Table table = Table.of(heads.toArray(Table.Column[]::new));
    Set<String> level = level(comparison);
    for (PlanRun run : comparison.runs()) {
      List<String> cells = new ArrayList<>();
      String name = run.plan().name();
      cells.add(level.contains(name) ? name + " =" : name);
      cells.add(begins(run));
      for (PlanColumn c : columns) {
        PlanColumn.Cell cell = c.cell().apply(run);
        cells.add(
            cell.middle().replace("over ", ">").replace("more than ", ">").replace("under ", "<"));
        if (c == columns.get(0)) {
          cells.add(cell.range().replace("more than 50", "50+"));
        }
      }
      table = table.row(cells.toArray(String[]::new));
    }
    return table;
  }

  /** Names of the plans that cannot be told apart; none when one is clearly the best. */
  static Set<String> level(Comparison comparison) {
    Decision decision = comparison.decision();
    Set<String> names = new HashSet<>(decision.tied());
    if (!names.isEmpty()) {
      decision.ranking().ifPresent(r -> names.add(r.best().plan().name()));
    }
    return names;
  }

  private static String begins(PlanRun run) {
    return run.plan().controls().stream()
        .map(Control::from)
        .min(Comparator.naturalOrder())
        .map(Plain::shortDay)
        .orElse("-");
  }

  /**
   * {@return what the columns of the terminal mean, in one paragraph: the first clause of each}
   *
   * @param comparison the plans that were played
   */
  public static String legend(Comparison comparison) {
    StringBuilder s = new StringBuilder("90 %: the 90 % interval.");
    for (PlanColumn c : PlanColumns.of(comparison)) {
      if (c.terminal()) {
        String brief = c.meaning().replaceFirst("[;.].*", "");
        s.append(' ').append(c.head()).append(": ");
        s.append(Character.toLowerCase(brief.charAt(0))).append(brief.substring(1)).append('.');
      }
    }
    if (!level(comparison).isEmpty()) {
      s.append(" =: these plans cannot be told apart.");
    }
    return s.toString();
  }
}
