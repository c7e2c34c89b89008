package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.stream.Collectors;
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
        .containsPattern("The figures take this in. From the last wash on a mite has 0\\S+ times");
    JsonNode file = JSON.readTree(folder.resolve("forecast/results.json").toFile());
    assertThat(file.at("/notes/0").asText()).startsWith("On your records forecasts ran about");
    JsonNode plain = JSON.readTree(run(flat(), "forecast - --json").out()).at("/sheet/rows");
    JsonNode rows = file.at("/sheet/rows");
    for (int i = 0; i < rows.size(); i++) {
      assertThat(median(rows.get(i))).isLessThan(0.9 * median(named(plain, rows.get(i))));
    }
    String backtest = run(flat(), "backtest -").out().replaceAll("\\s+", " ");
    String said =
        words.substring(
            words.indexOf("On your records"),
            words.indexOf(" (90 % interval", words.indexOf("On your records")));
    assertThat(backtest).contains(said);
  }

  private static double median(JsonNode row) {
    return row.at("/judged/median").asDouble();
  }

  private static JsonNode named(JsonNode rows, JsonNode other) {
    for (JsonNode row : rows) {
      if (row.get("colony").equals(other.get("colony"))) {
        return row;
      }
    }
    throw new AssertionError(other.get("colony"));
  }

  /** The option says the same beside plans, which it moves as well. */
  @Test
  void plansRestOnTheRecordsToo() throws IOException {
    String words = run(flat(), "compare - --records").out().replaceAll("\\s+", " ");
    assertThat(words).containsPattern("On your records forecasts ran about \\S+ times too high");
    JsonNode with = JSON.readTree(folder.resolve("compare/results.json").toFile());
    JsonNode without = JSON.readTree(run(flat(), "compare - --json").out());
    for (JsonNode row : with.at("/sheet/rows")) {
      assertThat(median(row)).isLessThan(0.9 * median(named(without.at("/sheet/rows"), row)));
    }
    assertThat(without.at("/notes").toString()).doesNotContain("On your records");
  }

  /** Too few records leave every figure as it is. */
  @Test
  void tooFewRecordsMoveNothing() throws IOException {
    String few = flat().lines().limit(7).collect(Collectors.joining("\n")) + "\n";
    JsonNode with = JSON.readTree(run(few, "forecast - --records --json").out());
    JsonNode without = JSON.readTree(run(few, "forecast - --json").out());
    assertThat(with.at("/notes/0").asText()).contains("The figures are as they are without");
    assertThat(with.get("colonies")).isEqualTo(without.get("colonies"));
    assertThat(with.get("sheet")).isEqualTo(without.get("sheet"));
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
