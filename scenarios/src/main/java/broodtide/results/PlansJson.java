package broodtide.results;

import static broodtide.results.JsonFigures.band;
import static broodtide.results.JsonFigures.difference;
import static broodtide.results.JsonFigures.four;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.CrossingDays;
import broodtide.assessment.Outcome;
import broodtide.assessment.PlanDay;
import broodtide.assessment.PlanRun;
import broodtide.assessment.QuantileSummary;
import broodtide.assessment.Sensitivity;
import broodtide.control.Control;
import broodtide.engine.Quantity;
import broodtide.fit.ExpectedWashes;
import broodtide.fit.UnknownSummary;
import broodtide.wash.BoardCount;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.LocalDate;
import java.util.List;

/** Plans side by side as JSON, with what the washes say of their colony. */
final class PlansJson {
  private PlansJson() {}

  /** Fills a colony. */
  static void write(ObjectNode node, ColonyResult result) {
    Comparison comparison = result.comparison();
    washes(node.putArray("washes"), result.checks());
    boards(node, comparison.colony());
    unknowns(node.putArray("unknowns"), result.sensitivity());
    ObjectNode quality = node.putObject("sample");
    quality.put("effectiveSize", four(comparison.posterior().sample().effectiveSize()));
    quality.put("acceptance", four(comparison.posterior().sample().acceptance()));
    quality.put("steps", comparison.posterior().sample().steps());
    ArrayNode plans = node.putArray("plans");
    for (PlanRun run : comparison.runs()) {
      plan(plans.addObject(), run, comparison, result.days(run));
    }
    result.windows().ifPresent(w -> WindowsJson.write(node.putObject("windows"), w));
    ArrayNode refused = node.putArray("refusedPlans");
    for (Comparison.Refused r : comparison.refused()) {
      refused.addObject().put("plan", r.plan()).put("reason", r.reason());
    }
  }

  /** Mites on boards under a colony; nothing without one. */
  static void boards(ObjectNode node, ColonyCase c) {
    if (c.boards().isEmpty()) {
      return;
    }
    ArrayNode into = node.putArray("boards");
    for (BoardCount board : c.boards()) {
      ObjectNode b = into.addObject();
      b.put("from", board.from().toString());
      b.put("date", board.date().toString());
      b.put("days", board.days());
      b.put("mites", board.mites());
      b.put("perDay", four(board.perDay()));
      c.stages()
          .fallOn(c.thresholds(), board.date())
          .ifPresent(fall -> b.put("thresholdPerDay", four(fall)));
    }
  }

  private static void washes(ArrayNode into, List<ExpectedWashes.Check> checks) {
    for (ExpectedWashes.Check check : checks) {
      ObjectNode w = into.addObject();
      w.put("date", check.wash().date().toString());
      w.put("mites", check.wash().mites());
      w.put("bees", four(check.wash().beesOrAssumed()));
      w.put("beesAssumed", check.wash().beesAssumed());
      w.put("method", check.wash().method().id());
      w.put("frame", check.wash().frame().id());
      w.put("note", check.wash().note());
      w.put("placeInForecast", four(check.place()));
    }
  }

  private static void unknowns(ArrayNode into, List<Sensitivity> unknowns) {
    for (Sensitivity matters : unknowns) {
      UnknownSummary s = matters.unknown();
      ObjectNode u = into.addObject();
      u.put("id", s.unknown().id());
      if (s.course() >= 0) {
        u.put("course", s.course());
      }
      if (s.season() > 0) {
        u.put("season", s.season());
      }
      u.put("unit", s.unknown().unit().word());
      u.put("what", s.prior().meaning());
      u.put("priorMedian", four(s.prior().median()));
      u.put("median", four(s.median()));
      u.put("q05", four(s.low()));
      u.put("q95", four(s.high()));
      u.put("shrinkage", four(s.shrinkage()));
      ObjectNode index = u.putObject("firstOrderIndex");
      index.put("share", four(matters.index().share()));
      index.put("low", four(matters.index().range().low()));
      index.put("high", four(matters.index().range().high()));
      index.put("tellsFromZero", matters.index().differsFromZero());
      ObjectNode total = u.putObject("totalIndexBeforehand");
      total.put("share", four(matters.beforehand().share()));
      total.put("low", four(matters.beforehand().range().low()));
      total.put("high", four(matters.beforehand().range().high()));
      total.put("tellsFromZero", matters.beforehand().differsFromZero());
    }
  }

  private static void plan(
      ObjectNode node, PlanRun run, Comparison comparison, List<PlanDay> days) {
    ColonyCase c = run.colony();
    node.put("plan", run.plan().name());
    ArrayNode controls = node.putArray("controls");
    for (Control control : run.plan().controls()) {
      controls
          .addObject()
          .put("name", control.name())
          .put("from", control.from().toString())
          .put("to", control.to().toString());
    }
    ArrayNode objections = node.putArray("objections");
    run.objections().forEach(objections::add);
    LocalDate raised = c.winterBeesRaised();
    ObjectNode then = node.putObject("whenRaised").put("day", raised.toString());
    band(then.putObject("infestation"), run.on(Quantity.INFESTATION, raised));
    band(then.putObject("mites"), run.mitesWhenRaised());
    band(node.putObject("infestationAtEnd"), run.on(Quantity.INFESTATION, c.until()));
    band(node.putObject("peakInfestation"), run.peaks());
    node.put("peakDay", run.peakDay().toString());
    CrossingDays crossing = run.crossing();
    node.put("chanceDiedOut", four(run.shareLost(c.until())));
    node.put("chanceOverThreshold", c.hasThreshold() ? four(crossing.share()) : null);
    crossing.medianDay().ifPresent(day -> node.put("medianDayOverThreshold", day.toString()));
    dayOverThreshold(node.putObject("dayOverThreshold"), crossing);
    run.springLow()
        .ifPresent(
            low -> {
              ObjectNode winter = node.putObject("winter");
              winter.put("springLow", low.day().toString());
              band(winter.putObject("chanceLost"), QuantileSummary.of(run.winterLosses(low)));
              winter.put("meanChanceLost", four(run.shareLost(low.day())));
              band(winter.putObject("chanceLostByYard"), run.lossByYard(low.day()));
              band(winter.putObject("soundWinterBees"), run.on(Quantity.WINTER_BEES, low.day()));
            });
    difference(
        node.putObject("infestationAgainstWait"),
        comparison.against(run, Outcome.INFESTATION),
        "chanceBetter");
    double[] infested = run.winterBroodInfested();
    if (!Double.isNaN(infested[0])) {
      band(node.putObject("winterBroodInfested"), run.winterBrood());
      double[] reference = comparison.runs().get(0).winterBroodInfested();
      band(
          node.putObject("winterBroodInfestedAgainstFirst"),
          QuantileSummary.of(Comparison.differences(infested, reference)));
      node.put("chanceBetterThanFirst", four(Comparison.chanceSmaller(infested, reference)));
      difference(
          node.putObject("winterBroodAgainstWait"),
          comparison.against(run, Outcome.WINTER_BROOD),
          "chanceBetter");
    }
    node.put("treatments", run.treatments());
    node.put("daysTreatedWithSupers", run.daysTreatedWithSupers());
    ArrayNode series = node.putArray("series");
    for (PlanDay day : days) {
      ObjectNode row = series.addObject();
      row.put("date", day.date().toString());
      band(row.putObject("infestation"), day.infestation());
      row.put("adults", four(day.adults()));
    }
  }

  /** Days by which shares of all colonies have passed the threshold; null where they never do. */
  private static void dayOverThreshold(ObjectNode node, CrossingDays crossing) {
    double[] shares = {0.05, 0.25, 0.5, 0.75, 0.95};
    String[] names = {"q05", "q25", "median", "q75", "q95"};
    for (int i = 0; i < shares.length; i++) {
      node.put(names[i], crossing.dayFor(shares[i]).map(LocalDate::toString).orElse(null));
    }
  }
}
