package broodtide.results;

import static broodtide.results.JsonFigures.band;
import static broodtide.results.JsonFigures.difference;
import static broodtide.results.JsonFigures.four;

import broodtide.decision.Windows;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Windows as JSON, the same wherever they stand. */
final class WindowsJson {
  private WindowsJson() {}

  /** Fills a node with outcome, best control and start, and every cell of the grid. */
  static void write(ObjectNode node, Windows w) {
    node.put("outcome", w.outcome().word());
    node.put("ifYouWait", four(w.ifYouWait()));
    node.put("playedColonies", w.waiting().byMember().length);
    w.best()
        .ifPresent(
            row -> {
              ObjectNode best = node.putObject("best");
              best.put("control", row.control().name());
              best.put("start", w.starts().get(row.best().orElseThrow()).toString());
            });
    ArrayNode rows = node.putArray("controls");
    w.rows().forEach(row -> row(rows.addObject(), w, row));
  }

  private static void row(ObjectNode node, Windows w, Windows.Row row) {
    node.put("control", row.control().name());
    node.put("title", row.control().title());
    row.best()
        .ifPresent(
            best -> {
              node.put("bestStart", w.starts().get(best).toString());
              node.put("best", four(row.middle(best).orElseThrow()));
              Windows.Stretch good = w.asGood(row).orElseThrow();
              node.put("asGoodFrom", w.starts().get(good.first()).toString());
              node.put("asGoodTo", w.starts().get(good.last()).toString());
              w.delay(row, best, 7)
                  .ifPresent(d -> difference(node.putObject("aWeekLater"), d, "chanceSmaller"));
            });
    ArrayNode cells = node.putArray("cells");
    for (int i = 0; i < w.starts().size(); i++) {
      ObjectNode cell = cells.addObject().put("start", w.starts().get(i).toString());
      if (row.cells().get(i) instanceof Windows.Played p) {
        cell.put("value", four(p.middle()));
        band(cell.putObject("band"), p.band());
        cell.put("labelDecides", w.labelDecides(row, i));
        cell.put("tied", w.tied(row, i));
      } else if (row.cells().get(i) instanceof Windows.Blocked b) {
        cell.put("blocked", String.valueOf(b.obstacle().kind().code()));
        cell.put("reason", b.obstacle().words());
      }
    }
  }
}
