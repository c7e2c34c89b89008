package broodtide.results;

import static broodtide.results.JsonFigures.four;

import broodtide.assessment.Decision;
import broodtide.assessment.PlanSummary;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.OptionalDouble;

/** The block {@code decision}, the same in the results of every command. */
final class DecisionJson {
  private DecisionJson() {}

  /** Puts the block into a colony. */
  static void write(ObjectNode colony, Decision d) {
    ObjectNode node = colony.putObject("decision");
    node.put("decisionDate", d.date().toString());
    if (d.threshold().isPresent()) {
      node.putObject("threshold")
          .put("set", d.thresholdSet())
          .put("value", four(d.threshold().getAsDouble()));
    } else {
      node.putNull("threshold");
    }
    put(node, "overThresholdToday", d.overThresholdToday());
    plan(node.putObject("waiting"), d.waiting(), d);
    d.ranking()
        .ifPresent(
            ranking -> {
              plan(node.putObject("best"), ranking.best(), d);
              ArrayNode tied = node.putArray("tied");
              d.tied().forEach(tied::add);
            });
  }

  private static void plan(ObjectNode node, PlanSummary s, Decision d) {
    node.put("plan", s.plan().name());
    node.put("from", s.from().map(LocalDate::toString).orElse(null));
    put(node, "winterLoss", known(s.winterLoss(), d.knowsWinterLoss()));
    put(node, "infestedWinterBrood", s.infestedWinterBrood());
    put(node, "infestation", known(s.infestation(), d.reachesWinterBees()));
  }

  private static OptionalDouble known(double value, boolean known) {
    return known ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  private static void put(ObjectNode node, String name, OptionalDouble value) {
    if (value.isPresent()) {
      node.put(name, four(value.getAsDouble()));
    } else {
      node.putNull(name);
    }
  }
}
