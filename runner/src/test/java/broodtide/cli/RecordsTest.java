package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What one's own records say of forecasts, beside the answer. */
@Tag("slow")
class RecordsTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;

  /** Six hives whose mites are gone by the last wash, for no reason that the table tells. */
  private static String flat() {
    StringBuilder csv = new StringBuilder("date,colony,mites,bees\n");
    for (int hive = 1; hive <= 6; hive++) {
      csv.append("2025-05-20,H" + hive + ",6,300\n");
      csv.append("2025-06-25,H" + hive + ",14,300\n");
      csv.append("2025-08-20,H" + hive + ",1,300\n");
    }
    return csv.toString();
  }

  @Test
  void forecastsThatRanTooHighAreSaidBesideTheAnswer() throws IOException {
    Trial trial = run(flat(), "forecast - --records");
    String words = trial.out().replaceAll("\\s+", " ");
    assertThat(words)
        .containsPattern("On your records forecasts ran about \\S+ times too high \\(90 % interval")
        .contains("The figures have not been adjusted for this");
    JsonNode file = JSON.readTree(folder.resolve("forecast/results.json").toFile());
    assertThat(file.at("/notes/0").asText()).startsWith("On your records forecasts ran about");
    String backtest = run(flat(), "backtest -").out().replaceAll("\\s+", " ");
    String said =
        words.substring(
            words.indexOf("On your records"),
            words.indexOf(" (90 % interval", words.indexOf("On your records")));
    assertThat(backtest).contains(said);
  }

  @Test
  void withoutTheOptionOrWithFewRecordsNothingIsClaimed() {
    String few = "date,colony,mites,bees\n2025-06-01,A,3,300\n2025-07-01,A,6,300\n";
    assertThat(run(few, "forecast -").out()).doesNotContain("records", "Too few forecasts");
    assertThat(run(few, "forecast - --records").out().replaceAll("\\s+", " "))
        .contains("Too few forecasts to tell whether they run too high or too low here; 5");
  }

  private Trial run(String washes, String command) {
    String call =
        command
            + " --climate temperate --colonies 128 --quiet --out "
            + folder.resolve(command.split(" ", -1)[0]);
    Trial trial = Trial.run(washes, call.split(" ", -1));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    return trial;
  }
}
