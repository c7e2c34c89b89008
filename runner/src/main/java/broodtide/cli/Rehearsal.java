package broodtide.cli;

import java.io.PrintWriter;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Plays every kind of command once, small and without saying anything, while the JVM notes which
 * classes it takes. The launcher lays those out for it.
 */
final class Rehearsal {
  private static final String PLACE = "--climate=cool-maritime";
  private static final List<List<String>> CALLS =
      List.of(
          List.of("--help"),
          List.of("wash", "7", "--bees=300", "--date=2025-07-20", PLACE),
          List.of("growth", "STUDY", PLACE),
          List.of("compare", "STUDY", PLACE),
          List.of("windows", "STUDY", PLACE),
          List.of("rules", "STUDY", PLACE),
          List.of("worth", "STUDY", PLACE),
          List.of("worked", "STUDY", "--treated=2025-06-30", "--with=formic-strips", PLACE),
          List.of("backtest", "STUDY", PLACE));
  private static final List<String> WITHOUT_COLONIES = List.of("--help", "wash", "growth");

  private Rehearsal() {}

  /**
   * Plays the commands.
   *
   * @param args a table of counts of one hive, and a folder that it may fill
   */
  public static void main(String[] args) {
    System.exit(play(Path.of(args[0]), Path.of(args[1])));
  }

  /** Plays the commands; the exit code of the first that fails, or {@link Main#OK}. */
  static int play(Path study, Path folder) {
    return CALLS.stream()
        .mapToInt(call -> run(study, folder, call))
        .filter(code -> code != Main.OK)
        .findFirst()
        .orElse(Main.OK);
  }

  private static int run(Path study, Path folder, List<String> call) {
    PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
    PrintWriter err = new PrintWriter(System.err, true);
    String[] words =
        Stream.concat(
                call.stream().map(word -> word.equals("STUDY") ? study.toString() : word),
                options(call, folder))
            .toArray(String[]::new);
    return Main.run(CommandContext.here(nowhere, err), words);
  }

  private static Stream<String> options(List<String> call, Path folder) {
    if (WITHOUT_COLONIES.contains(call.get(0))) {
      return Stream.empty();
    }
    Stream<String> few = Stream.of("--colonies=64");
    return call.contains("STUDY")
        ? Stream.concat(few, Stream.of("--out=" + folder.resolve(call.get(0))))
        : few;
  }
}
