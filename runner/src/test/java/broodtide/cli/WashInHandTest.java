package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.Month;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code rules} acts on the wash in hand and takes none in the cold. */
class WashInHandTest {
  /** Figures of results.json have four digits, and several of them are put together. */
  private static final double ROUNDED = 1e-3;

  @TempDir private Path folder;

  /**
   * 14 in 300 are 4.7 per 100 bees: over 2, so that every colony is treated at once, not over 9.
   */
  @Test
  void aRuleActsOnTheNewestCount() throws IOException {
    JsonNode rules = play("2024-08-04,A,14,300\n", "2024-12-31");
    assertThat(rules.get(0).get("rule").asText()).isEqualTo("never");
    assertThat(rules).hasSize(3);
    assertThat(atOnce(rules.get(0))).isCloseTo(0, within(ROUNDED));
    assertThat(atOnce(rules.get(1))).isCloseTo(1, within(ROUNDED));
    assertThat(atOnce(rules.get(2))).isCloseTo(0, within(ROUNDED));
  }

  @Test
  void noWashIsTakenInDecemberOrJanuary() throws IOException {
    JsonNode days = play("2024-08-04,A,14,300\n", "2025-03-01").get(1).get("washDays");
    assertThat(days).isNotEmpty();
    for (JsonNode day : days) {
      assertThat(LocalDate.parse(day.get("day").asText()).getMonth())
          .isNotIn(Month.DECEMBER, Month.JANUARY);
    }
  }

  /** Treatments that no later wash asked for. */
  private static double atOnce(JsonNode rule) {
    double later = 0;
    for (JsonNode day : rule.get("washDays")) {
      later += day.get("treated").asDouble();
    }
    return rule.get("treatmentsPerSeason").asDouble() - later;
  }

  private JsonNode play(String wash, String to) throws IOException {
    Path washes = folder.resolve("washes.csv");
    Files.writeString(washes, "date,colony,mites,bees\n" + wash);
    Trial trial =
        Trial.run(
            "",
            "rules",
            washes.toString(),
            "--climate",
            "temperate",
            "--rule",
            "2 with formic-strips",
            "--rule",
            "9 with formic-strips",
            "--to",
            to,
            "--colonies",
            "64",
            "--json",
            "--quiet",
            "--out",
            folder.resolve("out").toString());
    assertThat(trial.code()).as(trial.err()).isEqualTo(0);
    return new ObjectMapper().readTree(trial.out()).at("/colonies/0/rules");
  }
}
