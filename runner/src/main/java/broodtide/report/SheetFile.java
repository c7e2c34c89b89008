package broodtide.report;

import broodtide.assessment.ApiarySheet;
import broodtide.assessment.HiveRow;
import broodtide.assessment.QuantileSummary;
import broodtide.files.Csv;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * The sheet of an apiary as {@code sheet.csv}: a row for each hive, the most urgent first.
 * Infestations are mites per 100 adult bees, chances and losses run from 0 to 1, cells that do not
 * apply are empty.
 */
public final class SheetFile {
  private static final List<String> HEAD =
      List.of(
          "colony",
          "last_count",
          "mites",
          "bees",
          "counted_per_100",
          "decision_date",
          "infestation_q05",
          "infestation_median",
          "infestation_q95",
          "over_threshold_today",
          "judged_on",
          "judged_q05",
          "judged_median",
          "judged_q95",
          "winter_loss",
          "best_plan",
          "from",
          "winter_loss_with_best",
          "gain",
          "tied",
          "next_count",
          "next_count_by",
          "wash_gain",
          "wash_changes_plan");

  private SheetFile() {}

  /**
   * {@return the text of the file}
   *
   * @param sheet the apiary
   */
  public static String of(ApiarySheet sheet) {
    Csv csv = new Csv(HEAD);
    sheet.rows().forEach(row -> csv.row(cells(row)));
    return csv.finish();
  }

  private static List<String> cells(HiveRow row) {
    boolean plans = row.decision().ranking().isPresent();
    List<String> cells = new ArrayList<>();
    cells.add(Csv.text(row.hive()));
    cells.addAll(row.lastCount().map(SheetFile::count).orElse(List.of("", "", "", "")));
    cells.add(row.decision().date().toString());
    band(row.infestation()).forEach(cells::add);
    cells.add(number(row.decision().overThresholdToday()));
    cells.add(row.judgedOn().toString());
    band(row.judged()).forEach(cells::add);
    cells.add(number(row.winterLoss()));
    cells.add(plans ? Csv.text(row.decision().best().plan().name()) : "");
    cells.add(plans ? row.decision().best().from().map(LocalDate::toString).orElse("") : "");
    cells.add(plans ? number(row.winterLossWithBest()) : "");
    cells.add(number(row.gain()));
    cells.add(Csv.text(String.join("; ", row.decision().tied())));
    cells.add(row.nextCount().map(next -> next.reason().id()).orElse(""));
    cells.add(row.nextCount().map(next -> next.by().toString()).orElse(""));
    cells.add(row.wash().map(wash -> Csv.number(wash.gain())).orElse(""));
    cells.add(row.wash().map(wash -> Csv.number(wash.changes())).orElse(""));
    return cells;
  }

  private static List<String> count(Wash w) {
    return List.of(
        w.date().toString(),
        Integer.toString(w.mites()),
        w.bees().isPresent() ? Integer.toString(w.bees().getAsInt()) : "",
        Csv.number(w.perHundred()));
  }

  private static Stream<String> band(QuantileSummary s) {
    return Stream.of(s.q05(), s.median(), s.q95()).map(Csv::number);
  }

  private static String number(OptionalDouble value) {
    return value.isPresent() ? Csv.number(value.getAsDouble()) : "";
  }
}
