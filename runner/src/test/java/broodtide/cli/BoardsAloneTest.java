package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A hive of which only mites on a board are known. */
@Tag("slow")
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
    for (JsonNode row : rows) {
      boolean board = row.get("colony").asText().equals("B");
      assertThat(row.get("lastCount").isNull()).isEqualTo(board);
      assertThat(row.at("/lastBoard/mites").asInt()).isEqualTo(board ? 36 : 0);
      assertThat(row.at("/lastBoard/perDay").asDouble()).isEqualTo(board ? 12 : 0);
    }
    assertThat(
            run(HEAD + "2025-07-16,A,9,300,,\n2025-07-15,B,36,,board,3\n", "forecast -")
                .out()
                .replaceAll("\\s+", " "))
        .contains("16 Jul 9/300", "15 Jul 36/board", "/board those fallen on a board");
    assertThat(Files.readString(folder.resolve("report.html")))
        .contains("36 mites on a board", "15 Jul, 12 a day");
    assertThat(Files.readString(folder.resolve("sheet.csv")))
        .containsPattern("(?m)^B,2025-07-15,36,,,");
  }

  /** A study reads a table of boards alone as the command does without a study. */
  @Test
  void aStudyWithBoardsAloneSaysWhatTheTableSays() throws IOException {
    Path boards = folder.resolve("counts.csv");
    Files.writeString(boards, HEAD + "2025-07-15,A,36,,board,3\n2025-06-20,A,9,,board,4\n");
    Path study = folder.resolve("study.json");
    Files.writeString(
        study,
        """
        {"title": "Boards", "climate": "temperate", "surroundings": "sparse",
         "start": "2025-06-16", "until": "2026-03-31",
         "colony": {"name": "A"}, "washes": "counts.csv", "plans": [{"name": "wait"}]}
        """);
    String more = " --until 2026-03-31 --colonies 256 --quiet --json --out ";
    JsonNode read = colony("forecast --study " + study + more + folder.resolve("s"));
    JsonNode table =
        colony("forecast " + boards + " --climate temperate" + more + folder.resolve("t"));
    assertThat(read.get("now").asText()).isEqualTo("2025-07-16");
    for (String field : new String[] {"start", "now", "boards", "washes", "decision"}) {
      assertThat(read.get(field)).as(field).isEqualTo(table.get(field));
    }
    assertThat(Files.readString(folder.resolve("s/forecast.svg")))
        .contains("class=\"board\"", "Hollow diamonds: mites on a board")
        .doesNotContain("Dots: washes");
    Files.writeString(study, Files.readString(study).replace("\"A\"", "\"B\""));
    Trial other = Trial.run("", "forecast", "--study", study.toString(), "--out", folder + "/o");
    assertThat(other.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(other.err()).contains("has no counts of colony \"B\"");
  }

  private static JsonNode colony(String command) throws IOException {
    Trial trial = Trial.run("", command.split(" ", -1));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    return JSON.readTree(trial.out()).at("/colonies/0");
  }

  /** A board without a table is read as a table with that board alone. */
  @Test
  void aBoardInHandIsReadAsATableIs() throws IOException {
    Path out = folder.resolve("one");
    JsonNode one =
        colony("wash 36 --days 3 --date 2025-07-15 --climate temperate --json --out " + out);
    Trial table =
        Trial.run(
            HEAD + "2025-07-15,the colony,36,,board,3\n",
            ("forecast - --climate temperate --colonies 1024 --quiet --json --until "
                    + one.get("until").asText()
                    + " --out "
                    + folder.resolve("two"))
                .split(" ", -1));
    JsonNode read = JSON.readTree(table.out()).at("/colonies/0");
    for (String field : new String[] {"start", "now", "boards"}) {
      assertThat(one.get(field)).as(field).isEqualTo(read.get(field));
    }
    assertThat(one.at("/decision/overThresholdToday"))
        .isEqualTo(read.at("/decision/overThresholdToday"));
    assertThat(one.at("/leftAlone/median")).isEqualTo(read.at("/plans/0/infestationAtEnd/median"));
    assertThat(out.resolve("report.html")).content().contains("12 mites a day (36 in 3 days)");
    assertThat(out.resolve("wash.svg")).content().contains("Board of 15 July 2025");
    assertThat(
            Trial.run(
                    "",
                    "wash 36 --days 3 --date 2025-07-15 --climate temperate --threshold gds-france-2026"
                        .split(" ", -1))
                .out()
                .replaceAll("\\s+", " "))
        .contains("over the threshold of 10 a day", "mites per 100 bees (90 % interval");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --days 3 --bees 300       | --bees has no place beside mites on a board
          --days 3 --frame honey    | --frame has no place
          --days 3 --hives 8        | --hives has no place
          --days 3 --method alcohol | --method alcohol has no place beside --days
          --method board            | add --days N
          --days 0                  | --days is 0; expected 1 to 28
          --days 29                 | --days is 29; expected 1 to 28
          """)
  void aBoardThatCannotBeIsRefused(String options, String why) {
    Trial trial =
        Trial.run("", ("wash 24 --date 2025-07-15 --climate temperate " + options).split(" ", -1));
    assertThat(trial.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(trial.err()).contains(why);
    assertThat(trial.out()).isEmpty();
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
