package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Values that can be read but lie at the edge of what makes sense: they are answered, or refused in
 * one line that names them before anything is printed or written.
 */
class AllowedValuesTest {
  private static final String HEADER = "date,colony,mites,bees\n";
  private static final String WASHES =
      HEADER + "2025-04-18,Meadow,1,310\n2025-05-20,Meadow,2,295\n2025-06-21,Meadow,6,300\n";

  @TempDir static Path folder;

  @BeforeAll
  static void files() throws IOException {
    put("washes.csv", WASHES);
    put("gap.csv", HEADER + "1950-04-18,Meadow,1,310\n2025-05-20,Meadow,2,295\n");
    put("old.csv", WASHES.replace("2025", "1950"));
    put("treatments.csv", treatments(168));
    put("fewer.csv", treatments(43));
    put(
        "study.json",
        "{\"title\": \"ten years\", \"climate\": \"temperate\", \"start\": \"2025-04-18\","
            + " \"until\": \"2035-04-01\", \"colony\": {\"name\": \"Meadow\"},"
            + " \"surroundings\": \"sparse\", \"washes\": \"washes.csv\","
            + " \"plans\": [{\"name\": \"wait\"}]}");
  }

  private static String treatments(int count) {
    StringBuilder out = new StringBuilder("date,colony,control\n");
    for (int i = 0; i < count; i++) {
      out.append(LocalDate.of(2025, 4, 19).plusDays(i)).append(",Meadow,oxalic-vapour\n");
    }
    return out.toString();
  }

  private static void put(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text, StandardCharsets.UTF_8);
  }

  private static Bench.Outcome run(String call, String... more) {
    Stream<String> words =
        Arrays.stream(call.split(" "))
            .map(w -> w.matches(".*[.](csv|json)") ? folder.resolve(w).toString() : w);
    return Bench.run(Stream.concat(words, Stream.of(more)).toArray(String[]::new));
  }

  private static String refused(String call, String... more) {
    Path out = folder.resolve("never");
    Bench.Outcome r =
        run(
            call,
            Stream.concat(Stream.of("--out", out.toString()), Stream.of(more))
                .toArray(String[]::new));
    assertThat(r.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(r.out()).isEmpty();
    assertThat(out).doesNotExist();
    assertThat(r.err().lines()).hasSize(1);
    return r.err();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " --json", " --hives 12"})
  void asManyMitesAsBeesIsAnswered(String more) {
    Bench.Outcome r = run("wash 300 --bees 300 --date 2026-08-24 --climate cool-maritime" + more);
    assertThat(r.err()).isEmpty();
    assertThat(r.code()).isZero();
    assertThat(r.out()).contains("label, local law");
  }

  @Test
  void aWashOf1950IsAnswered() {
    assertThat(run("wash 3 --bees 300 --date 1950-08-02 --climate temperate").code()).isZero();
    Bench.Outcome r =
        run("forecast old.csv --climate temperate --colonies 64 --json --out", out("1950"));
    assertThat(r.err()).isEmpty();
    assertThat(r.code()).isZero();
  }

  private static String out(String name) {
    return folder.resolve(name).toString();
  }

  @ParameterizedTest
  @ValueSource(strings = {"forecast", "compare", "windows", "rules", "worth", "backtest"})
  void aRecordOfSeventyYearsIsRefusedByItsDates(String command) {
    assertThat(refused(command + " gap.csv --climate temperate"))
        .contains("\"Meadow\"", "1950-04-18", "3660", "correct the year")
        .doesNotContain("days from");
  }

  @ParameterizedTest
  @ValueSource(strings = {"Infinity", "NaN", "1e300", "100.1"})
  void aCostBeyondEveryOutcomeIsRefused(String cost) {
    assertThat(refused("worth washes.csv --climate temperate --cost " + cost))
        .contains("--cost is ", "expected 0 to 100")
        .doesNotContain("Infinite");
    assertThat(refused("worth washes.csv --climate temperate --cost=-1")).contains("--cost is -1");
  }

  @Test
  void moreTreatmentsThanCanBeEstimatedAreRefusedInWords() {
    assertThat(refused("forecast washes.csv --climate temperate --given treatments.csv"))
        .contains("\"Meadow\"", "168 treatments", "expected 43", "applications")
        .doesNotContain("dimension");
    Bench.Outcome most =
        run(
            "forecast washes.csv --climate temperate --given fewer.csv --colonies 64 --json --out",
            out("fewer"));
    assertThat(most.err()).isEmpty();
    assertThat(most.code()).isZero();
  }

  @ParameterizedTest
  @ValueSource(strings = {"forecast", "compare", "windows", "rules", "worth"})
  void aStudyOfTenYearsIsRefusedByItsOwnField(String command) {
    assertThat(refused(command + " --study study.json"))
        .contains("\"until\" of the study is 2035-04-01", "2028-06-22", "--until");
  }

  @Test
  void aDayThatIsNoneIsRefusedByTheOptionGiven() {
    String call = "compare washes.csv --climate temperate";
    assertThat(refused(call, "--plan", "on 2025-13-45 with thymol"))
        .contains("--plan is ", "2025-13-45")
        .doesNotContain("--rule");
    for (String other :
        new String[] {
          "never", "2 with thymol", "on 2025-08-45 wit thymol", "limit with thymol", ""
        }) {
      assertThat(refused(call, "--plan", other))
          .contains("--plan is ", "on DATE with CONTROL")
          .doesNotContain("--rule", "never\", ", "wait DAYS", "limit of");
    }
    assertThat(
            refused("rules washes.csv --climate temperate", "--rule", "on 2025-13-45 with thymol"))
        .contains("--rule is ", "2025-13-45");
  }
}
