package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.files.Csv;
import broodtide.words.Digits;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The files of one run say the same, and say it again in the same bytes. */
class ReportAgreesTest {
  @TempDir Path folder;

  /** Tables have two digits of what results.json has four of. */
  private static String two(JsonNode figure) {
    return Csv.number(figure.asDouble());
  }

  @Test
  void pageTablesAndResultsAgree() throws IOException {
    Trial trial = run("a", "--study", "larkmeadow");
    String html = Files.readString(folder.resolve("a/report.html"));
    JsonNode colony =
        new ObjectMapper()
            .readTree(Files.readString(folder.resolve("a/results.json")))
            .at("/colonies/0");
    List<Map<String, String>> plans = rows("a/plans.csv");
    List<Map<String, String>> season = rows("a/season.csv");
    assertThat(plans).hasSameSizeAs(colony.get("plans"));
    for (int i = 0; i < plans.size(); i++) {
      Map<String, String> plan = plans.get(i);
      JsonNode result = colony.get("plans").get(i);
      assertThat(plan.get("plan")).isEqualTo(result.get("plan").asText());
      assertThat(plan.get("mites_per_100_median"))
          .isEqualTo(two(result.at("/whenRaised/infestation/median")));
      assertThat(plan.get("day")).isEqualTo(result.at("/whenRaised/day").asText());
      assertThat(plan.get("chance_died_out")).isEqualTo(two(result.get("chanceDiedOut")));
      Map<String, String> day =
          season.stream()
              .filter(r -> Objects.equals(r.get("plan"), plan.get("plan")))
              .filter(r -> Objects.equals(r.get("date"), plan.get("day")))
              .findFirst()
              .orElseThrow();
      assertThat(day.get("median")).isEqualTo(plan.get("mites_per_100_median"));
      String shown = Digits.two(Double.parseDouble(plan.get("mites_per_100_median")));
      assertThat(html).contains("<b>" + shown + "</b>");
      assertThat(trial.out()).contains(shown);
    }
    assertThat(season).hasSize(plans.size() * colony.at("/plans/0/series").size());
    LocalDate last = LocalDate.parse(colony.get("until").asText());
    assertThat(season.get(season.size() - 1)).containsEntry("date", last.toString());
    for (JsonNode plan : colony.get("plans")) {
      assertThat(LocalDate.parse(plan.get("peakDay").asText())).isBeforeOrEqualTo(last);
    }
    assertThat(html).contains("30 September 2025").contains("4 mites in 288 bees");
  }

  @Test
  void forecastSpeaksOfTheDayAskedFor() throws IOException {
    Trial trial = run("b", "--until", "2025-09-12", "--study", "larkmeadow", "forecast");
    assertThat(trial.out()).contains("on 12 September 2025").doesNotContain("better");
    assertThat(Files.readString(folder.resolve("b/report.html"))).contains("Varroa forecast");
  }

  @Test
  void threadsAndFolderLeaveTheBytesAlone() throws IOException {
    run("one", "--study", "larkmeadow", "--threads", "1");
    run("two", "--study", "larkmeadow", "--threads", "2");
    try (Stream<Path> files = Files.list(folder.resolve("one"))) {
      for (Path file : files.toList()) {
        assertThat(folder.resolve("two").resolve(file.getFileName())).hasSameBinaryContentAs(file);
      }
    }
  }

  @Test
  void filesStandAsTypedAndColoniesOfLikeNamesApart() throws IOException {
    Path washes = folder.resolve("my washes.csv");
    Files.writeString(
        washes, "date,colony,mites,bees\n2025-05-01,Hive 1,2,300\n2025-05-01,hive-1,3,300\n");
    run("c", washes.toString(), "--climate", "temperate", "forecast");
    assertThat(Files.readString(folder.resolve("c/report.html")))
        .contains(
            "<code>broodtide forecast '" + washes + "' --climate temperate --colonies 64</code>")
        .doesNotContain("Better than");
    try (Stream<Path> files = Files.list(folder.resolve("c"))) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .containsExactlyInAnyOrder(
              "apiary.png",
              "apiary.svg",
              "broodtide-files.json",
              "forecast-hive-1.png",
              "forecast-hive-1.svg",
              "forecast-hive-1-2.png",
              "forecast-hive-1-2.svg",
              "plans.csv",
              "posterior-hive-1.svg",
              "posterior-hive-1-2.svg",
              "report.html",
              "results.json",
              "season.csv",
              "sensitivity-hive-1.svg",
              "sensitivity-hive-1-2.svg",
              "sheet.csv",
              "inside-hive-1.svg",
              "inside-hive-1-2.svg");
    }
  }

  private Trial run(String name, String... args) {
    boolean forecast = List.of(args).contains("forecast");
    Stream<String> given = Stream.of(args).filter(a -> !a.equals("forecast"));
    Stream<String> fixed = Stream.of("--colonies", "64", "--out", folder.resolve(name).toString());
    String[] all =
        Stream.of(Stream.of(forecast ? "forecast" : "compare"), given, fixed)
            .flatMap(s -> s)
            .toArray(String[]::new);
    Trial trial = Trial.run("", all);
    assertThat(trial.err()).isEmpty();
    assertThat(trial.code()).isEqualTo(Main.OK);
    return trial;
  }

  private List<Map<String, String>> rows(String name) throws IOException {
    return new CsvMapper()
        .readerForMapOf(String.class)
        .with(CsvSchema.emptySchema().withHeader())
        .<Map<String, String>>readValues(Files.readString(folder.resolve(name)))
        .readAll();
  }
}
