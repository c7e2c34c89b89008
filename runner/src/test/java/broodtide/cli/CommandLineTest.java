package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CommandLineTest {
  private static final String WASHES =
      """
      date,colony,mites,bees
      2026-04-18,Meadow,1,310
      2026-05-20,Meadow,2,295
      2026-06-21,Meadow,6,
      """;

  @TempDir Path folder;

  @Test
  void comparesPlansFromWashesAlone() throws IOException {
    Bench.Outcome r = compare("--out", out());
    assertThat(r.err()).isEmpty();
    assertThat(r.code()).isZero();
    assertThat(r.out())
        .contains("Colony Meadow", "If you wait", "wait", "cut drone comb")
        .containsPattern("cut drone comb (= )? *22 Jun ")
        .containsPattern(" after harvest (= )? *1 Aug ")
        .contains("late", "Bees were not counted in 1 of 3 washes");
    assertThat(r.out().lines().allMatch(line -> line.length() <= 80)).isTrue();
    assertThat(files()).contains("compare.png", "compare.svg", "results.json");
    JsonNode results = new ObjectMapper().readTree(folder.resolve("out/results.json").toFile());
    JsonNode plans = results.at("/colonies/0/plans");
    assertThat(plans).hasSize(7);
    double wait = plans.at("/0/infestationAtEnd/median").asDouble();
    for (JsonNode plan : plans) {
      double q05 = plan.at("/infestationAtEnd/q05").asDouble();
      double q95 = plan.at("/infestationAtEnd/q95").asDouble();
      double median = plan.at("/infestationAtEnd/median").asDouble();
      assertThat(median).isBetween(q05, q95).isLessThanOrEqualTo(wait);
    }
  }

  @Tag("slow")
  @Test
  void sameSeedSameBytesOnAnyNumberOfThreads() throws IOException {
    compare("--out", folder.resolve("a").toString(), "--threads", "1");
    compare("--out", folder.resolve("b").toString(), "--threads", "3");
    for (String name : List.of("results.json", "compare.svg", "compare.png")) {
      assertThat(Files.mismatch(folder.resolve("a/" + name), folder.resolve("b/" + name)))
          .as(name)
          .isEqualTo(-1);
    }
    compare("--out", folder.resolve("c").toString(), "--seed", "2");
    assertThat(Files.mismatch(folder.resolve("a/results.json"), folder.resolve("c/results.json")))
        .isNotEqualTo(-1);
  }

  @Test
  void oneCountInItsSeason() {
    Bench.Outcome r =
        Bench.run(
            "wash", "7", "--bees", "300", "--date", "2026-09-20", "--climate", "cool-maritime");
    assertThat(r.code()).isZero();
    assertThat(r.out().replaceAll("\\s+", " "))
        .contains(
            "7 mites in 300 bees is 2.3 per 100",
            "the treatment threshold in set \"kulhanek-2021\" is 3 (9 mites in 300 bees)")
        .contains("The odds that the colony is above the treatment threshold are");
  }

  @Test
  void oneCountIsDrawnWhenAFolderIsNamed() throws IOException {
    String[] call =
        ("wash 7 --bees 300 --date 2026-09-20 --climate cool-maritime --json --out " + out())
            .split(" ");
    Bench.Outcome r = Bench.run(call);
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(files())
        .containsExactly("broodtide-files.json", "report.html", "results.json", "wash.svg");
    assertThat(folder.resolve("out/results.json")).hasContent(r.out());
    double chance =
        new ObjectMapper()
            .readTree(r.out())
            .at("/colonies/0/count/chanceAboveThreshold")
            .asDouble();
    assertThat(Files.readString(folder.resolve("out/wash.svg")))
        .contains("threshold: 3", Math.round(100 * chance) + " % above it");
    Files.writeString(folder.resolve("out/wash.svg"), "mine");
    assertThat(Bench.run(call).code()).isEqualTo(2);
    assertThat(folder.resolve("out/wash.svg")).hasContent("mine");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "compare",
        "compare nowhere.csv --climate temperate",
        "compare WASHES",
        "compare WASHES --climate temprate",
        "compare WASHES --climate temperate --until 2020-01-01",
        "compare WASHES --climate temperate --colony Hill",
        "compare WASHES --climate temperate --neighbours many",
        "compare WASHES --climate temperate --with formik",
        "compare WASHES --climate temperate --colonies 3",
        "compare WASHES --washes WASHES --climate temperate",
        "compare WASHES --climate temperate --out WASHES",
        "forecast WASHES --climate temperate --until soon",
        "wash -3 --bees 300 --date 2026-08-20 --climate temperate",
        "wash 400 --bees 300 --date 2026-08-20 --climate temperate",
        "wash 3 --bees 300 --date 2031-08-20 --climate temperate",
        "study check nowhere.json",
        "comapre WASHES",
        "study"
      })
  void badInputIsOneMessageAndCodeTwo(String call) throws IOException {
    Path washes = Files.writeString(folder.resolve("washes.csv"), WASHES);
    String[] args =
        Stream.of(call.split(" "))
            .map(a -> a.equals("WASHES") ? washes.toString() : a)
            .toArray(String[]::new);
    Bench.Outcome r = Bench.run(args);
    assertThat(r.code()).as(r.err()).isEqualTo(2);
    assertThat(r.err()).isNotBlank().doesNotContain("Exception").doesNotContain("\tat ");
    assertThat(r.out()).isEmpty();
  }

  @Test
  void aFaultyTableListsEveryFaultAndWritesNothing() throws IOException {
    Path washes =
        Files.writeString(
            folder.resolve("bad.csv"),
            "date,colony,mites,bees\n2026-02-30,A,1,300\n2026-05-01,A,-2,300\n2026-06-01,A,9,5\n");
    Bench.Outcome r =
        Bench.run("compare", washes.toString(), "--climate", "temperate", "--out", out());
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).contains("3 faults", "line 2", "line 3", "line 4");
    assertThat(folder.resolve("out/results.json")).doesNotExist();
  }

  @Test
  void newStudyCanBeCheckedAndCompared() throws IOException {
    String study = folder.resolve("mine").toString();
    assertThat(Bench.run("study", "new", study).code()).isZero();
    assertThat(Bench.run("study", "check", study + "/study.json").code()).isZero();
    assertThat(Bench.run("study", "new", study).code()).as("nothing is overwritten").isEqualTo(2);
    Bench.Outcome r =
        Bench.run("compare", "--study", study + "/study.json", "--colonies", "256", "--out", out());
    assertThat(r.code()).as(r.err()).isZero();
  }

  @Test
  void helpNamesEveryCommand() {
    String help = Bench.run("--help").out();
    assertThat(help).contains("wash", "growth", "forecast", "compare", "backtest", "study", "demo");
    assertThat(help).contains("never instructions to treat");
  }

  @Test
  void washesFromStandardInput() {
    Bench.Outcome r = Bench.fed(WASHES, "growth", "-", "--climate", "temperate");
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(r.out()).contains("Meadow");
  }

  private Bench.Outcome compare(String... more) throws IOException {
    Path washes = Files.writeString(folder.resolve("washes.csv"), WASHES, StandardCharsets.UTF_8);
    return Bench.run(
        Stream.concat(
                Stream.of(
                    "compare", washes.toString(), "--climate", "temperate", "--colonies", "512"),
                Stream.of(more))
            .toArray(String[]::new));
  }

  private String out() {
    return folder.resolve("out").toString();
  }

  private List<String> files() throws IOException {
    try (Stream<Path> all = Files.list(folder.resolve("out"))) {
      return all.map(p -> p.getFileName().toString()).sorted().toList();
    }
  }
}
