package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.results.ResultsFile;
import broodtide.terminal.Terminal;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The four decision commands from their words to their files. */
class DecisionCommandsTest {
  private static final String WASHES =
      """
      date,colony,mites,bees
      2026-06-10,Left,5,310
      2026-07-08,Left,14,295
      2026-08-09,Left,27,300
      2026-09-05,Left,6,310
      2026-08-08,Right,20,300
      2026-09-05,Right,31,310
      """;

  @TempDir private Path folder;
  private Path washes = Path.of("");
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @BeforeEach
  void write() throws IOException {
    washes = folder.resolve("washes.csv");
    Files.writeString(washes, WASHES);
  }

  private int run(String command, String... more) {
    List<String> args = new ArrayList<>(List.of(command, washes.toString()));
    args.addAll(List.of("--climate", "temperate", "--colonies", "64", "--quiet"));
    args.addAll(List.of("--out", folder.resolve("out").toString()));
    args.addAll(List.of(more));
    CommandContext desk =
        new CommandContext(
            new ByteArrayInputStream(new byte[0]),
            new PrintWriter(out),
            new PrintWriter(err),
            new Terminal(80, false, true),
            false,
            Clock.fixed(Instant.parse("2026-12-01T00:00:00Z"), ZoneOffset.UTC));
    return Main.run(desk, args.toArray(String[]::new));
  }

  @Test
  void windowsAnswersInOneSentenceAndDrawsAMap() {
    assertThat(run("windows", "--colony", "Left", "--controls", "thymol,formic-strips"))
        .as("%s", err)
        .isEqualTo(Main.OK);
    assertThat(out.toString())
        .startsWith("Colony Left\nBest single start: ")
        .containsPattern("\n(Lowest winter loss of the plans|Among the lowest in winter loss): ")
        .contains("\nHow sure: ")
        .contains("if you wait", "about as good", "Ruled out: thymol: too cold")
        .contains("Estimates, not instructions");
    assertThat(folder.resolve("out/windows.svg")).exists();
    assertThat(folder.resolve("out/windows.png")).exists();
  }

  @Test
  void rulesNamesWhatCannotRunAndGoesOn() {
    int code =
        run(
            "rules",
            "--colony",
            "Left",
            "--rule",
            "never",
            "--rule",
            "on 2024-05-05 with thymol",
            "--from",
            "2026-09-12",
            "--to",
            "2026-10-03",
            "--every",
            "21");
    assertThat(code).as("%s", err).isEqualTo(Main.OK);
    assertThat(out.toString()).contains("never", "2 washes").contains("Left out: rule \"on 2024");
  }

  /** Each picture is there as SVG and, when asked for, as PNG; no rule is among the rules. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "rules --rule 3_with_thymol",
        "worth --weeks 2,4",
        "worked --treated 2026-08-10 --with formic-strips",
        "backtest"
      })
  void everyAnswerHasAPicture(String command) throws IOException {
    List<String> words = Stream.of(command.split(" ")).map(w -> w.replace('_', ' ')).toList();
    List<String> more = new ArrayList<>(words.subList(1, words.size()));
    more.addAll(List.of("--colony", "Left"));
    String name = words.get(0);
    assertThat(run(name, more.toArray(String[]::new))).as("%s", err).isEqualTo(Main.OK);
    String svg = Files.readString(folder.resolve("out/" + name + ".svg"));
    assertThat(svg).startsWith("<svg").hasSizeLessThan(60_000);
    assertThat(svg.contains("A: never")).isEqualTo(name.equals("rules"));
    assertThat(folder.resolve("out/" + name + ".png")).doesNotExist();
    assertThat(Files.readString(folder.resolve("out/report.html")))
        .contains(svg)
        .contains("<code>broodtide " + name);
    more.add("--png");
    assertThat(run(name, more.toArray(String[]::new))).as("%s", err).isEqualTo(Main.OK);
    assertThat(folder.resolve("out/" + name + ".svg")).hasContent(svg);
    assertThat(folder.resolve("out/" + name + ".png")).exists();
  }

  /** What answers at once writes only where it is told to: a report with the picture in it. */
  @ParameterizedTest
  @ValueSource(
      strings = {"wash 7 --bees 300 --date 2026-08-24", "growth WASHES --treated 2026-08-12"})
  void whatAnswersAtOnceHasAPictureToo(String command) throws IOException {
    List<String> words =
        new ArrayList<>(List.of(command.replace("WASHES", washes.toString()).split(" ")));
    words.addAll(List.of("--climate", "temperate", "--png"));
    words.add("--out");
    words.add(folder.resolve("out").toString());
    Bench.Outcome r = Bench.run(words.toArray(String[]::new));
    assertThat(r.code()).as(r.err()).isEqualTo(Main.OK);
    String svg = Files.readString(folder.resolve("out/" + words.get(0) + ".svg"));
    assertThat(svg).startsWith("<svg").hasSizeLessThan(60_000);
    assertThat(folder.resolve("out/" + words.get(0) + ".png")).exists();
    assertThat(Files.readString(folder.resolve("out/report.html"))).contains(svg);
    assertThat(new ObjectMapper().readTree(folder.resolve("out/results.json").toFile()))
        .isNotEmpty();
  }

  /** Every hive stands in its own field; the doubling time is written on the line. */
  @Test
  void growthOfSeveralHivesIsOnePicture() throws IOException {
    Bench.Outcome r =
        Bench.run(
            "growth",
            washes.toString(),
            "--climate=temperate",
            "--treated=2026-08-12",
            "--out=" + folder.resolve("out"));
    assertThat(r.code()).as(r.err()).isEqualTo(Main.OK);
    assertThat(Files.readString(folder.resolve("out/growth.svg")))
        .contains(">Left<", ">Right<", ">treated<", "cannot tell yet")
        .containsPattern("doubles in \\d+ days<");
  }

  @Test
  void workedJudgesAgainstANeighbour() {
    int code =
        run("worked", "--treated", "2026-08-10", "--with", "formic-strips", "--neighbour", "Right");
    assertThat(code).as("%s", err).isEqualTo(Main.OK);
    assertThat(out.toString())
        .contains("Colony Left", "From the counts alone: 27 mites in 300 bees on 9 Aug")
        .contains("untreated neighbour Right", "By the wash of 5 September 2026")
        .doesNotContain("Colony Right");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "windows --controls thymol",
        "rules --rule never --from 2026-09-20",
        "worth --weeks 2",
        "worked --treated 2026-08-10 --with formic-strips",
        "backtest"
      })
  void everyCommandSpeaksJsonAlone(String command) throws IOException {
    String[] words = command.split(" ");
    List<String> more = new ArrayList<>(List.of(words).subList(1, words.length));
    more.addAll(List.of("--json", "--colony", "Left"));
    assertThat(run(words[0], more.toArray(String[]::new))).as("%s", err).isEqualTo(Main.OK);
    JsonNode json = new ObjectMapper().readTree(out.toString());
    assertThat(json.path("format").asText()).isEqualTo(ResultsFile.FORMAT);
    assertThat(json.path("tool").asText()).isEqualTo(words[0]);
    assertThat(json.path("colonies").get(0).path("colony").asText()).isEqualTo("Left");
    assertThat(Files.readString(folder.resolve("out/results.json"))).isEqualTo(out.toString());
  }

  /** A colony that cannot be judged is named; the others are judged all the same. */
  @Test
  void oneColonyThatCannotBeJudgedDoesNotStopTheRest() throws IOException {
    assertThat(run("worked", "--treated", "2026-07-10", "--with", "formic-strips"))
        .as("%s", err)
        .isEqualTo(Main.OK);
    assertThat(out.toString().replaceAll("\\s+", " "))
        .contains("Colony Left", "27 mites in 300 bees")
        .contains("Colony Right Left out: colony \"Right\"", "began before the record")
        .contains("Taken as given to every colony of the table: Left, Right; --colony names");
    JsonNode json = new ObjectMapper().readTree(folder.resolve("out/results.json").toFile());
    assertThat(json.path("colonies")).hasSize(1);
    assertThat(json.path("leftOut").get(0).path("colony").asText()).isEqualTo("Right");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "windows --outcome honey |expected one of infestation, winter-brood, lost",
        "windows --from 2026-01-01 | before the day of decision, 2026-09-06",
        "windows --controls thyme | did you mean \"thymol\"",
        "rules --rule sometimes | N with CONTROL",
        "rules --every 3 | 7 to 120",
        "rules --from 2026-09-01 --colony Left | must lie after 2026-09-06",
        "worth --weeks 0 | 1 to 52",
        "windows --study larkmeadow | --climate cannot stand beside --study",
        "worth --cost -1 | 0 to 100",
        "worked --treated 2026-08-10 --with drone-comb | not a miticide",
        "worked --treated 2026-08-10 --with thymol --neighbour Middle | Left, Right"
      })
  void wrongWordsAreRefusedWithWhatIsAllowed(String command, String message) {
    String[] words = command.strip().split(" ");
    List<String> more = List.of(words).subList(1, words.length);
    assertThat(run(words[0], more.toArray(String[]::new))).isEqualTo(Main.BAD_INPUT);
    assertThat(err.toString().strip()).contains(message.strip()).doesNotContain("Exception");
  }
}
