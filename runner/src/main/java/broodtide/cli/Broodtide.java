package broodtide.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program. */
@Command(
    name = "broodtide",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    synopsisSubcommandLabel = "COMMAND",
    description = {
      "From your mite washes: where the colony stands, what happens by autumn if you wait, and the"
          + " plans side by side.",
      "",
      "Results are estimates, never instructions to treat: the registered label, local law and your"
          + " bee inspector or veterinarian decide.",
      ""
    },
    commandListHeading = "%nCommands:%n",
    footer = {
      "",
      "Example:",
      "  broodtide compare washes.csv --climate cool-maritime",
      "'broodtide COMMAND --help' explains a command."
    },
    subcommands = {
      WashCommand.class,
      GrowthCommand.class,
      ForecastCommand.class,
      CompareCommand.class,
      WindowsCommand.class,
      RulesCommand.class,
      WorthCommand.class,
      WorkedCommand.class,
      BacktestCommand.class,
      StudyCommand.class,
      DemoCommand.class,
      ClassCommand.class
    })
final class Broodtide implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Say what to do: give a command.");
  }
}
