package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every command that lays plans for a hive gives the same decision, to the last digit. */
@Tag("slow")
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
    for (String other : new String[] {"forecast", "backtest"}) {
      JsonNode colonies = colonies(other, washes, climate);
      for (int i = 0; i < compared.size(); i++) {
        ObjectNode waiting = compared.get(i).get("decision").deepCopy();
        waiting.remove(List.of("best", "tied"));
        assertThat(colonies.get(i).get("decision"))
            .as(other + " lays no plans; of " + compared.get(i).get("colony"))
            .isEqualTo(waiting);
      }
    }
  }

  /**
   * In December the winter bees are raised: the spring is near, and the next autumn is not told.
   */
  @Test
  void commandsAgreeAfterAWashInDecember() throws IOException {
    Path washes = folder.resolve("washes.csv");
    Files.writeString(
        washes,
        """
        date,colony,mites,bees
        2024-06-10,Upper,0,310
        2024-09-05,Upper,14,300
        2024-12-10,Upper,2,300
        2024-07-20,Gate,9,300
        2024-08-01,Gate,0,150
        """);
    JsonNode compared = colonies("compare", washes, "cold-continental");
    for (String other : new String[] {"windows", "worth", "forecast", "backtest"}) {
      JsonNode colonies = colonies(other, washes, "cold-continental");
      for (int i = 0; i < compared.size(); i++) {
        JsonNode expected = compared.get(i).get("decision");
        JsonNode found = colonies.get(i).get("decision");
        assertThat(found.get("waiting")).as(other).isEqualTo(expected.get("waiting"));
        assertThat(found.get("overThresholdToday")).isEqualTo(expected.get("overThresholdToday"));
        if (!List.of("forecast", "backtest").contains(other)) {
          assertThat(found).as(other).isEqualTo(expected);
        }
      }
    }
  }

  /** A look ahead that ends in summer knows nothing of the winter, whatever is asked. */
  @Test
  void noWinterLossIsToldOfASummer() throws IOException {
    Path washes = folder.resolve("washes.csv");
    Files.writeString(washes, WASHES);
    JsonNode summer = colonies("compare", washes, "temperate", "--until", "2025-09-01");
    assertThat(summer.at("/0/decision/waiting/winterLoss").isNull()).isTrue();
    assertThat(summer.at("/0/decision/waiting/infestation").isNull()).isTrue();
    assertThat(summer.at("/0/decision/best").isMissingNode()).isFalse();
  }

  private JsonNode colonies(String command, Path washes, String climate, String... more)
      throws IOException {
    List<String> words =
        new ArrayList<>(
            List.of(
                command,
                washes.toString(),
                "--climate",
                climate,
                "--colonies",
                "128",
                "--json",
                "--quiet",
                "--out",
                folder.resolve(command).toString()));
    words.addAll(List.of(more));
    Trial trial = Trial.run("", words.toArray(String[]::new));
    assertThat(trial.code()).as(trial.err()).isEqualTo(0);
    return new ObjectMapper().readTree(trial.out()).get("colonies");
  }
}
