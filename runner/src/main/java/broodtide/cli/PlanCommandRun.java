package broodtide.cli;

import broodtide.assessment.Assessment;
import broodtide.assessment.Caution;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.PlanRun;
import broodtide.assessment.UsualPlans;
import broodtide.control.Plan;
import broodtide.decision.MemoryNeed;
import broodtide.decision.WindowSearch;
import broodtide.decision.Windows;
import broodtide.engine.Workers;
import broodtide.files.Outputs;
import broodtide.fit.PosteriorNarrative;
import broodtide.fit.SeasonPosterior;
import broodtide.report.PlanTerminalTable;
import broodtide.results.ColonyResult;
import broodtide.terminal.Terminal;
import broodtide.words.Answer;
import broodtide.words.FirstLines;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Plays plans for every colony, prints the answer, and writes report, pictures and tables. */
final class PlanCommandRun {
  private final CommandContext desk;
  private final RunOptions run;
  private final String what;
  private final List<String> text = new ArrayList<>();
  private boolean laysNone;

  PlanCommandRun(CommandContext desk, RunOptions run, String what) {
    this.desk = desk;
    this.run = run;
    this.what = what;
  }

  /** Plays waiting alone for every colony. */
  int wait(CaseReader.Cases cases) {
    laysNone = true;
    return play(cases, c -> List.of(Plan.waiting(UsualPlans.WAIT)));
  }

  /** Says something before the answer. */
  PlanCommandRun opening(String sentences) {
    text.add(desk.terminal().wrap(sentences));
    text.add("");
    return this;
  }

  int play(CaseReader.Cases cases, Function<ColonyCase, List<Plan>> plans) {
    SeasonPosterior.SamplerSettings effort = run.effort();
    MemoryCheck.check(
        cases.cases(),
        effort.particles(),
        c -> MemoryNeed.ofPlans(c, cases.cases().size(), plans.apply(c).size()),
        (laysNone ? "" : "compare fewer plans, ") + "shorten the forecast with --until");
    // A colony's simulated seasons fill tens of megabytes: what is said of it is set at once, and
    // they are let go before the next colony.
    PlanRunFiles findings = new PlanRunFiles(what, run, effort, cases);
    Outputs outputs = run.outputs(cases, findings.names(cases.colonies()));
    try (Workers workers = run.threads == null ? Workers.all() : new Workers(run.threads)) {
      for (ColonyCase c : cases.cases()) {
        one(c, plans.apply(c), effort, workers, findings);
      }
    }
    Map<String, byte[]> files = findings.files();
    findings.lacking().ifPresent(desk.err()::println);
    if (run.json) {
      desk.out().print(findings.json());
    } else {
      text.forEach(desk.out()::println);
      desk.out().println(desk.terminal().wrap(Caution.ANSWER));
      cases.notes().forEach(note -> desk.out().println(desk.terminal().wrap(note)));
    }
    desk.deliver();
    outputs.write(files);
    if (!run.json && !run.quiet) {
      Path folder = run.folder();
      desk.add(desk.terminal().wrap(AnswerFiles.written(folder, files.keySet())));
      desk.add("Open " + folder.resolve(AnswerFiles.REPORT) + " in a browser.");
    }
    return Main.OK;
  }

  /** On its own, so that nothing holds on to a colony's seasons while the next one is played. */
  private void one(
      ColonyCase c,
      List<Plan> plans,
      SeasonPosterior.SamplerSettings effort,
      Workers workers,
      PlanRunFiles findings) {
    Assessment assessment = assess(c, effort, workers);
    if (laysNone) {
      findings.decided(c, assessment.waiting());
    }
    Comparison comparison = compare(assessment, plans);
    if (comparison.runs().isEmpty()) {
      throw new Refusal(
          "colony \"" + c.colony() + "\": no plan can be carried out: " + reasons(comparison));
    }
    Optional<Windows> windows =
        comparison.runs().size() > 1 ? Optional.of(windows(comparison, workers)) : Optional.empty();
    ColonyResult result = ColonyResult.of(comparison, windows, workers);
    findings.add(result);
    text.addAll(say(result));
  }

  private static String reasons(Comparison comparison) {
    return comparison.refused().stream()
        .map(r -> r.plan() + " (" + r.reason() + ")")
        .collect(Collectors.joining("; "));
  }

  private Assessment assess(ColonyCase c, SeasonPosterior.SamplerSettings effort, Workers workers) {
    try (ProgressLine line = new ProgressLine(desk, run, "reading the washes of " + c.colony())) {
      return Assessment.of(c, effort, workers, line);
    }
  }

  private Comparison compare(Assessment assessment, List<Plan> plans) {
    String colony = assessment.colony().colony();
    try (ProgressLine line = new ProgressLine(desk, run, "playing plans for " + colony)) {
      return assessment.compare(plans, line);
    }
  }

  private Windows windows(Comparison comparison, Workers workers) {
    ColonyCase c = comparison.colony();
    try (ProgressLine line = new ProgressLine(desk, run, "trying start days for " + c.colony())) {
      return WindowSearch.usual(c, comparison.posterior(), workers, line);
    }
  }

  private List<String> say(ColonyResult result) {
    Comparison comparison = result.comparison();
    Terminal terminal = desk.terminal();
    Answer answer = new Answer(comparison);
    List<String> out = new ArrayList<>();
    out.add(terminal.strong("Colony " + comparison.colony().colony()));
    FirstLines.of(comparison).forEach(line -> out.add(terminal.wrap(line)));
    if (comparison.runs().size() > 1) {
      out.add("");
      out.add(terminal.table(PlanTerminalTable.of(comparison)).stripTrailing());
      out.add(terminal.faint(terminal.wrap(PlanTerminalTable.legend(comparison))));
    }
    out.add("");
    out.add(terminal.wrap(String.join(" ", answer.further())));
    Optional<String> said = FirstLines.objection(comparison);
    for (PlanRun r : comparison.runs()) {
      r.objections().stream()
          .filter(objection -> !said.equals(Optional.of(objection)))
          .forEach(objection -> out.add(terminal.wrap("Note: " + objection + ".")));
    }
    for (Comparison.Refused r : comparison.refused()) {
      out.add(terminal.wrap("Left out: " + r.plan() + ": " + r.reason() + "."));
    }
    Answer.contradiction(result.agreement()).map(terminal::wrap).ifPresent(out::add);
    List<String> learned = PosteriorNarrative.sentences(comparison.posterior());
    if (!learned.isEmpty()) {
      out.add("");
      out.add(terminal.wrap(String.join(" ", learned)));
    }
    out.add("");
    return out;
  }
}
