package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Bad input to any command: exit code 2, one clear message, nothing printed, nothing written. */
class BadInputTest {
  private static final String HEADER = "date,colony,mites,bees\n";
  private static final String SOUND =
      HEADER + "2025-04-18,Meadow,1,310\n2025-05-20,Meadow,2,295\n2025-06-21,Meadow,6,300\n";

  /** Every command that reads a table of washes, with what else it needs. */
  private static final List<String> READERS =
      List.of(
          "growth",
          "forecast",
          "compare",
          "windows",
          "rules",
          "worth",
          "worked --treated 2025-06-01 --with thymol",
          "backtest");

  @TempDir static Path folder;

  @BeforeAll
  static void files() throws IOException {
    put("sound.csv", SOUND);
    put("empty.csv", "");
    put("blank.csv", " \n\n \n");
    put("header.csv", HEADER);
    put("huge.csv", "x".repeat(3_000_000));
    put("longname.csv", HEADER + "2025-04-18," + "x".repeat(1_000_000) + ",1,300\n");
    put("nobees.csv", HEADER + "2025-04-18,A,0,0\n");
    put("negative.csv", HEADER + "2025-04-18,A,-1,300\n");
    put("many.csv", HEADER + "2025-04-18,A,301,300\n");
    put("future.csv", HEADER + "2027-01-01,A,1,300\n");
    put("old.csv", HEADER + "1800-04-18,A,1,300\n");
    put("noday.csv", HEADER + "2025-02-29,A,1,300\n");
    put("twice.csv", HEADER + "2025-04-18,A,1,300\n2025-04-18,A,1,300\n");
    put("wide.csv", HEADER + "2025-04-18,A,1,300,9\n");
    put("words.csv", HEADER + "2025-04-18,A,few,300\n");
    put("unclear.csv", HEADER + "04/05/2025,A,1,300\n");
    put("quote.csv", HEADER + "2025-04-18,\"A,1,300\n");
    put("noname.csv", HEADER + "2025-04-18,,1,300\n");
    put("half.json", "{\"title\": \"t\",");
    put("list.json", "[1, 2]");
    put("other.json", "{\"colour\": 1}");
    put("deep.json", "[".repeat(50_000));
    put("empty.json", "");
    byte[] noise = new byte[4000];
    new SplittableRandom(20_270_404).nextBytes(noise);
    Files.write(folder.resolve("noise.csv"), noise);
    Files.write(folder.resolve("noise.json"), noise);
    Files.createDirectory(folder.resolve("folder"));
    Files.createDirectory(folder.resolve("folder.json"));
  }

  private static void put(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
  }

  static Stream<String> readers() {
    return READERS.stream();
  }

  @ParameterizedTest
  @MethodSource("readers")
  void everyFaultyTableIsRefusedByEveryReader(String command) throws IOException {
    for (String file :
        List.of(
            "nowhere.csv",
            "folder",
            "empty.csv",
            "blank.csv",
            "header.csv",
            "huge.csv",
            "longname.csv",
            "noise.csv",
            "nobees.csv",
            "negative.csv",
            "many.csv",
            "future.csv",
            "old.csv",
            "noday.csv",
            "twice.csv",
            "wide.csv",
            "words.csv",
            "unclear.csv",
            "quote.csv",
            "noname.csv")) {
      assertThat(refused(command + " @" + file + " --climate temperate")).contains(file);
    }
    assertThat(refused(command + " ~ --climate temperate")).contains("is blank");
    assertThat(refused(command + " - --climate temperate")).contains("standard input", "is empty");
  }

  @ParameterizedTest
  @MethodSource("readers")
  void everyFaultyReferenceIsRefusedByEveryReader(String command) throws IOException {
    String call = command + " @sound.csv --climate ";
    assertThat(refused(command + " @sound.csv")).contains("--climate NAME");
    assertThat(refused(call + "temprate")).contains("did you mean \"temperate\"?");
    assertThat(refused(call + "~")).contains("known are");
    for (String file :
        List.of("nowhere.json", "folder.json", "half.json", "list.json", "other.json")) {
      refused(call + "@" + file);
      refused(call + "temperate --threshold @" + file);
      refused(command + " --study @" + file);
    }
    for (String file : List.of("deep.json", "noise.json", "empty.json")) {
      refused(call + "@" + file);
      refused(call + "temperate --threshold @" + file);
      refused(command + " --study @" + file);
    }
    assertThat(refused(call + "temperate --threshold kulhanek2021"))
        .contains("did you mean \"kulhanek-2021\"?");
    for (String file : List.of("nowhere.csv", "folder", "empty.csv", "noise.csv", "sound.csv")) {
      refused(call + "temperate --given @" + file);
    }
    assertThat(refused(call + "temperate --until 2025-06-21")).contains("a day after 2025-06-22");
    assertThat(refused(call + "temperate --until 1800-01-01")).contains("a day after");
    assertThat(refused(call + "temperate --until 2999-01-01")).contains("three years");
    assertThat(refused(call + "temperate --until 2025-02-30")).contains("2025-02-30");
    assertThat(refused(call + "temperate --colony Hill")).contains("Hill", "Meadow");
    assertThat(refused(call + "temperate --neighbours many")).contains("isolated");
    assertThat(refused(call + "temperate --supers 02-30..05-01")).contains("05-10..07-25");
    assertThat(refused(call + "temperate @sound.csv")).contains("sound.csv");
  }

  @ParameterizedTest
  @MethodSource("readers")
  void whatCannotBeRunLeavesNoFolder(String command) throws IOException {
    if (command.equals("growth")) {
      return; // takes no such options
    }
    String call = command + " @sound.csv --climate temperate ";
    for (String option :
        List.of("--threads 0", "--threads -1", "--threads 5000", "--colonies 1", "--seed x")) {
      refused(call + option + " --out @out/below");
    }
    refused(call + "--out ~");
    if (!command.equals("backtest")) { // writes no files
      assertThat(refused(call + "--out @sound.csv")).contains("in the way");
      refused(call + "--out @sound.csv/below");
    }
  }

  @ParameterizedTest
  @CsvSource({
    "wash -1 --bees 300 --date 2026-08-01, 0 to 300",
    "wash 301 --bees 300 --date 2026-08-01, 0 to 300",
    "wash 0 --bees 0 --date 2026-08-01, 1 to 10000",
    "wash 3 --bees 99999 --date 2026-08-01, 1 to 10000",
    "wash 321 --date 2026-08-01, 0 to 320",
    "wash 3 --date 1800-01-01, 1950-01-01 or later",
    "wash 3 --date 2027-01-01, today or earlier",
    "wash 3 --date 2026-02-29, 2026-02-29",
    "wash 3 --date 2026-08-01 --method shak, one of alcohol",
    "wash 3 --date 2026-08-01 --frame top, one of brood-centre",
    "wash 3 --date 2026-08-01 --hives 0, --hives",
    "wash 3 --date 2026-08-01 --threshold @half.json, ends too early",
    "wash 99999999999 --date 2026-08-01, 99999999999",
    "worked @sound.csv --treated 2024-05-01 --with thymol, before the record",
    "worked @sound.csv --treated 2025-06-21 --with thymol, no wash after",
    "worked @sound.csv --treated 2025-06-01 --with thymo, did you mean \"thymol\"?",
    "compare @sound.csv --with thymo, did you mean \"thymol\"?",
    "compare @sound.csv --plan thymol, on DATE with CONTROL",
    "compare @sound.csv --plan ~, on DATE with CONTROL",
    "rules @sound.csv --rule -2, N with CONTROL",
    "worth @sound.csv --bees 0, 50 to 1000",
    "worth @sound.csv --weeks -1, --weeks",
    "windows @sound.csv --controls thymo, did you mean \"thymol\"?",
    "windows @sound.csv --from 2030-01-01, 2030-01-01",
    "growth @sound.csv --treated soon, soon"
  })
  void singleValues(String call, String said) throws IOException {
    assertThat(refused(call + " --climate temperate")).contains(said);
  }

  @ParameterizedTest
  @CsvSource({
    "study check @nowhere.json, no such file",
    "study check @folder.json, folder",
    "study check @noise.json, UTF-8",
    "study check @half.json, ends too early",
    "study check @deep.json, 32 deep",
    "study check @empty.json, is empty",
    "study new ~, blank",
    "study new @sound.csv, in the way",
    "study new @sound.csv/below, sound.csv",
    "demo --out @sound.csv, in the way",
    "demo --threads 0, threads",
    "demo --colonies 1, 64 to 262144",
    "class --port 1, 1024 to 65535",
    "class --climate @half.json, ends too early",
    "wash, MITES",
    "study, new"
  })
  void otherCommands(String call, String said) throws IOException {
    assertThat(refused(call)).contains(said);
  }

  /** What would command a terminal is not passed on to it. */
  @Test
  void controlLettersStayOut() throws IOException {
    put("control.csv", HEADER + "2025-04-18,\"A\u001b]0;x\u0007\u009b2J\",1,300\n");
    for (String command : new String[] {"forecast", "growth"}) {
      assertThat(refused(command + " @control.csv --climate temperate"))
          .contains("line 2, column 2, colony: \"A ]0;x  2J\"", "U+001B (ESCAPE)")
          .doesNotContainPattern("[\\p{Cc}&&[^\\n]]");
    }
  }

  /** Runs a command, holds it to the rule, and gives its message. */
  private String refused(String call) throws IOException {
    List<String> before = all();
    Bench.Outcome r = Bench.run(args(call));
    assertThat(r.code()).as(call + ": " + r.err()).isEqualTo(Main.BAD_INPUT);
    assertThat(r.out()).as(call).isEmpty();
    assertThat(r.err()).as(call).isNotBlank().doesNotContain("Exception", "\tat ", "REDACTED");
    assertThat(r.err().length()).as(call).isLessThan(5000);
    assertThat(all()).as(call).isEqualTo(before);
    assertThat(Path.of("broodtide-out")).as(call).doesNotExist();
    return r.err();
  }

  /** {@code @} stands for the folder, {@code ~} for a blank. */
  private String[] args(String call) {
    return Arrays.stream(call.split(" "))
        .map(a -> a.equals("~") ? "" : a.replaceFirst("^@", folder.toString() + "/"))
        .toArray(String[]::new);
  }

  private List<String> all() throws IOException {
    try (Stream<Path> paths = Files.walk(folder)) {
      return paths.map(Path::toString).sorted().toList();
    }
  }
}
