package broodtide.report;

import broodtide.compare.ColonyResult;
import broodtide.compare.Comparison;
import broodtide.compare.PlanDay;
import broodtide.compare.PlanRun;
import broodtide.compare.Spread;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The tables beside the page, filled colony by colony and written as {@link Csv} says.
 *
 * <ul>
 *   <li>{@code plans.csv}: a row for each colony and plan with the figures of the plan table;
 *       infestations are mites per 100 adult bees, chances and shares run from 0 to 1, cells that
 *       do not apply are empty;
 *   <li>{@code season.csv}: a row for each colony, plan and day with quantiles of the infestation
 *       in mites per 100 adult bees, and the middle number of adult bees.
 * </ul>
 */
public final class PlanFiles {
  private final Csv plans;
  private final Csv season =
      new Csv(List.of("date", "colony", "plan", "q05", "q25", "median", "q75", "q95", "adults"));

  /** Empty files with the columns of this comparison, which are those of any other. */
  public PlanFiles(Comparison comparison) {
    List<String> heads = new ArrayList<>(List.of("colony", "plan"));
    PlanColumns.of(comparison).stream()
        .flatMap(c -> c.figures().stream())
        .forEach(f -> heads.add(f.name()));
    plans = new Csv(heads);
  }

  /** Adds a colony. */
  public void add(ColonyResult result) {
    List<PlanColumn> columns = PlanColumns.of(result.comparison());
    String colony = Csv.text(result.comparison().colony().colony());
    for (PlanRun run : result.comparison().runs()) {
      String plan = Csv.text(run.plan().name());
      Stream<String> figures =
          columns.stream().flatMap(c -> c.figures().stream()).map(f -> f.text().apply(run));
      plans.row(Stream.concat(Stream.of(colony, plan), figures).toList());
      for (PlanDay day : result.days(run)) {
        season.row(row(day, colony, plan));
      }
    }
  }

  private static List<String> row(PlanDay day, String colony, String plan) {
    Spread s = day.infestation();
    Stream<String> figures =
        Stream.of(s.q05(), s.q25(), s.median(), s.q75(), s.q95(), day.adults()).map(Csv::number);
    return Stream.concat(Stream.of(day.date().toString(), colony, plan), figures).toList();
  }

  /** The text of {@code plans.csv}. */
  public String plans() {
    return plans.finish();
  }

  /** The text of {@code season.csv}. */
  public String season() {
    return season.finish();
  }
}
