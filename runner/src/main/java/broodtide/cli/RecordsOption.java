package broodtide.cli;

import broodtide.assessment.ColonyCase;
import broodtide.decision.MemoryNeed;
import broodtide.engine.Workers;
import broodtide.fit.Backtest;
import broodtide.words.BiasWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Whether an answer says how forecasts ran on the beekeeper's own records. */
final class RecordsOption {
  @Option(
      names = "--records",
      description =
          "Also forecast each colony's last wash from those before it, as 'backtest' does, and say"
              + " whether forecasts ran too high or too low. Takes about as long again.")
  boolean records;

  /** What is to be said; empty where it was not asked for. */
  Optional<String> said(CommandContext desk, RunOptions run, CaseReader.Cases cases) {
    return records
        ? Optional.of(BiasWords.besideAnswer(report(desk, run, cases.cases())))
        : Optional.empty();
  }

  /** Forecasts of the last wash of each colony. */
  static Backtest.Report report(CommandContext desk, RunOptions run, List<ColonyCase> cases) {
    MemoryCheck.check(
        cases,
        run.effort().particles(),
        c -> MemoryNeed.ofBacktest(c, cases.size()),
        "leave out the oldest washes");
    List<Backtest.Colony> records = new ArrayList<>();
    for (ColonyCase c : cases) {
      records.add(new Backtest.Colony(c.colony(), c.start(), c.washes(), c.given()));
    }
    try (Workers workers = run.threads == null ? Workers.all() : new Workers(run.threads);
        ProgressLine line = new ProgressLine(desk, run, "forecasting held-out washes")) {
      return Backtest.run(
          cases.get(0).model(), records, cases.get(0).priors(), run.effort(), workers, line);
    }
  }
}
