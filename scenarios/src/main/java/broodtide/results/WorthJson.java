package broodtide.results;

import static broodtide.results.JsonFigures.four;

import broodtide.decision.WashWorth;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/** The worth of another wash as JSON. */
final class WorthJson {
  private WorthJson() {}

  /** Fills a colony. */
  static void write(ObjectNode node, List<WashWorth> worth) {
    ArrayNode washes = node.putArray("washAgain");
    for (WashWorth w : worth) {
      ObjectNode wash = washes.addObject();
      wash.put("day", w.washDay().toString());
      wash.put("bees", w.bees());
      wash.put("outcome", w.outcome().word());
      wash.put("costOfATreatment", four(w.cost()));
      wash.put("gain", four(w.gain()));
      wash.put("bestPlanToday", w.todayPlan().name());
      wash.put("lossToday", four(w.today()));
      wash.put("bestPlanThenWithoutWash", w.laterPlan().name());
      wash.put("lossThenWithoutWash", four(w.later()));
      wash.put("lossWithWash", four(w.withWash()));
      wash.put("lossKnowingAll", four(w.knowing()));
      ArrayNode decisions = wash.putArray("decisions");
      for (WashWorth.Decision d : w.decisions()) {
        decisions
            .addObject()
            .put("fromMites", d.from())
            .put("toMites", d.to())
            .put("plan", d.plan().name())
            .put("chance", four(d.chance()));
      }
    }
  }
}
