package broodtide.results;

import static broodtide.results.JsonFigures.band;
import static broodtide.results.JsonFigures.four;

import broodtide.assessment.QuantileSummary;
import broodtide.catalog.NaturalFall;
import broodtide.decision.ApiaryTreatmentCheck;
import broodtide.decision.CountedEfficacy;
import broodtide.decision.ResistanceCheck;
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
      Optional<CountedEfficacy> neighbour,
      Optional<ResistanceCheck> resistance) {
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
    node.put("chanceOfHalfItsStrength", four(check.chanceWorked()));
    node.put("verdict", check.verdict().name());
    range(node.putObject("naturalFall"), NaturalFall.LEAST, NaturalFall.MOST);
    resistance.ifPresent(r -> resistance(node, r));
    check.telling().ifPresent(t -> telling(node.putObject("washThatWouldTell"), t));
    ArrayNode doubts = node.putArray("doubts");
    Shortfall.doubts(check).forEach(doubts::add);
  }

  /** Fills a node with what the hives of an apiary say together. */
  static void write(
      ObjectNode node, ApiaryTreatmentCheck apiary, Optional<ResistanceCheck> resistance) {
    node.put("hives", apiary.hives());
    node.put("strength", four(apiary.strength()));
    range(node.putObject("strengthBand"), apiary.low(), apiary.high());
    node.put("chanceOfHalfItsStrength", four(apiary.chanceWorked()));
    node.put("verdict", apiary.verdict().name());
    resistance.ifPresent(r -> resistance(node, r));
  }

  private static void resistance(ObjectNode node, ResistanceCheck r) {
    node.putObject("resistance").put("substance", r.substance()).put("chance", four(r.chance()));
  }

  private static void range(ObjectNode node, double low, double high) {
    node.put("low", four(low)).put("high", four(high));
  }

  private static void telling(ObjectNode node, TellingWash t) {
    node.put("date", t.day().toString());
    node.put("bees", t.bees());
    node.put("workedUpTo", t.workedUpTo() < 0 ? null : (Integer) t.workedUpTo());
    node.put("fellShortFrom", t.fellShortFrom() > t.bees() ? null : (Integer) t.fellShortFrom());
    node.put("chance", four(t.chance()));
  }

  private static void efficacy(ObjectNode node, CountedEfficacy e) {
    node.put("share", four(e.share()));
    node.put("low", Double.isInfinite(e.interval().low()) ? null : four(e.interval().low()));
    node.put("high", four(e.interval().high()));
    node.put("level", four(e.interval().level()));
  }
}
