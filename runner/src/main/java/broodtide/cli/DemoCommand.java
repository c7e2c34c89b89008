package broodtide.cli;

import broodtide.assessment.Horizon;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** The whole story on invented data. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    header = "The whole story on invented data.",
    description = {
      "The whole story on invented data: what four washes of one colony say, and five"
          + " plans for its autumn."
    },
    footer = {"  broodtide demo"})
final class DemoCommand implements Callable<Integer> {
  private static final String STUDY = "larkmeadow";

  private final CommandContext desk;
  @Mixin private RunOptions run = new RunOptions();

  DemoCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    ColonyOptions options = new ColonyOptions();
    options.study = Path.of(STUDY);
    CaseReader.Cases cases = new CaseReader(desk, options).read(Horizon::spring);
    return new PlanCommandRun(desk, run, "demo")
        .opening(
            "An invented hobby apiary. It is late July, the honey is nearly ripe, and the last wash"
                + " of one colony found 4 mites, fewer than the treatment threshold. What now?")
        .play(cases, c -> cases.study().orElseThrow().plans());
  }
}
