package broodtide.cli;

import broodtide.assessment.Horizon;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** What happens by a date if I wait? */
@Command(
    name = "forecast",
    mixinStandardHelpOptions = true,
    header = "What happens by a date if you wait.",
    description = {
      "What happens by a date if you wait: a short answer for each colony, with 90 %% intervals."
    },
    footer = {
      "  broodtide forecast washes.csv --climate cool-maritime --until 2027-10-01",
      "  cat washes.csv | broodtide forecast - --climate cool-maritime --json"
    })
final class ForecastCommand implements Callable<Integer> {
  private final CommandContext desk;
  @Mixin private ColonyOptions colony = new ColonyOptions();
  @Mixin private EachOption each = new EachOption();
  @Mixin private RecordsOption records = new RecordsOption();
  @Mixin private RunOptions run = new RunOptions();

  ForecastCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    CaseReader.Cases cases = new CaseReader(desk, colony).read(Horizon::winterBees);
    RecordsOption.Learned learned = records.learned(desk, run, cases);
    return new PlanCommandRun(desk, run, "forecast")
        .hives(each)
        .records(learned.said())
        .wait(learned.cases());
  }
}
