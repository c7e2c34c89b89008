package broodtide.results;

import static broodtide.results.JsonFigures.four;

import broodtide.assessment.CountOutlook;
import broodtide.assessment.CountReading;
import broodtide.assessment.CountSheet;
import broodtide.wash.Interval;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.function.Function;

/** What one count says, as JSON. */
final class CountJson {
  private static final double LEVEL = 0.9;

  private CountJson() {}

  /** Fills a node. */
  static void write(ObjectNode node, CountReading r, CountPrecision precision) {
    node.put("date", r.wash().date().toString());
    node.put("mites", r.wash().mites());
    node.put("bees", four(r.wash().beesOrAssumed()));
    node.put("beesAssumed", r.wash().beesAssumed());
    node.put("perHundred", four(r.wash().perHundred()));
    interval(node.putObject("exact90"), r.exact());
    interval(node.putObject("inColony90"), r.inColony().interval(LEVEL));
    node.put("inColonyMedian", four(r.inColony().median()));
    node.put("stage", r.stage().id());
    if (r.threshold().isPresent()) {
      node.put("threshold", four(r.threshold().getAsDouble()));
      node.put("chanceAboveThreshold", four(r.chanceAbove()));
    } else {
      node.putNull("threshold");
      node.putNull("chanceAboveThreshold");
    }
    node.put("adultsTaken", four(r.adults()));
    node.put("mitesInAllMedian", four(r.mitesInAll().median()));
    interval(node.putObject("mitesInAll90"), r.mitesInAll().interval(LEVEL));
    node.put("rightToWithin", four(precision.rightToWithin()));
    node.put("beesForAQuarter", precision.beesForAQuarter());
    precision.hivesToWash().ifPresent(hives -> node.put("hivesToWash", hives));
  }

  /** Fills a node with the counts of a day. */
  static void write(
      ObjectNode node, CountSheet sheet, Function<CountReading, CountPrecision> precision) {
    node.put("date", sheet.date().toString());
    node.put("hives", sheet.hives());
    if (sheet.expectedOver().isPresent()) {
      node.put("expectedOverThreshold", four(sheet.expectedOver().getAsDouble()));
    } else {
      node.putNull("expectedOverThreshold");
    }
    sheet
        .over()
        .ifPresentOrElse(
            over -> SheetJson.count(node.putObject("hivesOverThreshold"), over),
            () -> node.putNull("hivesOverThreshold"));
    ArrayNode rows = node.putArray("rows");
    for (CountReading r : sheet.rows()) {
      ObjectNode row = rows.addObject().put("colony", r.wash().colony());
      write(row.putObject("count"), r, precision.apply(r));
    }
  }

  /** Fills a node with where such a colony would stand if it were left alone. */
  static void ahead(ObjectNode node, CountOutlook.Ahead o) {
    node.put("day", o.day().toString());
    node.put("q05", four(o.infestation().q05()));
    node.put("median", four(o.infestation().median()));
    node.put("q95", four(o.infestation().q95()));
  }

  private static void interval(ObjectNode node, Interval i) {
    node.put("low", four(i.low()));
    node.put("high", four(i.high()));
  }
}
