package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.results.ResultsFile;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whatever tool writes results, they keep to one schema, by an independent validator. */
@Tag("outside")
@Tag("slow")
class ResultsOfEveryToolTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** Gaps, a wash with no mite, a half cup, two on one day, and one in December. */
  private static final String WASHES =
      """
      date,colony,mites,bees,method
      2024-06-10,Upper,2,310,alcohol
      2024-08-09,Upper,27,300,alcohol
      2024-09-05,Upper,3,,alcohol
      2024-09-05,Upper,1,150,powdered-sugar
      2024-07-20,Lower,0,300,alcohol
      2024-09-01,Lower,4,300,alcohol
      2024-12-10,Lower,2,300,alcohol
      """;

  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "forecast | waiting",
        "forecast --until 2025-01-15 | waiting",
        "compare | laid",
        "compare --threshold gds-france-2026 | laid",
        "compare --only --plan 'on 2025-01-05 with oxalic-dribble' | laid",
        "windows --controls thymol,oxalic-dribble | laid",
        "windows --outcome infestation --controls formic-strips | laid",
        "worth --weeks 2,4 | laid",
        "rules --rule '2 with formic-strips' --from 2025-04-20 --to 2025-06-20 --until 2025-10-01 |"
            + " laid",
        "worked --treated 2024-08-12 --with formic-strips --colony Upper | none",
        "backtest | waiting",
        "growth | none",
        "growth --until 2025-03-01 --treated 2024-08-12 | none"
      })
  void keepToTheSchema(String command, String decision) throws IOException {
    Path washes = folder.resolve("washes.csv");
    Files.writeString(washes, WASHES);
    List<String> words = new ArrayList<>();
    boolean quoted = false;
    for (String part : command.split("'")) {
      words.addAll(quoted ? List.of(part) : List.of(part.strip().split(" +")));
      quoted = !quoted;
    }
    words.addAll(1, List.of(washes.toString(), "--climate", "temperate", "--json"));
    if (!words.get(0).equals("growth")) {
      words.addAll(List.of("--colonies", "64", "--out", folder.resolve("out").toString()));
    }
    check(words, decision);
  }

  @ParameterizedTest
  @CsvSource({
    "7, 2024-08-20, cool-maritime",
    "0, 2024-06-01, temperate",
    "60, 2024-12-14, boreal",
    "3, 2024-02-01, subtropical"
  })
  void oneCountKeepsToTheSchema(String mites, String date, String climate) throws IOException {
    check(
        List.of("wash", mites, "--date", date, "--climate", climate, "--hives", "20", "--json"),
        "waiting");
  }

  @ParameterizedTest
  @CsvSource({"24, 2024-08-20, temperate", "0, 2024-12-14, boreal"})
  void oneBoardKeepsToTheSchema(String mites, String date, String climate) throws IOException {
    check(
        List.of("wash", mites, "--days", "3", "--date", date, "--climate", climate, "--json"),
        "waiting");
  }

  @Test
  void countsOfATableKeepToTheSchema() throws IOException {
    Path washes = folder.resolve("washes.csv");
    Files.writeString(washes, WASHES);
    for (String more : List.of("", " --threshold gds-france-2026 --date 2024-12-10")) {
      Trial trial =
          Trial.run("", ("wash " + washes + " --climate temperate --json" + more).split(" ", -1));
      assertThat(trial.code()).as(trial.err()).isEqualTo(0);
      JsonNode root = JSON.readTree(trial.out());
      assertThat(
              strict().validate(root, c -> c.executionConfig(e -> e.formatAssertionsEnabled(true))))
          .isEmpty();
      ((ObjectNode) root).remove("counts");
      assertThat(strict().validate(root)).as("colonies want seed and decision").isNotEmpty();
    }
  }

  private static Schema strict() throws IOException {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(closed(JSON.readTree(ResultsFile.schema())).toString());
  }

  private static void check(List<String> words, String decision) throws IOException {
    Trial trial = Trial.run("", words.toArray(String[]::new));
    assertThat(trial.code()).as(trial.err()).isEqualTo(0);
    JsonNode root = JSON.readTree(trial.out());
    assertThat(root.get("format").asText()).isEqualTo("broodtide-results-2");
    assertThat(root.get("tool").asText()).isEqualTo(words.get(0));
    Schema schema = strict();
    assertThat(schema.validate(root, c -> c.executionConfig(e -> e.formatAssertionsEnabled(true))))
        .isEmpty();
    assertThat(root.get("colonies")).isNotEmpty();
    for (JsonNode colony : root.get("colonies")) {
      assertThat(colony.has("decision")).isEqualTo(!decision.equals("none"));
      assertThat(colony.at("/decision/best").isObject()).isEqualTo(decision.equals("laid"));
      assertThat(colony.at("/decision/tied").isArray()).isEqualTo(decision.equals("laid"));
    }
    ((ObjectNode) root.at("/colonies/0")).remove(decision.equals("none") ? "climate" : "decision");
    assertThat(schema.validate(root)).as("a colony without its part").isNotEmpty();
  }

  /** The same schema, taking no field that it does not name. */
  private static JsonNode closed(JsonNode node) {
    if (node instanceof ObjectNode object
        && object.path("properties").isObject()
        && object.path("type").asText().equals("object")) {
      object.put("unevaluatedProperties", false);
    }
    node.forEach(ResultsOfEveryToolTest::closed);
    return node;
  }
}
