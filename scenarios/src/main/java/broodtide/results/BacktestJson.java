package broodtide.results;

import static broodtide.results.JsonFigures.four;

import broodtide.fit.Backtest;
import broodtide.fit.CountDistribution;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Forecasts of washes that were held out, as JSON. */
final class BacktestJson {
  private BacktestJson() {}

  /** Fills a colony with its own washes. */
  static void write(ObjectNode node, String colony, Backtest.Report report) {
    ArrayNode held = node.putArray("heldOut");
    for (Backtest.Mark m : report.marks()) {
      if (m.held().colony().equals(colony)) {
        ObjectNode mark = held.addObject().put("date", m.held().date().toString());
        mark.put("mites", m.held().mites());
        count(mark.putObject("forecast"), m.forecast());
        count(mark.putObject("noChange"), m.noChange());
        count(mark.putObject("exponential"), m.exponential());
      }
    }
  }

  /** Fills the marks of all forecasts together. */
  static void marks(ObjectNode marks, Backtest.Report report) {
    marks.put("forecasts", report.marks().size());
    marks.put("heldBy50", four(report.coverage(0.5)));
    marks.put("heldBy90", four(report.coverage(0.9)));
    marks.put("crpsOfLogCounts", four(report.crps()));
    marks.put("crpsNoChange", four(report.crpsNoChange()));
    marks.put("crpsExponential", four(report.crpsExponential()));
  }

  private static void count(ObjectNode node, CountDistribution count) {
    node.put("q05", count.quantile(0.05));
    node.put("q25", count.quantile(0.25));
    node.put("median", count.quantile(0.5));
    node.put("q75", count.quantile(0.75));
    node.put("q95", count.quantile(0.95));
  }
}
