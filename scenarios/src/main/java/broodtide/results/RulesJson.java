package broodtide.results;

import static broodtide.results.JsonFigures.band;
import static broodtide.results.JsonFigures.four;
import static broodtide.results.JsonFigures.known;

import broodtide.decision.Rule;
import broodtide.decision.RuleResult;
import broodtide.decision.RuleTrial;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** Rules for treating as JSON. */
final class RulesJson {
  private RulesJson() {}

  /** Fills a colony. */
  static void write(ObjectNode node, RuleTrial trial) {
    ObjectNode round = node.putObject("round");
    round.put("first", trial.round().first().toString());
    round.put("last", trial.round().last().toString());
    round.put("every", trial.round().every());
    round.put("bees", trial.round().bees());
    ArrayNode rules = node.putArray("rules");
    trial.results().forEach(r -> rule(rules.addObject(), r));
    ArrayNode refused = node.putArray("refusedRules");
    trial
        .refused()
        .forEach(r -> refused.addObject().put("rule", r.plan()).put("reason", r.reason()));
  }

  private static void rule(ObjectNode node, RuleResult r) {
    node.put("rule", r.rule().name());
    if (r.rule() instanceof Rule.Threshold t) {
      node.put("waitDays", t.apart());
    }
    node.put("treatmentsPerSeason", four(RuleResult.mean(r.treatments())));
    node.put("missesPerSeason", known(RuleResult.mean(r.misses())));
    node.put("seasonsWithAMiss", known(RuleResult.shareWithAny(r.misses())));
    node.put("needlessPerSeason", known(RuleResult.mean(r.needless())));
    node.put("seasonsWithANeedlessTreatment", known(RuleResult.shareWithAny(r.needless())));
    node.put("blockedPerSeason", four(RuleResult.mean(r.blocked())));
    node.put("chanceLost", four(RuleResult.mean(r.lost())));
    band(node.putObject("infestation"), r.infestationOfLiving());
    if (!Double.isNaN(r.winterBrood()[0])) {
      band(node.putObject("winterBroodInfested"), r.winterBroodOfLiving());
    }
    ArrayNode days = node.putArray("washDays");
    for (RuleResult.WashDay d : r.days()) {
      ObjectNode day = days.addObject().put("day", d.day().toString());
      day.put("over", known(d.over()));
      day.put("treated", four(d.treated()));
      day.put("missed", known(d.missed()));
      day.put("needless", known(d.needless()));
    }
    ArrayNode objections = node.putArray("objections");
    r.objections().forEach(objections::add);
  }
}
