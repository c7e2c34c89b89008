package broodtide.cli;

import broodtide.assessment.Assessment;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.Horizon;
import broodtide.assessment.Outcome;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.decision.MemoryNeed;
import broodtide.decision.WindowSearch;
import broodtide.decision.Windows;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.report.WindowPicture;
import broodtide.results.ResultsFile;
import broodtide.terminal.Table;
import broodtide.words.Digits;
import broodtide.words.OutcomeWords;
import broodtide.words.Plain;
import broodtide.words.WindowWords;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** When is the best time? */
@Command(
    name = "windows",
    mixinStandardHelpOptions = true,
    header = "The best time for each treatment or measure.",
    description = {
      "How each treatment or measure works by start date. Shows which days supers, temperature or"
          + " brood rule out, how much the start date matters, and what a week's delay costs."
    },
    footer = {
      "  broodtide windows washes.csv --climate temperate",
      "  broodtide windows washes.csv --climate temperate \\",
      "      --controls thymol,formic-slow --daily"
    })
final class WindowsCommand implements Callable<Integer> {
  private final CommandContext desk;
  @Mixin private ColonyOptions colony = new ColonyOptions();
  @Mixin private RunOptions run = new RunOptions();

  @Option(
      names = "--controls",
      paramLabel = "A,B",
      split = ",",
      completionCandidates = KnownWords.Controls.class,
      description = "Controls of the library to try. Default: ${DEFAULT-VALUE}.",
      defaultValue = WindowSearch.USUAL)
  private List<String> controls = new ArrayList<>();

  @Option(
      names = "--outcome",
      paramLabel = "OUTCOME",
      description =
          "What is judged: winter-brood is cells with a mite while winter bees are"
              + " raised. Or infestation, mites per 100 bees when they have been raised. Or"
              + " lost, the chance that the colony is dead or too weak in spring. Default:"
              + " ${DEFAULT-VALUE}.",
      completionCandidates = KnownWords.Outcomes.class,
      defaultValue = "lost")
  private String outcome = "lost";

  @Option(names = "--daily", description = "Try every day instead of every seventh.")
  private boolean daily;

  @Option(names = "--from", paramLabel = "DATE", description = "First start day. Default: now.")
  private @Nullable LocalDate from;

  @Option(
      names = "--to",
      paramLabel = "DATE",
      description = "Last start day. Default: the day before the last day of the forecast.")
  private @Nullable LocalDate to;

  WindowsCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    List<ControlTemplate> templates = controls.stream().map(Catalog::control).toList();
    Outcome judged = OutcomeOption.named(outcome);
    CaseReader.Cases cases = new CaseReader(desk, colony).read(Horizon::spring);
    return new DecisionCommandRun(desk, run, "windows")
        .decide(
            cases,
            c -> MemoryNeed.ofWindows(c, cases.cases().size(), templates.size(), starts(c).size()),
            "try fewer controls or days with --controls, --from and --to",
            (c, workers, file, out) -> search(c, templates, judged, workers, file, out));
  }

  private void search(
      ColonyCase c,
      List<ControlTemplate> templates,
      Outcome judged,
      Workers workers,
      ResultsFile file,
      DecisionCommandRun out) {
    List<LocalDate> starts = starts(c);
    judged.check(c);
    Assessment assessment = out.assess(c, workers);
    SeasonPosterior posterior = assessment.posterior();
    SeasonPosterior tried = posterior.thinned(WindowSearch.ENOUGH);
    Windows windows =
        out.watched(
            "trying start days for " + c.colony(),
            progress -> WindowSearch.of(c, tried, templates, starts, judged, workers, progress));
    Comparison usual = out.usual(assessment, file);
    file.add(windows);
    say(windows, usual, out);
    if (posterior.members().size() > tried.members().size()) {
      out.mention(
          "Played with " + Digits.count(tried.members().size()) + " of the simulated colonies.");
    }
    out.explain(usual);
    out.draw(
        c,
        WindowPicture.of(windows),
        "Each cell is a start date: the darker, the worse. Hatched days are usually ruled out by"
            + " honey supers, temperature or brood; the label decides.");
  }

  private List<LocalDate> starts(ColonyCase c) {
    LocalDate first = from == null ? c.now() : from;
    LocalDate last = to == null ? c.until().minusDays(1) : to;
    if (first.isBefore(c.now())) {
      throw new Refusal(
          "--from "
              + first
              + " lies before the day of decision, "
              + c.now()
              + " (the day after the last wash); give that day or a later one");
    }
    if (last.isBefore(first) || !last.isBefore(c.until())) {
      throw new Refusal(
          "--to "
              + last
              + " is not between "
              + first
              + " and "
              + c.until().minusDays(1)
              + "; --until moves the end");
    }
    List<LocalDate> out = new ArrayList<>();
    for (LocalDate d = first; !d.isAfter(last); d = d.plusDays(daily ? 1 : 7)) {
      out.add(d);
    }
    return out;
  }

  private static void say(Windows w, Comparison usual, DecisionCommandRun out) {
    Outcome o = w.outcome();
    out.open(WindowWords.first(w), usual);
    if (w.best().isEmpty()) {
      out.say("The table says why. Other controls or days: --controls, --from, --to.");
    }
    out.show(table(w), "Each treatment or measure by start date.");
    WindowWords.further(w).forEach(out::say);
    WindowWords.beyond(w, usual.decision()).ifPresent(out::say);
    out.mention(
        "Best: lowest in the model, "
            + o.title()
            + ". If you wait: "
            + OutcomeWords.brief(o, w.ifYouWait())
            + ". About as good: gains at least nine tenths of what the best day gains. A week"
            + " later: what it costs on average."
            + (WindowWords.ties(w) ? " =: these controls cannot be told apart." : ""));
    for (Windows.Row row : w.rows()) {
      WindowPicture.ruledOut(w, row)
          .ifPresent(words -> out.mention("Ruled out: " + row.control().name() + ": " + words));
      WindowPicture.labelDecides(w, row)
          .ifPresent(
              days ->
                  out.say(
                      "Note: "
                          + row.control().name()
                          + " begun "
                          + days
                          + ": supers are usually on then; the label decides."));
    }
  }

  private static Table table(Windows w) {
    Table table =
        Table.of(
            Table.Column.words("Treatment or measure"),
            Table.Column.words("best start"),
            Table.Column.numbers("best"),
            Table.Column.words("about as good"),
            Table.Column.numbers("a week later"));
    boolean ties = WindowWords.ties(w);
    for (Windows.Row row : w.rows()) {
      Optional<Integer> best = row.best();
      table =
          table.row(
              row.control().name() + (ties && WindowWords.tied(w, row) ? " =" : ""),
              best.map(b -> Plain.shortDay(w.starts().get(b))).orElse("-"),
              best.map(b -> OutcomeWords.brief(w.outcome(), row.middle(b).orElseThrow()))
                  .orElse("-"),
              w.tolerance(row) == 0
                  ? "-"
                  : w.asGood(row).map(s -> WindowPicture.stretch(w, s)).orElse("-"),
              best.flatMap(b -> w.delay(row, b, 7))
                  .map(d -> WindowPicture.signed(w.outcome(), d.mean()))
                  .orElse("-"));
    }
    return table;
  }
}
