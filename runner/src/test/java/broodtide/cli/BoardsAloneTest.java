package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A hive of which only mites on a board are known. */
class BoardsAloneTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String HEAD = "date,colony,mites,bees,method,board_days\n";
  private static final String PLACE = " --climate temperate --colonies 256 --quiet --out ";

  @TempDir private Path folder;

  @Test
  void moreMitesOnTheBoardAreMoreMitesInTheHive() throws IOException {
    double few = infestation("2025-07-15,A,3,,board,3\n").get("median").asDouble();
    JsonNode many = infestation("2025-07-15,A,150,,board,3\n");
    assertThat(many.get("median").asDouble()).isGreaterThan(5 * few);
    assertThat(many.get("q95").asDouble() / many.get("q05").asDouble())
        .as("a board alone is known within a wide factor")
        .isGreaterThan(6);
    JsonNode washed = infestation("2025-07-15,A,150,,board,3\n2025-07-15,A,9,300,alcohol,\n");
    assertThat(washed.get("q95").asDouble() / washed.get("q05").asDouble())
        .as("a wash narrows it")
        .isLessThan(many.get("q95").asDouble() / many.get("q05").asDouble());
  }

  @Test
  void theDailyFallIsHeldAgainstTheThresholdOfTheSet() throws IOException {
    String words =
        run(HEAD + "2025-07-15,A,36,,board,3\n", "forecast - --threshold gds-france-2026")
            .out()
            .replaceAll("\\s+", " ");
    assertThat(words)
        .contains("The board of 15 July 2025 shows 12 mites a day (36 in 3 days).")
        .contains("That is over the threshold of 10 a day in set \"gds-france-2026\".")
        .contains("Boards alone are known of A");
    JsonNode board =
        JSON.readTree(folder.resolve("results.json").toFile()).at("/colonies/0/boards/0");
    assertThat(board.get("perDay").asDouble()).isEqualTo(12);
    assertThat(board.get("days").asInt()).isEqualTo(3);
    assertThat(board.get("thresholdPerDay").asDouble()).isEqualTo(10);
    assertThat(Files.readString(folder.resolve("report.html"))).contains("12 mites a day");
  }

  @Test
  void aHiveWithBoardsAloneStandsOnTheSheet() throws IOException {
    Trial trial =
        run(HEAD + "2025-07-16,A,9,300,,\n2025-07-15,B,36,,board,3\n", "forecast - --json");
    JsonNode rows = JSON.readTree(trial.out()).at("/sheet/rows");
    assertThat(rows).hasSize(2);
    assertThat(rows.findValuesAsText("colony")).containsExactlyInAnyOrder("A", "B");
  }

  @Test
  void commandsThatNeedWashesSaySo() {
    for (String command : new String[] {"growth", "backtest", "wash"}) {
      Trial trial =
          Trial.run(
              HEAD + "2025-07-15,A,36,,board,3\n",
              command,
              "-",
              "--climate",
              "temperate",
              "--out",
              folder.toString());
      assertThat(trial.code()).as(command).isEqualTo(Main.BAD_INPUT);
      assertThat(trial.err()).contains("boards alone");
    }
  }

  private JsonNode infestation(String rows) throws IOException {
    Trial trial = run(HEAD + rows + "2025-07-15,Z,9,300,alcohol,\n", "forecast - --json");
    for (JsonNode row : JSON.readTree(trial.out()).at("/sheet/rows")) {
      if (row.get("colony").asText().equals("A")) {
        return row.get("infestation");
      }
    }
    throw new AssertionError(trial.out());
  }

  private Trial run(String washes, String command) {
    Trial trial = Trial.run(washes, (command + PLACE + folder).split(" ", -1));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    return trial;
  }
}
