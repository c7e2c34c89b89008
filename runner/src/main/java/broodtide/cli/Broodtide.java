package broodtide.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The program. */
@Command(
    name = "broodtide",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    header = "what your mite washes mean, and what each plan would do.",
    description = {
      "From your mite washes: how many mites the colony has, what happens by autumn if you wait,"
          + " and what each plan would do.",
      "",
      "Results are estimates, never instructions to treat: the registered label, local law and your"
          + " bee inspector or veterinarian decide.",
      "",
      "'broodtide COMMAND --help' explains a command; 'broodtide demo' shows it all at once."
    },
    footer = {
      "  broodtide compare washes.csv --climate cool-maritime",
      "  broodtide wash 7 --bees 300 --date 2026-08-20 --climate temperate"
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
      OpenCommand.class,
      ClassCommand.class,
      AboutCommand.class,
      CompletionCommand.class
    })
final class Broodtide implements Runnable {
  @Spec private CommandSpec spec;

  /** For whoever mends the program; users are told of it when there is something to trace. */
  @Option(names = "--trace", hidden = true, scope = CommandLine.ScopeType.INHERIT)
  boolean trace;

  @Override
  public void run() {
    throw new Misuse.CommandMissing(spec.commandLine(), "Give a command.");
  }
}
