package broodtide.report;

import broodtide.compare.ColonyResult;
import broodtide.compare.Comparison;
import broodtide.compare.PlanDay;
import broodtide.compare.PlanRun;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Plans as tables: for the terminal, and as the files {@code plans.csv} and {@code season.csv}. */
public final class PlanTables {
  private PlanTables() {}

  /** The few columns that a terminal has room for. */
  public static Table terminal(Comparison comparison) {
    List<PlanColumn> columns =
        PlanColumns.of(comparison).stream().filter(PlanColumn::terminal).toList();
    List<Table.Column> heads = new ArrayList<>();
    heads.add(Table.Column.words("Plan"));
    for (PlanColumn c : columns) {
      heads.add(Table.Column.numbers(c.head()));
      if (c == columns.get(0)) {
        heads.add(Table.Column.numbers("9 in 10"));
      }
    }
    Table table = Table.of(heads.toArray(Table.Column[]::new));
    for (PlanRun run : comparison.runs()) {
      List<String> cells = new ArrayList<>();
      cells.add(run.plan().name());
      for (PlanColumn c : columns) {
        PlanColumn.Cell cell = c.cell().apply(run);
        cells.add(cell.middle());
        if (c == columns.get(0)) {
          cells.add(cell.range());
        }
      }
      table = table.row(cells.toArray(String[]::new));
    }
    return table;
  }

  /** What the columns of the terminal mean, in one paragraph. */
  public static String terminalLegend(Comparison comparison) {
    StringBuilder s = new StringBuilder("9 in 10: the range of nine seasons in ten.");
    for (PlanColumn c : PlanColumns.of(comparison)) {
      if (c.terminal()) {
        s.append(' ').append(c.head()).append(": ");
        s.append(Character.toLowerCase(c.meaning().charAt(0))).append(c.meaning().substring(1));
      }
    }
    return s.toString();
  }

  /**
   * {@code plans.csv}: one row for each colony and plan with the figures of the table. Infestations
   * are mites per 100 adult bees, chances and shares run from 0 to 1; cells that do not apply are
   * empty.
   */
  public static String plans(List<ColonyResult> results) {
    List<String> heads = new ArrayList<>(List.of("colony", "plan"));
    PlanColumns.of(results.get(0).comparison()).stream()
        .flatMap(c -> c.figures().stream())
        .forEach(f -> heads.add(f.name()));
    Csv csv = new Csv(heads);
    for (ColonyResult result : results) {
      List<PlanColumn> columns = PlanColumns.of(result.comparison());
      for (PlanRun run : result.comparison().runs()) {
        Stream<String> figures =
            columns.stream().flatMap(c -> c.figures().stream()).map(f -> f.text().apply(run));
        csv.row(Stream.concat(names(result, run), figures).toList());
      }
    }
    return csv.finish();
  }

  /**
   * {@code season.csv}: one row for each day, colony and plan with quantiles of the infestation in
   * mites per 100 adult bees, and the middle number of adult bees.
   */
  public static String season(List<ColonyResult> results) {
    Csv csv =
        new Csv(List.of("date", "colony", "plan", "q05", "q25", "median", "q75", "q95", "adults"));
    for (ColonyResult result : results) {
      for (PlanRun run : result.comparison().runs()) {
        for (PlanDay day : result.days(run)) {
          var s = day.infestation();
          Stream<String> figures =
              Stream.of(s.q05(), s.q25(), s.median(), s.q75(), s.q95(), day.adults())
                  .map(Csv::number);
          csv.row(
              Stream.of(Stream.of(day.date().toString()), names(result, run), figures)
                  .flatMap(x -> x)
                  .toList());
        }
      }
    }
    return csv.finish();
  }

  private static Stream<String> names(ColonyResult result, PlanRun run) {
    return Stream.of(Csv.text(result.comparison().colony().colony()), Csv.text(run.plan().name()));
  }
}
