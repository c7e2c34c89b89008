package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The answer for one hive opens with at most five lines, and no sentence is long. */
@Tag("slow")
class FiveLinesTest {
  private static final int LINES = 5;
  private static final int WORDS = 25;

  private static final String CLEAN =
      """
      date,colony,mites,bees
      2025-05-10,Gate,1,300
      2025-06-12,Gate,3,300
      2025-07-14,Gate,6,300
      2025-08-24,Gate,15,300
      """;

  /** Washes of many sizes that jump up and down. */
  private static final String MESSY =
      """
      date,colony,mites,bees
      2025-04-02,Gate,4,30
      2025-05-30,Gate,0,412
      2025-06-02,Gate,19,260
      2025-08-20,Gate,3,95
      2025-08-29,Gate,160,300
      """;

  private static final String ZERO =
      """
      date,colony,mites,bees
      2025-05-10,Gate,0,300
      2025-06-12,Gate,0,300
      2025-08-14,Gate,0,300
      """;

  private static final String SUPERS =
      """
      date,colony,mites,bees
      2025-06-28,Gate,2,304
      2025-07-04,Gate,6,288
      """;

  private static final String ONE = "date,colony,mites,bees\n2025-08-14,Gate,2,30\n";

  private static final String MANY = "date,colony,mites,bees\n2025-09-14,Gate,290,300\n";

  private static final String DECEMBER =
      """
      date,colony,mites,bees
      2024-06-10,Gate,2,300
      2024-09-05,Gate,14,300
      2024-12-10,Gate,2,300
      """;

  private static final String SOUTH =
      """
      date,colony,mites,bees
      2025-01-10,Gate,2,300
      2025-02-08,Gate,9,300
      """;

  @TempDir private Path folder;

  private static Stream<Arguments> calls() {
    Map<String, List<String>> apiaries =
        Map.of(
            "clean", List.of(CLEAN, "--climate temperate"),
            "messy", List.of(MESSY, "--climate cool-maritime"),
            "zero counts", List.of(ZERO, "--climate cold-continental"),
            "with supers", List.of(SUPERS, "--climate cool-maritime"),
            "one small wash", List.of(ONE, "--climate temperate"),
            "many mites", List.of(MANY, "--climate temperate"),
            "December wash", List.of(DECEMBER, "--climate cold-continental"),
            "southern", List.of(SOUTH, "--climate temperate --south"),
            "subtropical", List.of(CLEAN, "--climate subtropical"));
    return apiaries.entrySet().stream()
        .flatMap(
            a ->
                Stream.of("compare", "forecast", "worth", "windows", "rules")
                    .filter(command -> !command.equals("rules") || canWash(a.getKey()))
                    .map(
                        command ->
                            Arguments.of(
                                command, a.getKey(), a.getValue().get(0), a.getValue().get(1))));
  }

  /** Rules are judged by winter loss, and washes need warm days. */
  private static boolean canWash(String kind) {
    return !kind.equals("subtropical") && !kind.equals("December wash");
  }

  @ParameterizedTest(name = "{0} of the {1} apiary")
  @MethodSource("calls")
  void opensWithFiveLines(String command, String kind, String washes, String place) {
    List<String> call = new ArrayList<>(List.of(command, "-", "--colonies", "64", "--quiet"));
    call.addAll(List.of("--out", folder.resolve(kind).toString()));
    call.addAll(Arrays.asList(place.split(" ")));
    if (kind.equals("subtropical") && !command.equals("compare") && !command.equals("forecast")) {
      call.addAll(List.of("--outcome", "winter-brood"));
    }
    Trial trial = Trial.run(washes, call.toArray(String[]::new));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    List<String> lines = trial.out().lines().toList();
    assertThat(lines.get(0)).isEqualTo("Colony Gate");
    List<String> opening = lines.subList(1, lines.indexOf(""));
    assertThat(opening).as(trial.out()).hasSizeBetween(2, LINES);
    assertThat(longOnes(trial.out())).as(trial.out()).isEmpty();
  }

  /** Sentences of more words than a reader takes in at once; rows of tables are none. */
  private static List<String> longOnes(String text) {
    StringBuilder prose = new StringBuilder();
    for (String line : text.split("\n", -1)) {
      prose.append(line.isBlank() || line.strip().contains("  ") ? ". " : line + " ");
    }
    return Arrays.stream(prose.toString().split("(?<=[.?!])\\s+"))
        .filter(s -> s.split("\\s+").length > WORDS)
        .toList();
  }
}
