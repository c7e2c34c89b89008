package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every command that lays plans for a hive gives the same decision, to the last digit. */
class DecisionAgreesTest {
  private static final String WASHES =
      """
      date,colony,mites,bees
      2025-06-10,Upper,2,310
      2025-07-08,Upper,5,295
      2025-07-28,Upper,9,300
      2025-07-20,Lower,0,300
      """;

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"temperate", "cool-maritime", "boreal"})
  void commandsAgree(String climate) throws IOException {
    Path washes = folder.resolve("washes.csv");
    Files.writeString(washes, WASHES);
    JsonNode compared = colonies("compare", washes, climate);
    for (String other : new String[] {"windows", "worth", "rules"}) {
      JsonNode colonies = colonies(other, washes, climate);
      assertThat(colonies).as(other).hasSameSizeAs(compared);
      for (int i = 0; i < compared.size(); i++) {
        assertThat(colonies.get(i).get("colony")).isEqualTo(compared.get(i).get("colony"));
        assertThat(colonies.get(i).get("decision"))
            .as(other + " of " + compared.get(i).get("colony"))
            .isEqualTo(compared.get(i).get("decision"));
      }
    }
    JsonNode forecast = colonies("forecast", washes, climate);
    for (int i = 0; i < compared.size(); i++) {
      JsonNode decision = forecast.get(i).get("decision");
      assertThat(decision.has("best")).as("a forecast lays no plans").isFalse();
      assertThat(decision.get("decisionDate"))
          .isEqualTo(compared.get(i).at("/decision/decisionDate"));
      assertThat(decision.get("overThresholdToday"))
          .isEqualTo(compared.get(i).at("/decision/overThresholdToday"));
    }
  }

  private JsonNode colonies(String command, Path washes, String climate) throws IOException {
    Trial trial =
        Trial.run(
            "",
            command,
            washes.toString(),
            "--climate",
            climate,
            "--colonies",
            "128",
            "--json",
            "--quiet",
            "--out",
            folder.resolve(command).toString());
    assertThat(trial.code()).as(trial.err()).isEqualTo(0);
    return new ObjectMapper().readTree(trial.out()).get("colonies");
  }
}
