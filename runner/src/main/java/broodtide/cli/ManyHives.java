package broodtide.cli;

import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import broodtide.assessment.Caution;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.ColonyCases;
import broodtide.assessment.Comparison;
import broodtide.assessment.ControlCautions;
import broodtide.assessment.HiveAnswer;
import broodtide.assessment.HiveRecords;
import broodtide.assessment.HiveRow;
import broodtide.control.Plan;
import broodtide.decision.MemoryNeed;
import broodtide.decision.NextWash;
import broodtide.decision.WindowSearch;
import broodtide.decision.Windows;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.files.Journal;
import broodtide.files.Outputs;
import broodtide.fit.SeasonBanks;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.RefusedException;
import broodtide.report.SheetFile;
import broodtide.report.SheetTerminalTable;
import broodtide.results.ColonyResult;
import broodtide.results.ResultsFile;
import broodtide.terminal.Terminal;
import broodtide.wash.ThresholdSet;
import broodtide.words.ApiaryWords;
import broodtide.words.Digits;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Plays plans for more hives than can be drawn. Hives are worked on side by side, each on a thread
 * of its own, and what is found of one is put away in a {@link Journal} before the next is begun:
 * memory holds a row of the sheet for each, and a run that is stopped goes on where it was.
 */
final class ManyHives {
  /** Most hives that get a page and pictures unasked. */
  static final int MOST_DRAWN = ColonyCases.FEW;

  /** Results of each hive on a line of its own. */
  static final String LINES = "results.jsonl";

  private static final String SHEET = "sheet.csv";

  /** Most sentences of one kind that are said of single hives. */
  private static final int MOST_SAID = 20;

  /** Bytes of a row of the sheet with its colony's case; measured, rounded up. */
  private static final long ROW = 8L << 10;

  /** Hives whose seasons began alike and were treated alike stand together. */
  private static final Comparator<ColonyCase> SHARING_TOGETHER =
      Comparator.comparing(ColonyCase::start)
          .thenComparing(
              c -> c.given().stream().map(g -> g.from() + g.name()).sorted().toList().toString());

  private final CommandContext desk;
  private final RunOptions run;
  private final String what;
  private final boolean laysNone;
  private final Optional<String> together;
  private final boolean resume;
  private final SeasonPosterior.SamplerSettings effort;
  private final SeasonBanks banks;
  private Optional<String> records = Optional.empty();

  ManyHives(
      CommandContext desk,
      RunOptions run,
      String what,
      boolean laysNone,
      Optional<String> together,
      boolean resume) {
    this.desk = desk;
    this.run = run;
    this.what = what;
    this.laysNone = laysNone;
    this.together = together;
    this.resume = resume;
    this.effort = run.effort();
    this.banks = SeasonBanks.inHeap(effort.particles());
  }

  /** What is said of forecasts on the beekeeper's own records. */
  ManyHives records(Optional<String> said) {
    records = said;
    return this;
  }

  int play(CaseReader.Cases cases, Function<ColonyCase, List<Plan>> plans) {
    int threads = threads(cases.cases(), plans);
    Outputs outputs = run.outputs(cases, List.of(SHEET, LINES));
    try (Journal journal = Journal.open(run.folder(), RunMark.of(what, run, cases), resume)) {
      work(cases.cases(), plans, threads, journal);
      Found found = Found.in(journal, cases.cases(), plans);
      if (found.rows().isEmpty()) {
        journal.remove();
        throw new Refusal(String.join("\n", found.refused().values()));
      }
      tell(cases, found, journal, outputs);
      journal.remove();
    }
    return Main.OK;
  }

  /** As many as are wanted and as memory allows. */
  private int threads(List<ColonyCase> cases, Function<ColonyCase, List<Plan>> plans) {
    Function<ColonyCase, MemoryNeed> need = c -> MemoryNeed.ofPlans(c, 1, plans.apply(c).size());
    MemoryCheck.check(
        cases,
        effort.particles(),
        need,
        (laysNone ? "" : "compare fewer plans, ") + "shorten the forecast with --until");
    int wanted = run.threads == null ? Runtime.getRuntime().availableProcessors() : run.threads;
    long heap = Runtime.getRuntime().maxMemory() - ROW * cases.size();
    return MemoryCheck.atOnce(heap, cases, effort.particles(), need, wanted);
  }

  private void work(
      List<ColonyCase> cases,
      Function<ColonyCase, List<Plan>> plans,
      int threads,
      Journal journal) {
    List<ColonyCase> left =
        cases.stream().filter(c -> !journal.holds(c.colony())).sorted(SHARING_TOGETHER).toList();
    Thread stopped =
        new Thread(
            () ->
                desk.err()
                    .println(
                        "Stopped. Of "
                            + Digits.counted(cases.size(), "hive")
                            + " "
                            + journal.size()
                            + " are done and kept; the same command with --resume goes on."));
    Runtime.getRuntime().addShutdownHook(stopped);
    try (Workers workers = new Workers(threads);
        HiveProgress progress = new HiveProgress(desk, run, cases.size() - left.size())) {
      workers.run(
          left.size(),
          i -> {
            ColonyCase c = left.get(i);
            journal.add(c.colony(), entry(c, plans.apply(c)).bytes());
          },
          progress);
    } finally {
      forget(stopped);
    }
  }

  private static void forget(Thread hook) {
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      // The program is being stopped.
    }
  }

  private HiveEntry entry(ColonyCase c, List<Plan> plans) {
    try (Workers alone = new Workers(1)) {
      HiveAnswer answer = HiveAnswer.of(c, plans, laysNone, effort, banks, alone);
      Comparison comparison = answer.comparison();
      Optional<Windows> windows =
          comparison.runs().size() > 1
              ? Optional.of(WindowSearch.usual(c, comparison.posterior(), alone, Progress.NONE))
              : Optional.empty();
      ColonyResult result = ColonyResult.of(comparison, windows, alone);
      return new HiveEntry(
          Optional.empty(),
          PlanCommandRun.differs(result),
          HiveRecords.bytes(answer.row(NextWash.of(comparison))),
          ResultsFile.line(result, answer.decision()));
    } catch (RefusedException e) {
      return HiveEntry.refused(e.reason());
    }
  }

  /**
   * What a journal holds of all hives, by the order of their cases.
   *
   * @param rows rows of the sheet
   * @param said what is to be said beside it, by hive
   * @param refused hives of which nothing can be said, with the reason
   */
  private record Found(
      List<HiveRow> rows, Map<String, List<String>> said, Map<String, String> refused) {
    static Found in(
        Journal journal, List<ColonyCase> cases, Function<ColonyCase, List<Plan>> plans) {
      HiveRecords records = new HiveRecords();
      List<HiveRow> rows = new ArrayList<>();
      Map<String, List<String>> said = new HashMap<>();
      Map<String, String> refused = new LinkedHashMap<>();
      for (ColonyCase c : cases) {
        HiveEntry.Kept kept = HiveEntry.Kept.in(journal, c.colony());
        HiveEntry spoken = kept.spoken();
        if (spoken.refused().isPresent()) {
          refused.put(c.colony(), spoken.refused().get());
        } else {
          rows.add(records.row(c, plans.apply(c), kept::rowBytes));
          if (!spoken.said().isEmpty()) {
            said.put(c.colony(), spoken.said());
          }
        }
      }
      return new Found(rows, said, refused);
    }
  }

  private void tell(CaseReader.Cases cases, Found found, Journal journal, Outputs outputs) {
    ApiarySheet sheet = ApiarySheet.of(found.rows());
    List<ApiaryPlan> plans = sheet.together(together);
    List<String> hives =
        cases.colonies().stream().filter(hive -> !found.refused().containsKey(hive)).toList();
    if (run.json) {
      ResultsFile file =
          new ResultsFile(what, Version.number(), run.seed, effort.particles(), notes(cases));
      for (ColonyCase c : cases.cases()) {
        String reason = found.refused().get(c.colony());
        if (reason != null) {
          file.leaveOut(c, reason);
        }
      }
      file.add(sheet, plans);
      file.write(hives.stream().map(hive -> line(journal, hive)).iterator(), desk.out());
    } else {
      say(sheet, plans, found, cases);
    }
    desk.deliver();
    Map<String, Outputs.Content> files = new LinkedHashMap<>();
    byte[] table = SheetFile.of(sheet).getBytes(StandardCharsets.UTF_8);
    files.put(SHEET, out -> out.write(table));
    files.put(LINES, out -> lines(journal, hives, out));
    outputs.writeAll(files);
    if (!run.json && !run.quiet) {
      desk.add(desk.terminal().wrap(AnswerFiles.written(run.folder(), files.keySet())));
    }
  }

  private List<String> notes(CaseReader.Cases cases) {
    List<String> notes = new ArrayList<>(cases.notes());
    records.ifPresent(said -> notes.add(0, said));
    return notes;
  }

  private static String line(Journal journal, String hive) {
    return new String(HiveEntry.Kept.in(journal, hive).lineBytes(), StandardCharsets.UTF_8);
  }

  private static void lines(Journal journal, List<String> hives, OutputStream out)
      throws IOException {
    for (String hive : hives) {
      out.write(HiveEntry.Kept.in(journal, hive).lineBytes());
    }
  }

  private void say(ApiarySheet sheet, List<ApiaryPlan> plans, Found found, CaseReader.Cases cases) {
    Terminal terminal = desk.terminal();
    ThresholdSet thresholds = cases.cases().get(0).thresholds();
    int all = sheet.rows().size();
    int shown = Math.min(MOST_DRAWN, all);
    ApiarySheet first = new ApiarySheet(sheet.rows().subList(0, shown), sheet.over());
    List<String> out = new ArrayList<>();
    out.add(terminal.wrap(ApiaryWords.headline(sheet, thresholds)));
    out.add("");
    out.add(terminal.table(SheetTerminalTable.of(first, terminal)).stripTrailing());
    out.add(terminal.faint(terminal.wrap(SheetTerminalTable.legend(sheet))));
    if (all > shown) {
      out.add(
          terminal.wrap(
              "The other "
                  + Digits.counted(all - shown, "hive")
                  + (all - shown == 1 ? " stands" : " stand")
                  + " in "
                  + SHEET
                  + "."));
    }
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
    Map<String, List<String>> byUrgency = new LinkedHashMap<>();
    sheet
        .rows()
        .forEach(
            row -> byUrgency.put(row.hive(), found.said().getOrDefault(row.hive(), List.of())));
    some(ApiaryWords.shared(byUrgency)).forEach(line -> out.add(terminal.wrap(line)));
    some(found.refused().values().stream().map(reason -> "Left out: " + reason + ".").toList())
        .forEach(line -> out.add(terminal.wrap(line)));
    out.add(
        terminal.wrap(
            "Pages and pictures are drawn with --each, or for one hive with --colony NAME."));
    out.add("");
    out.forEach(desk.out()::println);
    desk.out().println(terminal.wrap(Caution.answer(ControlCautions.acid(sheet.named()))));
    cases.news(false).forEach(note -> desk.out().println(terminal.wrap(note)));
  }

  /** The first of many sentences, and how many more there are. */
  private static List<String> some(List<String> sentences) {
    if (sentences.size() <= MOST_SAID) {
      return sentences;
    }
    List<String> out = new ArrayList<>(sentences.subList(0, MOST_SAID));
    out.add("And " + (sentences.size() - MOST_SAID) + " more such remarks on single hives.");
    return out;
  }
}
