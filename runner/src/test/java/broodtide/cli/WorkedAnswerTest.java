package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.results.ResultsFile;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code worked} gives one answer, in words and in JSON, and no figure that speaks against it. */
@Tag("slow")
class WorkedAnswerTest {
  private static final Map<String, String> WORDS =
      Map.of(
          "WORKED",
          "Worked as expected:",
          "FELL_SHORT",
          "Fell short:",
          "CANNOT_TELL",
          "Cannot tell:");

  @TempDir private Path folder;

  private String worked(int before, int after) throws IOException {
    return worked(before, after, "formic-strips");
  }

  private String worked(int before, int after, String control) throws IOException {
    Path washes = folder.resolve("washes.csv");
    Files.writeString(
        washes,
        "date,colony,mites,bees\n2026-08-09,Left,"
            + before
            + ",300\n2026-09-05,Left,"
            + after
            + ",300\n");
    Bench.Outcome r = judged(washes, "2026-08-10", control, 1024);
    return r.out().replaceAll("\\s+", " ");
  }

  private Bench.Outcome judged(Path washes, String treated, String control, int colonies) {
    Bench.Outcome r =
        Bench.run(
            "worked",
            washes.toString(),
            "--climate=temperate",
            "--treated=" + treated,
            "--with=" + control,
            "--colonies=" + colonies,
            "--quiet",
            "--out=" + folder.resolve("out"));
    assertThat(r.code()).as(r.err()).isZero();
    return r;
  }

  private JsonNode treatment() throws IOException {
    JsonNode json = new ObjectMapper().readTree(folder.resolve("out/results.json").toFile());
    assertThat(
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(ResultsFile.schema())
                .validate(json))
        .isEmpty();
    return json.at("/colonies/0/treatment");
  }

  @Test
  void hivesThatFellShortTogetherSpeakOfResistanceAndShareOneList() throws IOException {
    Path washes = folder.resolve("three.csv");
    Files.writeString(
        washes,
        """
        date,colony,mites,bees
        2026-08-01,Upper,14,300
        2026-09-28,Upper,30,300
        2026-08-01,Lower,11,300
        2026-09-28,Lower,26,300
        2026-08-01,Brook,9,300
        2026-09-28,Brook,22,300
        """);
    Bench.Outcome r = judged(washes, "2026-08-05", "amitraz-strips", 512);
    assertThat(r.out()).containsOnlyOnce("To check for Brook, Lower, Upper, in this order:");
    treatment();
    JsonNode root = new ObjectMapper().readTree(folder.resolve("out/results.json").toFile());
    assertThat(root.at("/apiaryTreatment/verdict").asText()).isEqualTo("FELL_SHORT");
    double together = root.at("/apiaryTreatment/resistance/chance").asDouble();
    for (JsonNode colony : root.path("colonies")) {
      assertThat(colony.at("/treatment/resistance/substance").asText()).isEqualTo("amitraz");
      assertThat(together).isGreaterThan(colony.at("/treatment/resistance/chance").asDouble());
      assertThat(colony.at("/treatment/naturalFall/high").asDouble()).isEqualTo(0.23);
    }
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "1, 0", "11, 24", "27, 2", "20, 120"})
  void oneAnswerInWordsAndJson(int before, int after) throws IOException {
    String out = worked(before, after);
    JsonNode json = treatment();
    String verdict = json.path("verdict").asText();
    assertThat(out).startsWith("Colony Left " + WORDS.get(verdict));
    WORDS.forEach(
        (other, words) -> {
          if (!other.equals(verdict)) {
            assertThat(out).doesNotContain(words);
          }
        });
    double chance = json.path("chanceOfHalfItsStrength").asDouble();
    if (verdict.equals("CANNOT_TELL")) {
      assertThat(out)
          .doesNotContain("took about", "chance by these washes", "half of its usual strength")
          .containsAnyOf("A further wash of", "No further wash of");
    } else {
      assertThat(out).contains("took about").doesNotContain("further wash", "too few");
      assertThat(chance)
          .satisfiesAnyOf(
              c -> assertThat(c).isGreaterThanOrEqualTo(0.9),
              c -> assertThat(c).isLessThanOrEqualTo(0.1));
    }
  }

  @Test
  void countsWithoutAMiteCannotTell() throws IOException {
    assertThat(worked(0, 0)).contains("Cannot tell: no mite was found before");
    assertThat(treatment().path("verdict").asText()).isEqualTo("CANNOT_TELL");
  }

  @Test
  void oneMiteBeforeAndNoneAfterIsTooLittleToSayThatItWorked() throws IOException {
    worked(1, 0);
    assertThat(treatment().path("verdict").asText()).isEqualTo("CANNOT_TELL");
    JsonNode wash = treatment().path("washThatWouldTell");
    assertThat(wash.path("chance").asDouble()).isBetween(0.2, 1.0);
    assertThat(wash.path("workedUpTo").asInt()).isGreaterThanOrEqualTo(0);
  }

  @Test
  void manyMitesBeforeAndHardlyAnyAfterTellAndManyMoreTellTheOpposite() throws IOException {
    worked(27, 2);
    assertThat(treatment().path("verdict").asText()).isEqualTo("WORKED");
    worked(20, 120);
    assertThat(treatment().path("verdict").asText()).isEqualTo("FELL_SHORT");
  }

  /** What was counted leads to the option that plans with it; acids that mites stand are none. */
  @Test
  void aSubstanceThatDidBadlyIsNamedWithTheOptionThatReckonsWithIt() throws IOException {
    assertThat(worked(20, 120, "pyrethroid-strips"))
        .contains(
            "Fell short:", "chance that the mites are resistant is", "add --resistant pyrethroid");
    assertThat(worked(27, 0, "pyrethroid-strips")).doesNotContain("--resistant");
    assertThat(worked(20, 120)).contains("Fell short:").doesNotContain("--resistant");
  }

  @Test
  void theNaturalFallOfTrialsIsSaid() throws IOException {
    assertThat(worked(27, 2)).contains("3 to 23 % in untreated groups of trials");
    assertThat(worked(1, 0)).contains("3 to 23 % in untreated groups of trials");
  }
}
