package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** No threshold on a day is a normal case, in every climate and every command. */
class EveryThresholdTest {
  private static final String WASHES =
      """
      date,colony,mites,bees
      2026-05-20,Meadow,3,310
      2026-06-14,Meadow,4,300
      2026-07-10,Meadow,6,295
      """;

  @TempDir private Path folder;

  private static final List<String> IN_TURN =
      List.of(
          "compare WASHES",
          "worked WASHES --treated 2026-06-20 --with formic-strips",
          "windows WASHES --controls thymol",
          "rules WASHES --rule threshold~with~formic-strips --rule 2~with~thymol --every 60",
          "worth WASHES --weeks 2",
          "backtest WASHES",
          "growth WASHES");

  /** Commands take turns over the pairs, so that each meets every set. */
  static Stream<Arguments> everySetInEveryClimate() {
    List<String> sets = Catalog.THRESHOLDS.names();
    List<String> climates = Catalog.CLIMATES.names();
    return IntStream.range(0, sets.size() * climates.size())
        .mapToObj(
            i -> {
              int set = i / climates.size();
              int climate = i % climates.size();
              String turn = IN_TURN.get((set + climate) % IN_TURN.size());
              return Arguments.of(sets.get(set), climates.get(climate), turn);
            });
  }

  @Tag("slow")
  @ParameterizedTest
  @MethodSource("everySetInEveryClimate")
  void everyCommandAnswers(String set, String climate, String turn) throws IOException {
    for (String command : List.of("forecast WASHES", turn)) {
      Bench.Outcome r = run(command, climate, set);
      assertThat(r.code()).as("%s%n%s", command, r.err()).isZero();
      assertThat(r.out()).as(command).doesNotContain("NaN", "Infinity", "null");
    }
    for (String day : List.of("2026-01-15", "2026-04-20", "2026-07-20", "2026-11-20")) {
      Bench.Outcome r =
          Bench.run(
              "wash",
              "4",
              "--bees",
              "300",
              "--date",
              day,
              "--climate",
              climate,
              "--threshold",
              set);
      assertThat(r.code()).as(r.err()).isZero();
      assertThat(r.out().replaceAll("\\s+", " "))
          .containsPattern("treatment threshold (in set|on [^.]* in set) \"" + set + "\"");
    }
  }

  private Bench.Outcome run(String command, String climate, String threshold) throws IOException {
    Path washes = Files.writeString(folder.resolve("washes.csv"), WASHES);
    List<String> args = new ArrayList<>();
    for (String word : command.split(" ")) {
      args.add(word.equals("WASHES") ? washes.toString() : word.replace('~', ' '));
    }
    args.addAll(List.of("--climate", climate, "--threshold", threshold));
    if (!command.startsWith("growth")) {
      args.addAll(List.of("--colonies", "64", "--quiet", "--threads", "1"));
      args.addAll(List.of("--out", folder.resolve(command.split(" ")[0]).toString()));
    }
    return Bench.run(args.toArray(String[]::new));
  }

  /** Neither set speaks of the days asked for. */
  @Test
  void daysWithoutAThresholdAreSaidInWordsAndAreNullInJson() throws IOException {
    Bench.Outcome r = run("compare WASHES", "temperate", "kretzschmar-maisonnasse-2022");
    assertThat(r.out().replaceAll("\\s+", " "))
        .contains(
            "There is no treatment threshold on 5 October 2026 in set"
                + " \"kretzschmar-maisonnasse-2022\".")
        .doesNotContain("over the treatment threshold of");
    run("forecast WASHES --until 2026-07-25", "temperate", "delaplane-hood-1999");
    JsonNode plan = results("forecast").at("/colonies/0/plans/0");
    assertThat(plan.get("chanceOverThreshold").isNull()).isTrue();
    assertThat(plan.at("/dayOverThreshold/median").isNull()).isTrue();
    String picture = Files.readString(folder.resolve("forecast/forecast.svg"));
    assertThat(picture.replaceAll("<[^>]*>", " ").replaceAll("\\s+", " "))
        .contains("No treatment threshold on these days")
        .doesNotContain("threshold: ");

    Bench.Outcome rules =
        run(
            "rules WASHES --rule threshold~with~thymol --rule 2~with~thymol --from 2026-09-10 --to"
                + " 2026-09-20",
            "temperate",
            "delaplane-hood-1999");
    assertThat(rules.out().replaceAll("\\s+", " "))
        .contains("There is no treatment threshold on any wash day in set");
    JsonNode rule = results("rules").at("/colonies/0/rules/2");
    assertThat(rule.get("missesPerSeason").isNull()).isTrue();
    assertThat(rule.get("needlessPerSeason").isNull()).isTrue();
    assertThat(rule.at("/washDays/0/over").isNull()).isTrue();
    assertThat(results("rules").at("/colonies/0/rules/1/treatmentsPerSeason").asDouble()).isZero();
  }

  private JsonNode results(String command) throws IOException {
    return new ObjectMapper().readTree(folder.resolve(command + "/results.json").toFile());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "forecast WASHES --climate temperate --limits spring",
        "rules WASHES --climate temperate --limits=3",
        "wash 3 --date 2026-08-01 --climate temperate --limits spring"
      })
  void theOldOptionIsRefusedWithTheNewName(String call) throws IOException {
    Path washes = Files.writeString(folder.resolve("washes.csv"), WASHES);
    Bench.Outcome r = Bench.run(call.replace("WASHES", washes.toString()).split(" "));
    assertThat(r.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(r.err())
        .contains("'--limits' is called --threshold now")
        .doesNotContain("no option");
  }

  @Test
  void theOldWordInARuleIsRefusedWithTheNewOne() throws IOException {
    Bench.Outcome r = run("rules WASHES --rule limit~with~thymol", "temperate", "3");
    assertThat(r.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(r.err()).contains("\"threshold with thymol\"");
  }

  @Test
  void aFigureIsTakenInPlaceOfASet() {
    Bench.Outcome r =
        Bench.run(
            "wash", "7", "--date", "2026-08-01", "--climate", "boreal", "--threshold", "9/300");
    assertThat(r.out().replaceAll("\\s+", " "))
        .contains("the treatment threshold as given (9/300) is 3 (9 mites in 300 bees)");
  }
}
