package broodtide.cli;

import broodtide.assessment.Assessment;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.UsualPlans;
import broodtide.chart.Picture;
import broodtide.control.Plan;
import broodtide.decision.MemoryNeed;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.files.Outputs;
import broodtide.fit.SeasonBanks;
import broodtide.measure.RefusedException;
import broodtide.report.AnswerSheet;
import broodtide.report.PictureFiles;
import broodtide.results.ResultsFile;
import broodtide.terminal.Table;
import broodtide.words.FirstLines;
import broodtide.words.OutcomeWords;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Runs one decision tool for every colony, prints what it says, and writes its files. */
final class DecisionCommandRun {
  private final CommandContext desk;
  private final SeasonBanks banks;
  private final RunOptions run;
  private final String tool;
  private final Map<String, byte[]> files = new LinkedHashMap<>();
  private final List<String> text = new ArrayList<>();
  private final List<AnswerSheet> sheets = new ArrayList<>();
  private PictureFiles pictures;
  private Function<ColonyCase, List<Plan>> plans = c -> UsualPlans.of(c, Optional.empty());

  DecisionCommandRun(CommandContext desk, RunOptions run, String tool) {
    this.desk = desk;
    this.run = run;
    this.tool = tool;
    this.banks = SeasonBanks.inHeap(run.effort().particles());
    this.pictures = new PictureFiles(false, run.png);
  }

  /** What a tool does for one colony. */
  @FunctionalInterface
  interface Tool {
    /**
     * Works and says the answer to {@code out}.
     *
     * @param c the colony
     * @param workers threads
     * @param file takes the results
     * @param out takes words, tables and pictures
     */
    void decide(ColonyCase c, Workers workers, ResultsFile file, DecisionCommandRun out);
  }

  /**
   * Does it for every colony.
   *
   * @param cases the colonies
   * @param need memory that one of them needs
   * @param lower what can be lowered besides the simulated colonies
   * @param work the tool
   */
  int decide(
      CaseReader.Cases cases, Function<ColonyCase, MemoryNeed> need, String lower, Tool work) {
    MemoryCheck.check(cases.cases(), run.effort().particles(), need, lower);
    plans = cases::plans;
    pictures = new PictureFiles(cases.cases().size() > 1, run.png);
    List<String> names = new ArrayList<>(pictures.names(tool, cases.colonies()));
    names.add(0, AnswerFiles.REPORT);
    names.add(Outputs.RESULTS);
    Outputs outputs = run.outputs(cases, names);
    ResultsFile file =
        new ResultsFile(tool, Version.number(), run.seed, run.effort().particles(), cases.notes());
    Set<String> refused = new LinkedHashSet<>();
    int failures = 0;
    try (Workers workers = run.threads == null ? Workers.all() : new Workers(run.threads)) {
      for (ColonyCase c : cases.cases()) {
        text.add(desk.terminal().strong("Colony " + c.colony()));
        sheets.add(AnswerSheet.about(c.colony()));
        try {
          work.decide(c, workers, file, this);
        } catch (RefusedException e) {
          failures++;
          refused.add(e.reason());
          file.leaveOut(c, e.reason());
          say("Left out: " + e.reason() + ".");
        }
        text.add("");
      }
    }
    if (failures == cases.cases().size()) {
      throw new Refusal(String.join("\n", refused));
    }
    files.put(AnswerFiles.REPORT, page(cases.notes()));
    files.putAll(pictures.files());
    files.put(Outputs.RESULTS, file.text().getBytes(StandardCharsets.UTF_8));
    pictures.lacking().ifPresent(desk.err()::println);
    print(cases, file);
    desk.deliver();
    outputs.write(files);
    if (!run.json && !run.quiet) {
      desk.add(desk.terminal().wrap(AnswerFiles.written(run.folder(), files.keySet())));
    }
    return Main.OK;
  }

  private byte[] page(List<String> notes) {
    return AnswerFiles.page(run.command(), sheets, notes, run.facts(tool));
  }

  private AnswerSheet sheet() {
    return sheets.get(sheets.size() - 1);
  }

  private void print(CaseReader.Cases cases, ResultsFile file) {
    if (run.json) {
      desk.out().print(file.text());
    } else {
      text.forEach(desk.out()::println);
      desk.out().println(desk.terminal().wrap(file.caution()));
      cases.news(false).forEach(note -> desk.out().println(desk.terminal().wrap(note)));
    }
  }

  /** Reads the washes of a colony. */
  Assessment assess(ColonyCase c, Workers workers) {
    try (ProgressLine line = new ProgressLine(desk, run, "reading the washes of " + c.colony())) {
      return Assessment.of(c, run.effort(), banks, workers, line);
    }
  }

  /**
   * Plays the colony's usual plans, and keeps what they decide for the results.
   *
   * @return the plans that were played
   */
  Comparison usual(Assessment assessment, ResultsFile file) {
    ColonyCase c = assessment.colony();
    Comparison comparison =
        watched(
            "comparing plans for " + c.colony(), line -> assessment.compare(plans.apply(c), line));
    file.decided(c.colony(), comparison.decision());
    return comparison;
  }

  /**
   * Says the answer in at most five short lines.
   *
   * @param first the answer to the question of the command
   * @param comparison the usual plans
   */
  void open(String first, Comparison comparison) {
    FirstLines.after(first, comparison).forEach(this::say);
  }

  /** Explains the winter loss of which the opening lines speak. */
  void explain(Comparison comparison) {
    if (comparison.decision().winterLossTold()) {
      mention(
          "Winter loss, lost: the chance that the colony is "
              + OutcomeWords.meaning(comparison.colony())
              + ".");
    }
  }

  /** Something done with progress drawn. */
  <T> T watched(String what, Watched<T> work) {
    try (ProgressLine line = new ProgressLine(desk, run, what)) {
      return work.with(line);
    }
  }

  /** Work that tells how far it is. */
  @FunctionalInterface
  interface Watched<T> {
    T with(Progress progress);
  }

  /** Says sentences. */
  void say(String sentences) {
    sheet().say(sentences);
    text.add(desk.terminal().wrap(sentences));
  }

  /** Says something in passing. */
  void mention(String sentences) {
    sheet().mention(sentences);
    text.add(desk.terminal().faint(desk.terminal().wrap(sentences)));
  }

  /**
   * Shows a table between blank lines.
   *
   * @param caption what it is about, where it stands on a page
   */
  void show(Table table, String caption) {
    sheet().show(table, caption);
    text.add("");
    text.add(desk.terminal().table(table).stripTrailing());
  }

  /**
   * Writes a picture.
   *
   * @param caption how to read it
   */
  void draw(ColonyCase c, Picture picture, String caption) {
    sheet().draw(picture, caption);
    pictures.add(tool, c.colony(), picture);
  }
}
