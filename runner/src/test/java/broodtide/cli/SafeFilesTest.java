package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.catalog.Shelf;
import broodtide.forms.Source;
import broodtide.terminal.Terminal;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Inputs are kept, and exit code 2 means that nothing was written, in every command that writes.
 */
@Tag("slow")
class SafeFilesTest {
  private static final String WASHES =
      "date,colony,mites,bees\n2026-05-20,Meadow,2,295\n2026-06-21,Meadow,6,300\n";

  @TempDir Path dir;
  private Path washes;

  @BeforeEach
  void washes() throws IOException {
    washes = Files.writeString(dir.resolve("washes.csv"), WASHES);
  }

  private static String[] call(String command, Path washes, Path out) {
    String more =
        switch (command) {
          case "worked" -> " --treated 2026-06-01 --with formic-strips";
          case "rules" -> " --with thymol";
          default -> "";
        };
    return (command + " " + washes + " --climate temperate --colonies 64 --out " + out + more)
        .split(" ");
  }

  private static Bench.Outcome forecast(Path washes, Path out) {
    return Bench.run(call("forecast", washes, out));
  }

  private List<String> names(Path folder) throws IOException {
    try (Stream<Path> list = Files.list(folder)) {
      return list.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }

  @ParameterizedTest
  @CsvSource({
    "forecast, season.csv",
    "forecast, plans.csv",
    "compare, report.html",
    "compare, windows.svg",
    "compare, compare.png",
    "compare, posterior.svg",
    "forecast, sensitivity.svg",
    "windows, windows.svg",
    "worth, worth.svg",
    "rules, rules.svg",
    "worked, results.json",
    "backtest, results.json",
    "backtest, backtest.svg",
    "backtest, broodtide-files.json"
  })
  void anInputIsNeverReplaced(String command, String name) throws IOException {
    Path out = Files.createDirectory(dir.resolve("out"));
    Path input = Files.writeString(out.resolve(name), WASHES);
    Bench.Outcome r = Bench.run(call(command, input, out));
    assertThat(r.code()).as(r.out()).isEqualTo(2);
    assertThat(r.err()).contains(name, "is read by this run", "--out").hasLineCount(1);
    assertThat(r.out()).as("before any work").isEmpty();
    assertThat(input).hasContent(WASHES);
    assertThat(names(out)).containsExactly(name);
  }

  @Test
  void nobodysPictureIsReplaced() throws IOException {
    Path out = Files.createDirectory(dir.resolve("out"));
    Files.writeString(out.resolve("forecast.svg"), "mine");
    Bench.Outcome r = forecast(washes, out);
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).contains("forecast.svg", "was not written by this program", "--out");
    assertThat(names(out)).containsExactly("forecast.svg");
  }

  @Test
  void editedResultsAreKept() throws IOException {
    Path out = dir.resolve("out");
    assertThat(forecast(washes, out).code()).isZero();
    Files.writeString(out.resolve("plans.csv"), "my notes");
    Bench.Outcome r = forecast(washes, out);
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).contains("plans.csv", "was changed since this program wrote it");
    assertThat(out.resolve("plans.csv")).hasContent("my notes");
  }

  @Test
  void picturesOfAnEarlierRunGo() throws IOException {
    Path out = dir.resolve("out");
    Path two = Files.writeString(dir.resolve("two.csv"), WASHES + "2026-06-21,Brook,1,300\n");
    assertThat(forecast(two, out).code()).isZero();
    assertThat(names(out)).contains("forecast-brook.svg", "forecast-meadow.svg");
    assertThat(forecast(washes, out).code()).isZero();
    assertThat(names(out))
        .contains("forecast.svg", "broodtide-files.json")
        .doesNotContain("forecast-brook.svg", "forecast-meadow.svg");
  }

  @Test
  void aStudyToBeginWithIsTheUsers() throws IOException {
    Path study = dir.resolve("study");
    assertThat(Bench.run("study", "new", study.toString()).code()).isZero();
    byte[] before = Files.readAllBytes(study.resolve("study.json"));
    Bench.Outcome r =
        Bench.run(
            "forecast",
            "--study",
            study.resolve("study.json").toString(),
            "--colonies",
            "64",
            "--out",
            study.toString());
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(names(study)).contains("study.json", "washes.csv", "report.html");
    assertThat(study.resolve("study.json")).hasBinaryContent(before);
    assertThat(Bench.run("study", "new", study.toString()).code()).isEqualTo(2);
  }

  /** A terminal or disk that takes nothing, for these reasons. */
  private static Bench.Outcome lost(String why, String... args) {
    StringWriter err = new StringWriter();
    OutputStream full =
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException(why);
          }
        };
    CommandContext desk =
        new CommandContext(
            InputStream.nullInputStream(),
            new AnswerWriter(full),
            new PrintWriter(err),
            new Terminal(80, false, true),
            false,
            Clock.fixed(Instant.parse("2026-12-31T12:00:00Z"), ZoneOffset.UTC));
    return new Bench.Outcome(Main.run(desk, args), "", err.toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"forecast", "compare", "windows", "worth", "rules", "worked", "backtest"})
  void anAnswerThatIsLostLeavesNoFiles(String command) {
    Path out = dir.resolve("out");
    Bench.Outcome r = lost("No space left on device", call(command, washes, out));
    assertThat(r.code()).as(r.err()).isEqualTo(2);
    assertThat(r.err()).contains("cannot write to standard output: No space left on device");
    assertThat(out).doesNotExist();
  }

  @Test
  void aStudyThatCannotBeToldOfIsNotWritten() {
    Path out = dir.resolve("out");
    assertThat(lost("No space left on device", "study", "new", out.toString()).code()).isEqualTo(2);
    assertThat(out).doesNotExist();
  }

  @Test
  void aReaderWhoHasReadEnoughLosesNoFiles() {
    Path out = dir.resolve("out");
    assertThat(lost("Broken pipe", call("forecast", washes, out)).code()).isZero();
    assertThat(out.resolve("report.html")).exists();
  }

  @ParameterizedTest
  @ValueSource(strings = {"No space left on device", "Broken pipe"})
  @Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
  void aClassPageWhoseAddressIsLostIsNotServed(String why) {
    Bench.Outcome r = lost(why, "class");
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).contains("standard output").doesNotContain("Exception");
  }

  @Test
  void aFileThatMayNotBeReadIsSaidInWords() {
    String said =
        UserFile.cannotRead("washes.csv", new AccessDeniedException("washes.csv")).getMessage();
    assertThat(said)
        .isEqualTo(
            "washes.csv: may not be read; let its owner allow it, or copy it to a folder of yours");
  }

  /** A second program, for a pipe or a closed input is the system's. */
  private static Bench.Outcome shell(String script, String... args) throws Exception {
    Assumptions.assumeTrue(Files.isExecutable(Path.of("/bin/bash")));
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    String program =
        "broodtide() { exec '"
            + java
            + "' -XX:TieredStopAtLevel=1 -cp '"
            + System.getProperty("java.class.path")
            + "' broodtide.cli.Main \"$@\"; }\n";
    Process process =
        new ProcessBuilder(
                Stream.concat(
                        Stream.of("/bin/bash", "-c", program + script, "bash"), Stream.of(args))
                    .toList())
            .redirectErrorStream(true)
            .start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).isTrue();
    return new Bench.Outcome(process.exitValue(), said, said);
  }

  @Test
  void closedStandardInputIsSaid() throws Exception {
    Bench.Outcome r = shell("broodtide forecast - --climate temperate <&-");
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).contains("standard input", "closed").hasLineCount(1);
  }

  @Test
  void aPipeIsAsGoodAsAFile() throws Exception {
    Path climate =
        Files.writeString(dir.resolve("climate.json"), shelf(Catalog.CLIMATES, "temperate"));
    Bench.Outcome r =
        shell(
            "broodtide forecast <(cat \"$1\") --climate <(cat \"$2\") --colonies 64 --out \"$3\"",
            washes.toString(),
            climate.toString(),
            dir.resolve("out").toString());
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(dir.resolve("out/report.html")).exists();
  }

  @Test
  void aStudyComesThroughAPipe() throws Exception {
    Path study = dir.resolve("study");
    assertThat(Bench.run("study", "new", study.toString()).code()).isZero();
    Bench.Outcome r =
        shell("cd \"$1\" && broodtide study check <(cat study.json)", study.toString());
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(r.out()).contains("is valid").contains("4 washes");
  }

  private static String shelf(Shelf<?> shelf, String name) {
    Source source = shelf.find(name);
    return source.text();
  }
}
