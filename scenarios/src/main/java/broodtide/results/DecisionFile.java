package broodtide.results;

import static broodtide.results.JsonFigures.band;
import static broodtide.results.JsonFigures.known;
import static broodtide.results.JsonFigures.six;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Decision;
import broodtide.assessment.QuantileSummary;
import broodtide.decision.CountedEfficacy;
import broodtide.decision.Rule;
import broodtide.decision.RuleResult;
import broodtide.decision.RuleTrial;
import broodtide.decision.Shortfall;
import broodtide.decision.TellingWash;
import broodtide.decision.TreatmentCheck;
import broodtide.decision.WashWorth;
import broodtide.decision.Windows;
import broodtide.fit.Backtest;
import broodtide.fit.CountDistribution;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Results of the decision tools as JSON, format {@value #FORMAT}: one object per colony under
 * {@code colonies}. Dates are ISO, infestations are mites per 100 adult bees, shares and chances
 * run from 0 to 1, a band is {@code {q05,q25,median,q75,q95}}, what is not known is null. Colonies
 * that could not be judged stand under {@code leftOut} with the reason. Numbers carry six
 * significant digits. Within a format fields are added, never changed or taken away. {@link
 * #schema()} describes every field.
 */
public final class DecisionFile {
  /** Name and version of the format. */
  public static final String FORMAT = "broodtide-decision-2";

  private static final String SCHEMA = "/schema/decision-2.json";

  private final ObjectNode root;
  private final ArrayNode colonies;
  private final Map<String, Decision> decisions = new HashMap<>();

  /**
   * An empty file.
   *
   * @param tool the command
   * @param version version of the program
   * @param seed seed of the random numbers
   * @param members simulated colonies
   * @param notes what was assumed, in sentences
   */
  public DecisionFile(String tool, String version, long seed, int members, List<String> notes) {
    root = JsonFigures.head(FORMAT, tool, version, seed, members, notes);
    colonies = root.putArray("colonies");
  }

  /** {@return the JSON Schema (2020-12) of the format} */
  public static String schema() {
    ObjectNode own = JsonFigures.resource(SCHEMA);
    ObjectNode parts = (ObjectNode) own.get("$defs");
    ObjectNode shared = (ObjectNode) JsonFigures.resource(ResultsFile.SCHEMA).get("$defs");
    for (String name :
        List.of("share", "day", "band", "windows", "windowsRow", "decision", "decidedPlan")) {
      parts.set(name, shared.get(name));
    }
    return JsonFigures.text(own);
  }

  /**
   * Names a colony that could not be judged.
   *
   * @param c the colony that nothing can be said of
   * @param reason why not, for people
   */
  public void leaveOut(ColonyCase c, String reason) {
    root.withArray("/leftOut").addObject().put("colony", c.colony()).put("reason", reason);
  }

  /**
   * Says what is decided of a colony, before its other figures are added.
   *
   * @param colony its name
   * @param decision the decision that its plans lead to
   */
  public void decided(String colony, Decision decision) {
    decisions.put(colony, decision);
  }

  /** Begins a colony. */
  ObjectNode colony(ColonyCase c) {
    ObjectNode node = colonies.addObject();
    node.put("colony", c.colony());
    node.put("climate", c.model().climate().name());
    node.put("now", c.now().toString());
    node.put("until", c.until().toString());
    node.put("thresholdSet", c.thresholds().name());
    Decision decision = decisions.get(c.colony());
    if (decision != null) {
      DecisionJson.write(node, decision);
    }
    return node;
  }

  /**
   * Adds the windows of a colony.
   *
   * @param w a finished search of windows
   */
  public void add(Windows w) {
    WindowsJson.write(colony(w.colony()).putObject("windows"), w);
  }

  /**
   * Adds the rules of a colony.
   *
   * @param trial a finished trial of rules
   */
  public void add(RuleTrial trial) {
    ObjectNode node = colony(trial.colony());
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
    node.put("treatmentsPerSeason", six(RuleResult.mean(r.treatments())));
    node.put("missesPerSeason", known(RuleResult.mean(r.misses())));
    node.put("seasonsWithAMiss", known(RuleResult.shareWithAny(r.misses())));
    node.put("needlessPerSeason", known(RuleResult.mean(r.needless())));
    node.put("seasonsWithANeedlessTreatment", known(RuleResult.shareWithAny(r.needless())));
    node.put("hinderedPerSeason", six(RuleResult.mean(r.hindered())));
    node.put("chanceLost", six(RuleResult.mean(r.lost())));
    band(node.putObject("infestation"), QuantileSummary.of(r.infestation()));
    if (!Double.isNaN(r.winterBrood()[0])) {
      band(node.putObject("winterBroodInfested"), QuantileSummary.of(r.winterBrood()));
    }
    ArrayNode days = node.putArray("washDays");
    for (RuleResult.WashDay d : r.days()) {
      ObjectNode day = days.addObject().put("day", d.day().toString());
      day.put("over", known(d.over()));
      day.put("treated", six(d.treated()));
      day.put("missed", known(d.missed()));
      day.put("needless", known(d.needless()));
    }
    ArrayNode objections = node.putArray("objections");
    r.objections().forEach(objections::add);
  }

  /**
   * Adds what washes on several days are worth for a colony.
   *
   * @param c the colony
   * @param worth the worth of a wash, by wash day
   */
  public void addWorth(ColonyCase c, List<WashWorth> worth) {
    ObjectNode node = colony(c);
    ArrayNode washes = node.putArray("washAgain");
    for (WashWorth w : worth) {
      ObjectNode wash = washes.addObject();
      wash.put("day", w.washDay().toString());
      wash.put("bees", w.bees());
      wash.put("outcome", w.outcome().word());
      wash.put("costOfATreatment", six(w.cost()));
      wash.put("gain", six(w.gain()));
      wash.put("bestPlanToday", w.todayPlan().name());
      wash.put("lossToday", six(w.today()));
      wash.put("bestPlanThenWithoutWash", w.laterPlan().name());
      wash.put("lossThenWithoutWash", six(w.later()));
      wash.put("lossWithWash", six(w.withWash()));
      wash.put("lossKnowingAll", six(w.knowing()));
      ArrayNode decisions = wash.putArray("decisions");
      for (WashWorth.Decision d : w.decisions()) {
        decisions
            .addObject()
            .put("fromMites", d.from())
            .put("toMites", d.to())
            .put("plan", d.plan().name())
            .put("chance", six(d.chance()));
      }
    }
  }

  /**
   * Adds what is to be said of a treatment.
   *
   * @param check the model's reckoning
   * @param counted what the counts alone say
   * @param neighbour the same against a neighbour
   */
  public void add(
      TreatmentCheck check,
      Optional<CountedEfficacy> counted,
      Optional<CountedEfficacy> neighbour) {
    ObjectNode node = colony(check.colony()).putObject("treatment");
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

  /**
   * Adds forecasts of washes that were held out, and their marks together.
   *
   * @param cases the colonies, by whose names the washes are told apart
   * @param report their backtest
   */
  public void add(List<ColonyCase> cases, Backtest.Report report) {
    for (ColonyCase c : cases) {
      ArrayNode held = colony(c).putArray("heldOut");
      for (Backtest.Mark m : report.marks()) {
        if (m.held().colony().equals(c.colony())) {
          ObjectNode mark = held.addObject().put("date", m.held().date().toString());
          mark.put("mites", m.held().mites());
          count(mark.putObject("forecast"), m.forecast());
          count(mark.putObject("noChange"), m.noChange());
          count(mark.putObject("exponential"), m.exponential());
        }
      }
    }
    ObjectNode marks = root.putObject("marks");
    marks.put("forecasts", report.marks().size());
    marks.put("heldBy50", six(report.coverage(0.5)));
    marks.put("heldBy90", six(report.coverage(0.9)));
    marks.put("crpsOfLogCounts", six(report.crps()));
    marks.put("crpsNoChange", six(report.crpsNoChange()));
    marks.put("crpsExponential", six(report.crpsExponential()));
  }

  private static void count(ObjectNode node, CountDistribution count) {
    node.put("q05", count.quantile(0.05));
    node.put("q25", count.quantile(0.25));
    node.put("median", count.quantile(0.5));
    node.put("q75", count.quantile(0.75));
    node.put("q95", count.quantile(0.95));
  }

  private static void efficacy(ObjectNode node, CountedEfficacy e) {
    node.put("share", six(e.share()));
    node.put("low", Double.isInfinite(e.interval().low()) ? null : six(e.interval().low()));
    node.put("high", six(e.interval().high()));
    node.put("level", six(e.interval().level()));
  }

  /** {@return the file's text} */
  public String text() {
    return JsonFigures.text(root);
  }
}
