package broodtide.results;

import static broodtide.results.JsonFigures.band;
import static broodtide.results.JsonFigures.four;

import broodtide.assessment.ApiaryCount;
import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySaving;
import broodtide.assessment.ApiarySheet;
import broodtide.assessment.Decision;
import broodtide.assessment.HiveRow;
import broodtide.assessment.PlanSummary;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;

/** The sheet of an apiary as JSON. */
final class SheetJson {
  private SheetJson() {}

  /** Fills a node. */
  static void write(ObjectNode node, ApiarySheet sheet, List<ApiaryPlan> plans) {
    node.put("decisionDate", sheet.date().toString());
    node.put("judgedOn", sheet.judgedOn().toString());
    node.put("hives", sheet.rows().size());
    sheet
        .over()
        .ifPresentOrElse(
            over -> count(node.putObject("hivesOverThresholdToday"), over),
            () -> node.putNull("hivesOverThresholdToday"));
    if (sheet.plansLaid()) {
      ArrayNode together = node.putArray("together");
      for (ApiaryPlan plan : plans) {
        ObjectNode one = together.addObject();
        one.put("whom", plan.whom().id());
        one.put("plan", plan.plan());
        one.put("hivesTreated", plan.treated());
        count(one.putObject("hivesLost"), plan.lost());
        saving(one.putObject("lossesSaved"), plan.saved());
        one.put("mitesInLostHives", four(plan.mitesInLost()));
      }
    }
    if (sheet.knowsWashes()) {
      ArrayNode next = node.putArray("washNext");
      sheet.washNext().forEach(row -> next.add(row.hive()));
    }
    ArrayNode rows = node.putArray("rows");
    sheet.rows().forEach(row -> row(rows.addObject(), row));
  }

  static void count(ObjectNode node, ApiaryCount count) {
    node.put("expected", four(count.mean()));
    node.put("q05", count.low());
    node.put("median", count.median());
    node.put("q95", count.high());
  }

  private static void saving(ObjectNode node, ApiarySaving saving) {
    node.put("expected", four(saving.mean()));
    node.put("q05", saving.low());
    node.put("median", saving.median());
    node.put("q95", saving.high());
  }

  private static void row(ObjectNode node, HiveRow row) {
    Decision d = row.decision();
    node.put("colony", row.hive());
    row.lastCount()
        .ifPresentOrElse(
            w -> count(node.putObject("lastCount"), w), () -> node.putNull("lastCount"));
    row.lastBoard().ifPresent(board -> board(node.putObject("lastBoard"), board));
    band(node.putObject("infestation"), row.infestation());
    put(node, "overThresholdToday", d.overThresholdToday());
    band(node.putObject("judged"), row.judged());
    put(node, "winterLoss", row.winterLoss());
    if (d.ranking().isPresent()) {
      PlanSummary best = d.best();
      node.put("best", best.plan().name());
      node.put("from", best.from().map(LocalDate::toString).orElse(null));
      put(node, "winterLossWithBest", row.winterLossWithBest());
      put(node, "gain", row.gain());
      ArrayNode tied = node.putArray("tied");
      d.tied().forEach(tied::add);
    }
    row.wash()
        .ifPresent(
            wash ->
                node.putObject("washToday")
                    .put("gain", four(wash.gain()))
                    .put("changesPlan", four(wash.changes())));
    row.nextCount()
        .ifPresent(
            next ->
                node.putObject("nextCount")
                    .put("reason", next.reason().id())
                    .put("by", next.by().toString()));
  }

  private static void count(ObjectNode node, Wash w) {
    node.put("date", w.date().toString());
    node.put("mites", w.mites());
    node.put("bees", four(w.beesOrAssumed()));
    node.put("beesAssumed", w.beesAssumed());
    node.put("perHundred", four(w.perHundred()));
  }

  private static void board(ObjectNode node, BoardCount board) {
    node.put("date", board.date().toString());
    node.put("days", board.days());
    node.put("mites", board.mites());
    node.put("perDay", four(board.perDay()));
  }

  private static void put(ObjectNode node, String name, OptionalDouble value) {
    if (value.isPresent()) {
      node.put(name, four(value.getAsDouble()));
    } else {
      node.putNull(name);
    }
  }
}
