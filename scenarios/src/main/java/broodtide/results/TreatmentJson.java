package broodtide.results;

import static broodtide.results.JsonFigures.band;
import static broodtide.results.JsonFigures.six;

import broodtide.assessment.QuantileSummary;
import broodtide.decision.CountedEfficacy;
import broodtide.decision.Shortfall;
import broodtide.decision.TellingWash;
import broodtide.decision.TreatmentCheck;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;

/** Whether a treatment worked, as JSON. */
final class TreatmentJson {
  private TreatmentJson() {}

  /** Fills a node. */
  static void write(
      ObjectNode node,
      TreatmentCheck check,
      Optional<CountedEfficacy> counted,
      Optional<CountedEfficacy> neighbour) {
    node.put("name", check.treatment().name());
    node.put("from", check.treatment().from().toString());
    node.put("to", check.treatment().to().toString());
    node.put("washBefore", check.before().date().toString());
    node.put("washAfter", check.after().date().toString());
    counted.ifPresent(e -> efficacy(node.putObject("countsAlone"), e));
    neighbour.ifPresent(e -> efficacy(node.putObject("againstNeighbour"), e));
    band(node.putObject("reduction"), QuantileSummary.of(check.reduction()));
    band(node.putObject("usualReduction"), QuantileSummary.of(check.usual()));
    band(node.putObject("infestationUntreated"), QuantileSummary.of(check.untreated()));
    node.put("chanceOfHalfItsStrength", six(check.chanceWorked()));
    node.put("verdict", check.verdict().name());
    check.telling().ifPresent(t -> telling(node.putObject("washThatWouldTell"), t));
    ArrayNode doubts = node.putArray("doubts");
    Shortfall.doubts(check).forEach(doubts::add);
  }

  private static void telling(ObjectNode node, TellingWash t) {
    node.put("date", t.day().toString());
    node.put("bees", t.bees());
    node.put("workedUpTo", t.workedUpTo() < 0 ? null : (Integer) t.workedUpTo());
    node.put("fellShortFrom", t.fellShortFrom() > t.bees() ? null : (Integer) t.fellShortFrom());
    node.put("chance", six(t.chance()));
  }

  private static void efficacy(ObjectNode node, CountedEfficacy e) {
    node.put("share", six(e.share()));
    node.put("low", Double.isInfinite(e.interval().low()) ? null : six(e.interval().low()));
    node.put("high", six(e.interval().high()));
    node.put("level", six(e.interval().level()));
  }
}
