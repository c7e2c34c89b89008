package broodtide.cli;

import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import broodtide.assessment.Assessment;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.Decision;
import broodtide.assessment.HiveRow;
import broodtide.assessment.PlanRun;
import broodtide.assessment.UsualPlans;
import broodtide.control.Plan;
import broodtide.decision.MemoryNeed;
import broodtide.decision.WindowSearch;
import broodtide.decision.Windows;
import broodtide.engine.Workers;
import broodtide.files.Outputs;
import broodtide.fit.SeasonBanks;
import broodtide.fit.SeasonPosterior;
import broodtide.report.PlanRunFiles;
import broodtide.report.PlanTerminalTable;
import broodtide.report.SheetTerminalTable;
import broodtide.results.ColonyResult;
import broodtide.terminal.Terminal;
import broodtide.wash.ThresholdSet;
import broodtide.words.Answer;
import broodtide.words.ApiaryWords;
import broodtide.words.BoardWords;
import broodtide.words.EfficacyWords;
import broodtide.words.FirstLines;
import broodtide.words.LearnedWords;
import broodtide.words.NotShown;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Plays plans for every colony, prints the answer, and writes report, pictures and tables. */
final class PlanCommandRun {
  private final CommandContext desk;
  private final SeasonBanks banks;
  private final RunOptions run;
  private final String what;
  private final List<String> text = new ArrayList<>();
  private final List<String> opening = new ArrayList<>();

  /** By hive, what is to be said beside the sheet, where the answers are not said in full. */
  private final Map<String, List<String>> differences = new HashMap<>();

  private boolean reinvasionTells;
  private boolean laysNone;
  private boolean each;
  private boolean resume;
  private Optional<String> together = Optional.empty();
  private Optional<String> records = Optional.empty();

  PlanCommandRun(CommandContext desk, RunOptions run, String what) {
    this.desk = desk;
    this.run = run;
    this.what = what;
    this.banks = SeasonBanks.inHeap(run.effort().particles());
  }

  /** Plays waiting alone for every colony. */
  int wait(CaseReader.Cases cases) {
    laysNone = true;
    return play(cases, c -> List.of(Plan.waiting(UsualPlans.WAIT)));
  }

  /** Says something before the answer. */
  PlanCommandRun opening(String sentences) {
    opening.add(desk.terminal().wrap(sentences));
    opening.add("");
    return this;
  }

  /** How several hives are to be answered. */
  PlanCommandRun hives(EachOption wanted) {
    each = wanted.each;
    resume = wanted.resume;
    return this;
  }

  /** The plan that is looked at for the whole apiary; where none is named, the best of most. */
  PlanCommandRun together(Optional<String> plan) {
    together = plan;
    return this;
  }

  /** What is said of forecasts on the beekeeper's own records. */
  PlanCommandRun records(Optional<String> said) {
    records = said;
    return this;
  }

  /** Notes for the files, which have no other place for what is said of the records. */
  private List<String> notes(CaseReader.Cases cases) {
    List<String> notes = new ArrayList<>(cases.notes());
    records.ifPresent(said -> notes.add(0, said));
    return notes;
  }

  int play(CaseReader.Cases cases, Function<ColonyCase, List<Plan>> plans) {
    if (cases.cases().size() > ManyHives.MOST_DRAWN && !each) {
      return new ManyHives(desk, run, what, laysNone, together, resume)
          .records(records)
          .play(cases, plans);
    }
    if (resume) {
      throw new Refusal(
          "--resume is for more than "
              + ManyHives.MOST_DRAWN
              + " hives without --each, which are kept one by one; leave it out");
    }
    SeasonPosterior.SamplerSettings effort = run.effort();
    MemoryCheck.check(
        cases.cases(),
        effort.particles(),
        c -> MemoryNeed.ofPlans(c, cases.cases().size(), plans.apply(c).size()),
        (laysNone ? "" : "compare fewer plans, ") + "shorten the forecast with --until");
    // A colony's simulated seasons fill tens of megabytes: what is said of it is set at once, and
    // they are let go before the next colony.
    PlanRunFiles findings =
        new PlanRunFiles(
            run.facts(what),
            notes(cases),
            cases.cases().size() > 1,
            cases.cases().get(0).thresholds(),
            run.png);
    findings.togetherWith(together);
    Outputs outputs = run.outputs(cases, findings.names(cases.colonies()));
    try (Workers workers = run.threads == null ? Workers.all() : new Workers(run.threads)) {
      for (ColonyCase c : cases.cases()) {
        one(c, plans.apply(c), effort, workers, findings);
      }
    }
    findings.finish();
    Map<String, byte[]> files = findings.files();
    findings.lacking().ifPresent(desk.err()::println);
    if (run.json) {
      desk.out().print(findings.json());
    } else {
      opening.forEach(desk.out()::println);
      findings
          .sheet()
          .ifPresent(
              sheet ->
                  sheet(sheet, findings.together(), cases.cases().get(0).thresholds())
                      .forEach(desk.out()::println));
      text.forEach(desk.out()::println);
      desk.out().println(desk.terminal().wrap(findings.caution()));
      cases.news(reinvasionTells).forEach(note -> desk.out().println(desk.terminal().wrap(note)));
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
    Optional<Decision> waiting = laysNone ? Optional.of(assessment.waiting()) : Optional.empty();
    waiting.ifPresent(decision -> findings.decided(c, decision));
    Comparison comparison = compare(assessment, plans).carriedOut();
    Optional<Windows> windows =
        comparison.runs().size() > 1 ? Optional.of(windows(comparison, workers)) : Optional.empty();
    ColonyResult result = ColonyResult.of(comparison, windows, workers);
    findings.add(result, waiting.orElseGet(comparison::decision));
    if (each || !findings.several()) {
      text.addAll(say(result, findings.several()));
    } else {
      differences.put(c.colony(), differs(result));
    }
  }

  private Assessment assess(ColonyCase c, SeasonPosterior.SamplerSettings effort, Workers workers) {
    try (ProgressLine line = new ProgressLine(desk, run, "reading the washes of " + c.colony())) {
      return Assessment.of(c, effort, banks, workers, line);
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

  /** The sheet of an apiary, and below it what differs between its hives. */
  private List<String> sheet(ApiarySheet sheet, List<ApiaryPlan> plans, ThresholdSet thresholds) {
    Terminal terminal = desk.terminal();
    List<String> out = new ArrayList<>();
    out.add(terminal.wrap(ApiaryWords.headline(sheet, thresholds)));
    out.add("");
    out.add(terminal.table(SheetTerminalTable.of(sheet, terminal)).stripTrailing());
    out.add(terminal.faint(terminal.wrap(SheetTerminalTable.legend(sheet))));
    out.add("");
    if (!plans.isEmpty()) {
      out.add(terminal.table(SheetTerminalTable.of(plans)).stripTrailing());
      out.add(terminal.faint(terminal.wrap(ApiaryWords.WHOLE)));
      out.add("");
    }
    records.map(terminal::wrap).ifPresent(out::add);
    ApiaryWords.begins(sheet).map(terminal::wrap).ifPresent(out::add);
    ApiaryWords.nextCounts(sheet).forEach(line -> out.add(terminal.wrap(line)));
    List<String> washes = ApiaryWords.washNext(sheet);
    if (!washes.isEmpty()) {
      out.add(terminal.wrap(String.join(" ", washes)));
    }
    if (!differences.isEmpty()) {
      Map<String, List<String>> byUrgency = new LinkedHashMap<>();
      for (HiveRow row : sheet.rows()) {
        byUrgency.put(row.hive(), differences.getOrDefault(row.hive(), List.of()));
      }
      ApiaryWords.shared(byUrgency).forEach(line -> out.add(terminal.wrap(line)));
      out.add(terminal.wrap("The full answer for each hive is in the report; --each prints it."));
    }
    out.add("");
    return out;
  }

  /** What may be said of one hive and not of another, and stands on no sheet. */
  static List<String> differs(ColonyResult result) {
    Comparison comparison = result.comparison();
    List<String> out = new ArrayList<>();
    Answer.contradiction(result.agreement()).ifPresent(out::add);
    FirstLines.objection(comparison)
        .ifPresent(o -> out.add("Against the plan named first: " + o + "."));
    for (Comparison.Refused r : comparison.refused()) {
      out.add("Left out: " + r.plan() + ": " + r.reason() + ".");
    }
    if (comparison.runs().size() > 1) {
      EfficacyWords.sentence(comparison).ifPresent(out::add);
    }
    List<String> boards = BoardWords.sentences(comparison.colony());
    if (!boards.isEmpty()) {
      out.add(String.join(" ", boards));
    }
    NotShown.inWinter(comparison.colony().model().climate()).ifPresent(out::add);
    return out;
  }

  private List<String> say(ColonyResult result, boolean several) {
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
    reinvasionTells |= answer.reinvasionTells();
    if (!several) {
      records.map(terminal::wrap).ifPresent(out::add);
    }
    out.add(terminal.wrap(String.join(" ", answer.further())));
    List<String> boards = BoardWords.sentences(comparison.colony());
    if (!boards.isEmpty()) {
      out.add(terminal.wrap(String.join(" ", boards)));
    }
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
    List<String> learned = LearnedWords.sentences(comparison.posterior());
    if (!learned.isEmpty()) {
      out.add("");
      out.add(terminal.wrap(String.join(" ", learned)));
    }
    out.add("");
    return out;
  }
}
