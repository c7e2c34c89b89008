package broodtide.cli;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
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
    })
final class Broodtide implements Runnable {
  private static final List<Class<?>> COMMANDS =
      List.of(
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
          CompletionCommand.class);

  @Spec private CommandSpec spec;

  /** For whoever mends the program; users are told of it when there is something to trace. */
  @Option(names = "--trace", hidden = true, scope = CommandLine.ScopeType.INHERIT)
  boolean trace;

  /** The line with every command whole, for what goes through all of them. */
  static CommandLine line(CommandContext desk) {
    return line(desk, new Broodtide(), c -> true);
  }

  /**
   * The line for one call. Reading what a command takes costs more than many a command's work, so
   * only those that are named are read; of the others, name and header stand in the list.
   *
   * @param desk where commands read and write
   * @param program the program's own options
   * @param args the words of the call
   */
  static CommandLine line(CommandContext desk, Broodtide program, String... args) {
    Set<String> given = Set.of(Stream.of(args).distinct().toArray(String[]::new));
    // The script for completion goes through all commands; a file of arguments may name any.
    boolean any =
        given.contains(name(CompletionCommand.class))
            || given.stream().anyMatch(word -> word.startsWith("@"));
    return line(desk, program, c -> any || given.contains(name(c)));
  }

  private static CommandLine line(
      CommandContext desk, Broodtide program, Predicate<Class<?>> whole) {
    CommandFactory factory = new CommandFactory(desk);
    CommandLine line = new CommandLine(program, factory);
    for (Class<?> type : COMMANDS) {
      line.addSubcommand(
          name(type), whole.test(type) ? new CommandLine(type, factory) : listed(type));
    }
    return line;
  }

  private static CommandSpec listed(Class<?> type) {
    CommandSpec spec = CommandSpec.create().name(name(type));
    spec.usageMessage().header(command(type).header());
    return spec;
  }

  private static String name(Class<?> type) {
    return command(type).name();
  }

  private static Command command(Class<?> type) {
    return Objects.requireNonNull(type.getAnnotation(Command.class));
  }

  @Override
  public void run() {
    throw new Misuse.CommandMissing(spec.commandLine(), "Give a command.");
  }
}
