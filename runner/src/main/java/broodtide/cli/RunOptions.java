package broodtide.cli;

import broodtide.catalog.Referred;
import broodtide.files.Outputs;
import broodtide.fit.SeasonPosterior;
import broodtide.forms.Source;
import broodtide.measure.OutOfRange;
import broodtide.report.RunFacts;
import broodtide.study.Study;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** How to run and where results go; the same words in every command. */
final class RunOptions {
  /** Fewest simulated colonies. */
  static final int LEAST = 64;

  private static final int MOST = 262_144;

  @Spec(Spec.Target.MIXEE)
  private @Nullable CommandSpec mixedInto;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      description =
          "Folder for report, pictures, tables and results.json. Default:"
              + " broodtide-out/${COMMAND-NAME}.")
  @Nullable Path out;

  @Option(names = "--json", description = "Print the result as JSON instead of text.")
  boolean json;

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Seed of the random numbers. Default: ${DEFAULT-VALUE}.",
      defaultValue = "1")
  long seed = 1;

  @Option(
      names = "--colonies",
      paramLabel = "N",
      description = "Simulated colonies, 64 to 262144. Default: ${DEFAULT-VALUE}.",
      defaultValue = "4096")
  int colonies = 4096;

  @Option(names = "--threads", paramLabel = "N", description = "Threads. Default: all cores.")
  @Nullable Integer threads;

  @Option(
      names = "--png",
      description = "Write every picture as PNG too, not only compare, forecast and windows.")
  boolean png;

  @Option(names = "--quiet", description = "No progress and no list of files written.")
  boolean quiet;

  /** The command that these options were given to. */
  CommandSpec command() {
    return Objects.requireNonNull(mixedInto, "the options belong to a command");
  }

  /** The folder that results go to: one for each command, unless the user names it. */
  Path folder() {
    return out != null ? out : Path.of("broodtide-out", command().name());
  }

  /**
   * Opens that folder.
   *
   * @param cases what the run works on
   * @param names files that it may write
   * @throws broodtide.files.OutputRefused when one of them would replace something that it must not
   */
  Outputs outputs(CaseReader.Cases cases, List<String> names) {
    List<Path> inputs = new ArrayList<>(named(command()));
    inputs.addAll(read(cases));
    return Outputs.into(folder(), command().name(), inputs, names);
  }

  /** The table of washes that a study names, if it is a file. */
  static List<Path> read(CaseReader.Cases cases) {
    return cases.study().flatMap(Study::washes).map(Referred::value).orElse(null)
            instanceof Source.OnDisk washes
        ? List.of(washes.path())
        : List.of();
  }

  /** Every file that an option or a parameter of a command names. */
  static List<Path> named(CommandSpec command) {
    List<Path> files = new ArrayList<>();
    for (ArgSpec arg : command.commandLine().getParseResult().matchedArgs()) {
      for (String value : arg.originalStringValues()) {
        try {
          Path path = Path.of(value);
          if (Files.isRegularFile(path)) {
            files.add(path);
          }
        } catch (InvalidPathException e) {
          // It is some other word, then.
        }
      }
    }
    return files;
  }

  /**
   * How the run was made, for its report.
   *
   * @param tool the command's name
   */
  RunFacts facts(String tool) {
    return new RunFacts(
        tool, Version.number(), seed, effort().particles(), CommandWords.of(command()));
  }

  SeasonPosterior.SamplerSettings effort() {
    OutOfRange.check("--colonies", colonies, LEAST, MOST, "colonies");
    return new SeasonPosterior.SamplerSettings(colonies, 3, seed);
  }
}
