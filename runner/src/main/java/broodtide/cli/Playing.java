package broodtide.cli;

import broodtide.compare.ColonyCase;
import broodtide.compare.ColonyResult;
import broodtide.compare.Comparison;
import broodtide.compare.PlanRun;
import broodtide.compare.ResultsFile;
import broodtide.control.Plan;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.report.Answer;
import broodtide.report.Outputs;
import broodtide.report.Page;
import broodtide.report.PlanTables;
import broodtide.report.RunFacts;
import broodtide.report.SeasonChart;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** Plays plans for every colony, prints the answer, and writes report, pictures and tables. */
final class Playing {
  private final Desk desk;
  private final RunOptions run;
  private final String what;

  Playing(Desk desk, RunOptions run, String what) {
    this.desk = desk;
    this.run = run;
    this.what = what;
  }

  int play(CaseReader.Cases cases, Function<ColonyCase, List<Plan>> plans) {
    SeasonPosterior.Effort effort = run.effort();
    Outputs outputs = Outputs.into(run.out);
    ResultsFile results =
        new ResultsFile(Version.number(), run.seed, effort.particles(), cases.notes());
    List<ColonyResult> colonies = new ArrayList<>();
    try (Workers workers = run.threads == null ? Workers.all() : new Workers(run.threads)) {
      for (ColonyCase c : cases.cases()) {
        Comparison comparison = compare(c, plans.apply(c), effort, workers);
        ColonyResult result = ColonyResult.of(comparison, workers);
        colonies.add(result);
        results.add(result);
      }
    }
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(
        "report.html",
        utf8(new Page(pictures(colonies, files), cases.notes(), facts(effort)).html()));
    files.put("plans.csv", utf8(PlanTables.plans(colonies)));
    files.put("season.csv", utf8(PlanTables.season(colonies)));
    files.put("results.json", utf8(results.text()));
    outputs.write(files);
    if (run.json) {
      desk.out().print(results.text());
    } else {
      colonies.forEach(this::say);
      cases.notes().forEach(this::print);
      if (!run.quiet) {
        print("Written to " + run.out + ": " + String.join(", ", files.keySet()) + ".");
      }
    }
    desk.out().flush();
    return Main.OK;
  }

  private Comparison compare(
      ColonyCase c, List<Plan> plans, SeasonPosterior.Effort effort, Workers workers) {
    SeasonPosterior posterior;
    try (ProgressLine line = new ProgressLine(desk, run, "reading the washes of " + c.colony())) {
      posterior = c.posterior(effort, workers, line);
    }
    try (ProgressLine line = new ProgressLine(desk, run, "playing plans for " + c.colony())) {
      return Comparison.of(c, posterior, plans, workers, line);
    }
  }

  /** Draws every colony's chart into the files and gives it to the page too. */
  private List<Page.Part> pictures(List<ColonyResult> colonies, Map<String, byte[]> files) {
    List<Page.Part> parts = new ArrayList<>();
    for (ColonyResult result : colonies) {
      String colony = Outputs.name(result.comparison().colony().colony());
      String name = colonies.size() > 1 ? what + "-" + colony : what;
      SeasonChart chart = PlanPictures.plans(result);
      files.put(name + ".svg", utf8(chart.svg()));
      files.put(name + ".png", chart.png());
      parts.add(new Page.Part(result, chart));
    }
    return parts;
  }

  private RunFacts facts(SeasonPosterior.Effort effort) {
    return new RunFacts(
        what, Version.number(), run.seed, effort.particles(), CommandWords.of(run.command()));
  }

  private void say(ColonyResult result) {
    Comparison comparison = result.comparison();
    Answer answer = new Answer(comparison);
    desk.out().println(desk.terminal().strong("Colony " + comparison.colony().colony()));
    print(answer.sentence());
    print(String.join(" ", answer.further()));
    if (comparison.runs().size() > 1) {
      desk.out().println();
      desk.out().println(desk.terminal().table(PlanTables.terminal(comparison)).stripTrailing());
      String legend = desk.terminal().wrap(PlanTables.terminalLegend(comparison));
      desk.out().println(desk.terminal().faint(legend));
    }
    for (PlanRun r : comparison.runs()) {
      r.objections().forEach(objection -> print("Mind: " + objection + "."));
    }
    for (Comparison.Refused r : comparison.refused()) {
      print("Left out: " + r.plan() + ": " + r.reason() + ".");
    }
    Answer.contradiction(result.checks()).ifPresent(this::print);
    desk.out().println();
  }

  private void print(String sentence) {
    desk.out().println(desk.terminal().wrap(sentence));
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
