package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** All hives of an apiary are decided on one day, which the answer says. */
@Tag("slow")
class DecisionDateTest {
  private static final String WASHES =
      """
      date,colony,mites,bees
      2025-05-04,North,1,300
      2025-07-20,North,5,300
      2025-05-04,South,2,300
      """;

  @TempDir private Path folder = Path.of("");

  private Trial run(String command, String... more) {
    List<String> call = new ArrayList<>(List.of(command, "-", "--climate=temperate"));
    if (!command.equals("growth")) {
      call.addAll(List.of("--colonies=64", "--quiet", "--out=" + folder.resolve(command)));
    }
    call.addAll(List.of(more));
    return Trial.run(WASHES, call.toArray(String[]::new));
  }

  private static List<String> days(Trial trial) throws IOException {
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    JsonNode colonies = new ObjectMapper().readTree(trial.out()).get("colonies");
    List<String> days = new ArrayList<>();
    colonies.forEach(c -> days.add(c.get("now").asText()));
    return days;
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\s+", " ");
  }

  @Test
  void theDayAfterTheNewestWashOfAll() throws IOException {
    assertThat(days(run("forecast", "--json"))).containsExactly("2025-07-21", "2025-07-21");
    assertThat(days(run("worth", "--json"))).containsExactly("2025-07-21", "2025-07-21");
    assertThat(oneLine(run("forecast").out()))
        .contains(
            "Decision date: 21 July 2025, the day after the newest wash or treatment; --decide-on"
                + " changes it.");
  }

  @Test
  void theFirstLineIsEnoughForAHiveThatWasWashedTheDayBefore() throws IOException {
    Trial alone = run("forecast", "--colony=North");
    assertThat(oneLine(alone.out())).contains("On 21 July 2025: ").doesNotContain("Decision date");
    JsonNode notes = new ObjectMapper().readTree(run("forecast", "--json").out()).get("notes");
    assertThat(notes.toString()).contains("Decision date: 21 July 2025", "neighbouring colonies");
  }

  @Test
  void neighboursAreNamedWhereTheyMoveTheAnswer() {
    String few = "Few neighbouring colonies are assumed; --neighbours changes that.";
    for (String hive : List.of("North", "South")) {
      String said = oneLine(run("forecast", "--colony=" + hive).out());
      assertThat(said.contains(few)).as(said).isEqualTo(said.contains("Reinvasion, which"));
    }
    assertThat(oneLine(run("growth").out())).doesNotContain("neighbouring");
    assertThat(oneLine(run("windows", "--colony=North").out())).doesNotContain("neighbouring");
  }

  @Test
  void alsoOfAHiveTakenAlone() throws IOException {
    assertThat(days(run("forecast", "--json", "--colony=South"))).containsExactly("2025-07-21");
    Path given =
        Files.writeString(
            folder.resolve("given.csv"), "date,colony,control\n2025-08-02,North,thymol\n");
    assertThat(days(run("forecast", "--json", "--colony=South", "--given=" + given)))
        .containsExactly("2025-08-03");
  }

  @Test
  void oneOfTheBeekeepersOwn() throws IOException {
    assertThat(days(run("windows", "--json", "--decide-on=2025-08-10")))
        .containsExactly("2025-08-10", "2025-08-10");
    assertThat(days(run("forecast", "--json", "--colony=South", "--decide-on=2025-06-01")))
        .containsExactly("2025-06-01");
    Trial said = run("forecast", "--decide-on=2025-08-10");
    assertThat(oneLine(said.out())).contains("Decision date: 10 August 2025, as --decide-on says.");
  }

  @Test
  void aStudyIsDecidedOnADayOfOnesOwn() throws IOException {
    String[] call = {
      "forecast", "--study=larkmeadow", "--colonies=64", "--json", "--out=" + folder.resolve("out")
    };
    assertThat(days(Trial.run("", call))).containsExactly("2025-07-27");
    String[] later = Arrays.copyOf(call, call.length + 1);
    later[call.length] = "--decide-on=2025-08-15";
    assertThat(days(Trial.run("", later))).containsExactly("2025-08-15");
  }

  @Test
  void notBeforeTheLastWash() {
    Trial early = run("forecast", "--decide-on=2025-06-01");
    assertThat(early.code()).isEqualTo(Main.BAD_INPUT);
    assertThat(oneLine(early.err()))
        .contains(
            "--decide-on is 2025-06-01; expected 2025-07-20 or later, the day of the last wash of"
                + " colony \"North\"");
    assertThat(folder.resolve("forecast")).doesNotExist();
  }

  @Test
  void commandsThatLookBackHaveNone() {
    for (String command : List.of("growth", "backtest")) {
      Trial trial = run(command, "--decide-on=2025-08-10");
      assertThat(trial.code()).isEqualTo(Main.BAD_INPUT);
      assertThat(oneLine(trial.err())).contains("--decide-on has no place in '" + command + "'");
    }
  }
}
