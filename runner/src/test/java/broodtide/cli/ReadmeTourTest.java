package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.pages.WrittenPart;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The README's console examples are what the program prints. A part of the README that is named
 * after a command holds that command and its output.
 */
@Tag("pages")
class ReadmeTourTest {
  private static final Path README = Path.of("../README.md");
  private static final Pattern PART = Pattern.compile("<!-- written: (broodtide [^>]*) -->");

  /** The default folder of results, and one as long, so that lines break alike. */
  private static final String FOLDER = "broodtide-out/compare";

  private static final String OWN_FOLDER = "target/readme/compare";

  static List<String> commands() throws IOException {
    return PART.matcher(Files.readString(README)).results().map(m -> m.group(1)).toList();
  }

  @Test
  void theReadmeShowsCommands() throws IOException {
    assertThat(commands()).hasSizeGreaterThan(1);
    assertThat(OWN_FOLDER).hasSameSizeAs(FOLDER);
  }

  @ParameterizedTest
  @MethodSource("commands")
  void printsWhatTheReadmeShows(String command) {
    Bench.Outcome run = Bench.run(arguments(command));
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    String out = run.out().replace(OWN_FOLDER, FOLDER).replace("../scenarios/", "scenarios/");
    String shown = out.lines().map(String::stripTrailing).collect(Collectors.joining("\n"));
    new WrittenPart(README, command).holds("```\n$ " + command + "\n" + shown.strip() + "\n```");
  }

  /** The columns that must be there, of the file that the tour goes by. */
  @Test
  void theTableOfWashesIsTheOneOfTheTour() throws IOException {
    String table =
        Files.readAllLines(Path.of("../scenarios/library/studies/larkmeadow.csv")).stream()
            .filter(line -> !line.startsWith("#"))
            .map(line -> Arrays.stream(line.split(",")).limit(4).collect(Collectors.joining(",")))
            .collect(Collectors.joining("\n"));
    new WrittenPart(README, "larkmeadow.csv").holds("```\n" + table + "\n```");
  }

  /** Pictures hang on the fonts of the machine, so they are drawn anew and never compared. */
  @ParameterizedTest
  @ValueSource(strings = {"compare", "windows"})
  void picturesAreDrawnWithTheRest(String what) throws IOException {
    Assumptions.assumeTrue(WrittenPart.writing(), "drawn when pages are rewritten");
    Bench.run(
        arguments(
            "broodtide "
                + what
                + " scenarios/library/studies/larkmeadow.csv --climate cool-maritime"));
    Files.copy(
        Path.of(OWN_FOLDER, what + ".png"),
        Path.of("pictures", what + ".png"),
        StandardCopyOption.REPLACE_EXISTING);
  }

  private static String[] arguments(String command) {
    List<String> args =
        new ArrayList<>(
            Arrays.stream(command.split(" "))
                .skip(1)
                .map(a -> a.startsWith("scenarios/") ? "../" + a : a)
                .toList());
    if (!List.of("wash", "growth").contains(args.get(0))) {
      args.addAll(List.of("--out", OWN_FOLDER));
    }
    return args.toArray(String[]::new);
  }
}
