package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Nothing that a user can read holds a turn of {@code banned-turns.txt}: not the strings of the
 * sources, of which screens, helps, faults, reports and tables are made, not the resources, schemas
 * and pages, not the library, not the README and the page of the library.
 */
class BannedTurnsTest {
  private static final List<String> MODULES = List.of("model", "scenarios", "runner");

  private static final Pattern COMMENT =
      Pattern.compile("/\\*.*?\\*/|^\\s*//.*?$", Pattern.DOTALL | Pattern.MULTILINE);

  /** A string, or several that stand beside each other with nothing but a plus between. */
  private static final Pattern STRINGS =
      Pattern.compile(
          "\"\"\".*?\"\"\"|\"(?:[^\"\\\\\\n"
              + "]|\\\\.)*+\"(?:\\s*+\\+\\s*+\"(?:[^\"\\\\\\n"
              + "]|\\\\.)*+\")*+",
          Pattern.DOTALL);

  private static final Pattern JOIN = Pattern.compile("\"\\s*\\+\\s*\"");

  private static final Pattern BLANKS = Pattern.compile("\\s+");

  /** What the code writes into a page is judged where it is printed. */
  private static final Pattern WRITTEN =
      Pattern.compile("<!-- written: .*?<!-- end: ", Pattern.DOTALL);

  private static final Pattern MARKUP =
      Pattern.compile("<style.*?</style>|<[^>]*>", Pattern.DOTALL);

  private static final String WASHES =
      """
      date,colony,mites,bees
      2025-06-10,Left,1,310
      2025-07-08,Left,6,295
      2025-08-09,Left,14,300
      """;

  @TempDir private Path folder;

  private record Turn(Pattern pattern, String instead) {}

  private static List<Turn> turns() throws IOException {
    List<Turn> out = new ArrayList<>();
    for (String line : Files.readAllLines(Path.of("src/test/resources/banned-turns.txt"))) {
      if (!line.isBlank() && !line.startsWith("#")) {
        int end = line.lastIndexOf(" | ");
        out.add(
            new Turn(
                Pattern.compile(line.substring(0, end), Pattern.CASE_INSENSITIVE),
                line.substring(end + 3)));
      }
    }
    return out;
  }

  private static List<String> found(List<Turn> turns, Path file, String text) {
    List<String> out = new ArrayList<>();
    String words = BLANKS.matcher(text).replaceAll(" ");
    for (Turn turn : turns) {
      Matcher m = turn.pattern().matcher(words);
      while (m.find()) {
        out.add(
            file.normalize()
                + ": \""
                + words.substring(
                    Math.max(0, m.start() - 40), Math.min(words.length(), m.end() + 40))
                + "\"; write: "
                + turn.instead());
      }
    }
    return out;
  }

  /** The strings of a source, each on a line of its own. */
  static String strings(String source) {
    StringBuilder out = new StringBuilder();
    Matcher m = STRINGS.matcher(COMMENT.matcher(source).replaceAll(""));
    while (m.find()) {
      out.append(JOIN.matcher(m.group()).replaceAll("")).append('\n');
    }
    return out.toString();
  }

  /** A page without what the code writes into it. */
  static String withoutWritten(String page) {
    return WRITTEN.matcher(page).replaceAll("");
  }

  private static List<Path> files(Path folder, String ends) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile)
          .filter(file -> file.toString().matches(ends))
          .sorted()
          .toList();
    }
  }

  @Test
  void noStringOfTheSourcesHoldsOne() throws IOException {
    List<Turn> turns = turns();
    List<String> out = new ArrayList<>();
    int seen = 0;
    for (String module : MODULES) {
      for (Path file : files(Path.of("..", module, "src/main/java"), ".*\\.java")) {
        seen++;
        out.addAll(found(turns, file, strings(Files.readString(file))));
      }
    }
    assertThat(seen).isGreaterThan(300);
    assertThat(out).isEmpty();
  }

  @Test
  void noFileThatIsShownHoldsOne() throws IOException {
    List<Turn> turns = turns();
    List<Path> shown = new ArrayList<>();
    String text = ".*\\.(json|txt|html|js|csv|md)";
    for (String module : MODULES) {
      shown.addAll(files(Path.of("..", module, "src/main/resources"), text));
    }
    shown.addAll(files(Path.of("../scenarios/library"), text));
    shown.add(Path.of("../README.md"));
    shown.add(Path.of("TEACHING.md"));
    shown.add(Path.of("../model/LIBRARY.md"));
    assertThat(shown).hasSizeGreaterThan(50);
    List<String> out = new ArrayList<>();
    for (Path file : shown) {
      out.addAll(found(turns, file, withoutWritten(Files.readString(file))));
    }
    assertThat(out).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "wash 1 --bees 300 --date 2025-08-20 --climate temperate --hives 12",
        "growth - --climate temperate",
        "forecast - --climate temperate --colonies 64 --quiet --out OUT",
        "compare - --climate temperate --colonies 64 --quiet --out OUT",
        "windows - --climate temperate --colonies 64 --quiet --out OUT",
        "rules - --climate temperate --colonies 64 --quiet --out OUT",
        "worth - --climate temperate --colonies 64 --quiet --out OUT",
        "worked - --climate temperate --colonies 64 --quiet --out OUT --treated 2025-07-10"
            + " --with formic-strips",
        "backtest - --climate temperate --colonies 64 --quiet --out OUT",
        "--help",
        "compare --help",
        "rules --help",
        "windows --help"
      })
  void noAnswerHoldsOne(String call) throws IOException {
    Trial trial = Trial.run(WASHES, call.replace("OUT", folder.toString()).split(" "));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    List<Turn> turns = turns();
    List<String> out = new ArrayList<>(found(turns, Path.of(call), trial.out() + trial.err()));
    for (Path file : files(folder, ".*\\.(html|svg|csv)")) {
      out.addAll(found(turns, file, MARKUP.matcher(Files.readString(file)).replaceAll(" ")));
    }
    assertThat(out).isEmpty();
    List<String> wordy = new ArrayList<>(LongSentences.ofTerminal(trial.out() + trial.err()));
    for (Path file : files(folder, ".*\\.(html|svg)")) {
      wordy.addAll(LongSentences.ofPage(Files.readString(file)));
    }
    assertThat(wordy).isEmpty();
  }

  @Test
  void aTurnIsFoundAcrossLinesAndStrings() throws IOException {
    String source = "say(\"in about 1 in 4 \"\n    + \"seasons like yours\"); // honest odds";
    assertThat(found(turns(), Path.of("A.java"), strings(source))).hasSize(1);
    assertThat(found(turns(), Path.of("a.txt"), "only 1\nmites, honest\n odds")).hasSize(2);
    assertThat(found(turns(), Path.of("b.txt"), "21 mites, 0.1 mites, 1 mite")).isEmpty();
  }
}
