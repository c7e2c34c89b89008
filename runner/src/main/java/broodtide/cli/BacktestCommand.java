package broodtide.cli;

import broodtide.compare.ColonyCase;
import broodtide.engine.Workers;
import broodtide.fit.Backtest;
import broodtide.fit.Priors;
import broodtide.report.Digits;
import broodtide.report.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** How good would the forecasts have been? */
@Command(
    name = "backtest",
    mixinStandardHelpOptions = true,
    description = {
      "Holds out each colony's last wash, forecasts it from the others, and marks the forecasts.",
      "",
      "Example:",
      "  broodtide backtest washes.csv --climate warm-temperate",
      ""
    })
final class BacktestCommand implements Callable<Integer> {
  private final Desk desk;
  @Mixin private ColonyOptions colony = new ColonyOptions();
  @Mixin private RunOptions run = new RunOptions();

  BacktestCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    CaseReader.Cases cases = new CaseReader(desk, colony).read(CaseReader.Horizon::winterBees);
    List<Backtest.Colony> records = new ArrayList<>();
    for (ColonyCase c : cases.cases()) {
      records.add(new Backtest.Colony(c.colony(), c.washes(), c.given()));
    }
    Backtest.Report report;
    try (Workers workers = run.threads == null ? Workers.all() : new Workers(run.threads);
        ProgressLine line = new ProgressLine(desk, run, "forecasting held-out washes")) {
      report =
          Backtest.run(
              cases.cases().get(0).model(),
              records,
              Priors.defaults(),
              run.effort(),
              workers,
              line);
    }
    if (report.marks().isEmpty()) {
      throw new Refusal("no colony has two washes or more, so none can be held out");
    }
    Table table =
        Table.of(
            Table.Column.words("Colony"),
            Table.Column.words("held-out wash"),
            Table.Column.numbers("mites"),
            Table.Column.numbers("forecast"),
            Table.Column.numbers("9 in 10"));
    for (Backtest.Mark m : report.marks()) {
      table =
          table.row(
              m.held().colony(),
              m.held().date().toString(),
              Integer.toString(m.held().mites()),
              Integer.toString(m.forecast().quantile(0.5)),
              m.forecast().quantile(0.05) + " to " + m.forecast().quantile(0.95));
    }
    desk.out().println(desk.terminal().table(table).stripTrailing());
    desk.out().println();
    desk.out()
        .println(
            desk.terminal()
                .wrap(
                    String.format(
                        Locale.ROOT,
                        "%d forecasts: the 50 %% band held %s of the washes, the 90 %% band %s."
                            + " Score (CRPS of log counts, smaller is better): %.3f; no change"
                            + " %.3f; exponential %.3f.",
                        report.marks().size(),
                        Digits.percent(report.coverage(0.5)),
                        Digits.percent(report.coverage(0.9)),
                        report.crps(),
                        report.crpsNoChange(),
                        report.crpsExponential())));
    desk.out().flush();
    return Main.OK;
  }
}
