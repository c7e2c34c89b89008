package broodtide.report;

import broodtide.assessment.PlanDay;
import broodtide.assessment.PlanRun;
import broodtide.assessment.QuantileSummary;
import broodtide.files.Csv;
import broodtide.results.ColonyResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
final class PlanFiles {
  private final List<Map<String, String>> plans = new ArrayList<>();
  private final Csv season =
      new Csv(List.of("date", "colony", "plan", "q05", "q25", "median", "q75", "q95", "adults"));

  /**
   * Adds a colony.
   *
   * @param result the colony and its plans
   */
  public void add(ColonyResult result) {
    List<PlanColumn> columns = PlanColumns.of(result.comparison());
    String colony = Csv.text(result.comparison().colony().colony());
    for (PlanRun run : result.comparison().runs()) {
      String plan = Csv.text(run.plan().name());
      Map<String, String> row = new LinkedHashMap<>();
      row.put("colony", colony);
      row.put("plan", plan);
      columns.stream()
          .flatMap(c -> c.figures().stream())
          .forEach(f -> row.put(f.name(), f.text().apply(run)));
      plans.add(row);
      for (PlanDay day : result.days(run)) {
        season.row(row(day, colony, plan));
      }
    }
  }

  private static List<String> row(PlanDay day, String colony, String plan) {
    QuantileSummary s = day.infestation();
    Stream<String> figures =
        Stream.of(s.q05(), s.q25(), s.median(), s.q75(), s.q95(), day.adults()).map(Csv::number);
    return Stream.concat(Stream.of(day.date().toString(), colony, plan), figures).toList();
  }

  /**
   * {@return the text of {@code plans.csv}} Colonies may differ in what can be said of them, as
   * when the forecast of one ends before spring: the columns are those of all, the missing cells
   * empty.
   */
  public String plans() {
    Set<String> heads = new LinkedHashSet<>();
    plans.forEach(row -> heads.addAll(row.keySet()));
    Csv csv = new Csv(List.copyOf(heads));
    for (Map<String, String> row : plans) {
      csv.row(heads.stream().map(head -> row.getOrDefault(head, "")).toList());
    }
    return csv.finish();
  }

  /** {@return the text of {@code season.csv}} */
  public String season() {
    return season.finish();
  }
}
