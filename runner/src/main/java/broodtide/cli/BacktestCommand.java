package broodtide.cli;

import broodtide.assessment.Assessment;
import broodtide.assessment.Caution;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.Decision;
import broodtide.assessment.Horizon;
import broodtide.chart.Figure;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.files.Outputs;
import broodtide.fit.Backtest;
import broodtide.fit.ForecastBias;
import broodtide.fit.SeasonBanks;
import broodtide.report.AnswerSheet;
import broodtide.report.BacktestPicture;
import broodtide.report.PictureFiles;
import broodtide.results.ResultsFile;
import broodtide.terminal.Table;
import broodtide.wash.Interval;
import broodtide.words.BiasWords;
import broodtide.words.Digits;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** How good would the forecasts have been? */
@Command(
    name = "backtest",
    mixinStandardHelpOptions = true,
    header = "How good such forecasts are on your own records.",
    description = {
      "Holds out each colony's last wash, forecasts it from the others, and scores the forecasts."
    },
    footer = {"  broodtide backtest washes.csv --climate warm-temperate"})
final class BacktestCommand implements Callable<Integer> {
  private static final String PICTURE = "backtest";

  private final CommandContext desk;
  @Mixin private ColonyOptions colony = new ColonyOptions();
  @Mixin private RunOptions run = new RunOptions();

  BacktestCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    CaseReader.Cases cases =
        new CaseReader(desk, colony).lookingBack("backtest", Horizon::winterBees);
    PictureFiles pictures = new PictureFiles(false, run.png);
    List<String> names = new ArrayList<>(pictures.names(PICTURE, List.of("")));
    names.add(0, AnswerFiles.REPORT);
    names.add(Outputs.RESULTS);
    Outputs outputs = run.outputs(cases, names);
    Backtest.Report report = RecordsOption.report(desk, run, cases.cases());
    if (report.marks().isEmpty()) {
      throw new Refusal("no colony has two washes or more, so none can be held out");
    }
    ResultsFile file =
        new ResultsFile(
            run.command().name(),
            Version.number(),
            run.seed,
            run.effort().particles(),
            cases.notes());
    decisions(cases).forEach(file::decided);
    file.add(cases.cases(), report);
    Figure picture = BacktestPicture.of(report, run.seed);
    pictures.add(PICTURE, "", picture);
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(AnswerFiles.REPORT, page(report, picture, cases.notes()));
    files.putAll(pictures.files());
    files.put(Outputs.RESULTS, file.text().getBytes(StandardCharsets.UTF_8));
    pictures.lacking().ifPresent(desk.err()::println);
    if (run.json) {
      desk.out().print(file.text());
    } else {
      say(report, cases.news(false));
    }
    desk.deliver();
    outputs.write(files);
    if (!run.json && !run.quiet) {
      desk.add(desk.terminal().wrap(AnswerFiles.written(run.folder(), files.keySet())));
    }
    return Main.OK;
  }

  private byte[] page(Backtest.Report report, Figure picture, List<String> notes) {
    AnswerSheet sheet = AnswerSheet.about("");
    sheet.say(scores(report));
    sheet.say(bias(report));
    sheet.draw(
        picture,
        "Forecast against count: on the slanting line they are alike. Where counts fell: even bars"
            + " are best. Skill: above 0 such forecasts are better than simple ones.");
    sheet.show(table(report), "Each colony's last wash, forecast from those before it.");
    return AnswerFiles.page(run.command(), List.of(sheet), notes, run.facts(run.command().name()));
  }

  /** What waiting leads to, on the day on which the whole apiary is decided. */
  private Map<String, Decision> decisions(CaseReader.Cases cases) {
    Map<String, Decision> out = new LinkedHashMap<>();
    SeasonBanks banks = SeasonBanks.inHeap(run.effort().particles());
    LocalDate day =
        cases.cases().stream().map(ColonyCase::now).max(Comparator.naturalOrder()).orElseThrow();
    try (Workers workers = run.threads == null ? Workers.all() : new Workers(run.threads);
        ProgressLine line = new ProgressLine(desk, run, "reading the washes")) {
      for (ColonyCase c : cases.cases()) {
        ColonyCase ahead = day.isBefore(c.until()) ? c : c.until(day.plusDays(1));
        ColonyCase decided = ahead.decidingOn(day);
        out.put(
            c.colony(),
            Assessment.of(decided, run.effort(), banks, workers, Progress.NONE).waiting());
        line.at(out.size(), cases.cases().size());
      }
    }
    return out;
  }

  private void say(Backtest.Report report, List<String> notes) {
    desk.out().println(desk.terminal().table(table(report)).stripTrailing());
    desk.out().println();
    wrapped(scores(report));
    wrapped(bias(report));
    wrapped(Caution.ANSWER);
    notes.forEach(this::wrapped);
  }

  private void wrapped(String sentences) {
    desk.out().println(desk.terminal().wrap(sentences));
  }

  private static Table table(Backtest.Report report) {
    Table table =
        Table.of(
            Table.Column.words("Colony"),
            Table.Column.words("held-out wash"),
            Table.Column.numbers("mites"),
            Table.Column.numbers("forecast"),
            Table.Column.numbers("90 %"));
    for (Backtest.Mark m : report.marks()) {
      table =
          table.row(
              m.held().colony(),
              m.held().date().toString(),
              Integer.toString(m.held().mites()),
              Integer.toString(m.forecast().quantile(0.5)),
              m.forecast().quantile(0.05) + " to " + m.forecast().quantile(0.95));
    }
    return table;
  }

  /** Whether forecasts ran too high or too low here. */
  private static String bias(Backtest.Report report) {
    return BiasWords.sentence(report)
        + (report.marks().size() >= ForecastBias.FEWEST
            ? " 'broodtide compare --records' says it beside the plans."
            : "");
  }

  private String scores(Backtest.Report report) {
    int n = report.marks().size();
    Interval half = report.coverageRange(0.5, run.seed);
    Interval wide = report.coverageRange(0.9, run.seed);
    return String.format(
        Locale.ROOT,
        "%d %s: the 50 %% band held %s of the washes (%s to %s), the 90 %% band %s (%s to %s)."
            + " Score (CRPS of log counts, smaller is better): %.3f; no change %.3f;"
            + " exponential %.3f.",
        n,
        n == 1 ? "forecast" : "forecasts",
        Digits.percent(report.coverage(0.5)),
        Digits.percent(half.low()),
        Digits.percent(half.high()),
        Digits.percent(report.coverage(0.9)),
        Digits.percent(wide.low()),
        Digits.percent(wide.high()),
        report.crps(),
        report.crpsNoChange(),
        report.crpsExponential());
  }
}
