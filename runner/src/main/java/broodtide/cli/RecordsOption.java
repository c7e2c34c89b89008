package broodtide.cli;

import broodtide.assessment.ColonyCase;
import broodtide.decision.MemoryNeed;
import broodtide.engine.Workers;
import broodtide.fit.Backtest;
import broodtide.fit.GrowthBias;
import broodtide.words.BiasWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Whether an answer takes in how forecasts ran on the beekeeper's own records. */
final class RecordsOption {
  @Option(
      names = "--records",
      description =
          "Also forecast the last wash of each colony that is read from those before it, as"
              + " 'backtest' does. The answer says whether such forecasts ran too high or too low,"
              + " and takes it into account. Takes about as long again.")
  boolean records;

  /**
   * What the records say.
   *
   * @param cases the cases, with growth to come as the records have it
   * @param said what is to be said of them; empty where it was not asked for
   */
  record Learned(CaseReader.Cases cases, Optional<String> said) {}

  /** The cases as the records have them; as they are where that was not asked for. */
  Learned learned(CommandContext desk, RunOptions run, CaseReader.Cases cases) {
    if (!records) {
      return new Learned(cases, Optional.empty());
    }
    Backtest.Report report = report(desk, run, cases.cases());
    GrowthBias bias = GrowthBias.of(report);
    List<ColonyCase> moved =
        cases.cases().stream().map(c -> c.with(c.priors().with(bias))).toList();
    return new Learned(
        new CaseReader.Cases(moved, cases.study(), cases.notes()),
        Optional.of(BiasWords.besideAnswer(report)));
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
