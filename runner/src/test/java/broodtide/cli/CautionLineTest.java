package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.Caution;
import com.fasterxml.jackson.databind.ObjectMapper;
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
import org.junit.jupiter.params.provider.ValueSource;

/** Every answer about mites ends by saying who decides, in words and in JSON. */
@Tag("slow")
class CautionLineTest {
  private static final String WASHES =
      """
      date,colony,mites,bees
      2025-06-10,Left,3,310
      2025-07-08,Left,6,295
      2025-08-09,Left,14,300
      """;

  @TempDir private Path folder;

  private Trial run(String call) {
    return Trial.run(WASHES, call.replace("OUT", folder.toString()).split(" "));
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\s+", " ");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "wash 7 --date 2025-08-20 --climate temperate",
        "growth - --climate temperate",
        "forecast - --climate temperate --colonies 64 --quiet --out OUT",
        "compare - --climate temperate --colonies 64 --quiet --out OUT",
        "backtest - --climate temperate --colonies 64 --quiet --out OUT",
        "demo --colonies 64 --quiet --out OUT"
      })
  void answersAndJsonSayWhoDecides(String call) throws IOException {
    Trial words = run(call);
    assertThat(words.code()).as(words.err()).isEqualTo(Main.OK);
    assertThat(oneLine(words.out())).containsOnlyOnce(Caution.ANSWER);
    Trial json = run(call + " --json");
    assertThat(json.code()).as(json.err()).isEqualTo(Main.OK);
    assertThat(new ObjectMapper().readTree(json.out()).path("caution").asText())
        .contains("Estimates, not instructions", "veterinarian decide");
  }

  @Test
  void alcoholIsCautionedWhereItIsUsed() {
    String wash = "wash 7 --date 2025-08-20 --climate temperate";
    assertThat(oneLine(run(wash).out())).contains(Caution.ALCOHOL);
    assertThat(oneLine(run(wash + " --method alcohol-three-rinses").out()))
        .contains(Caution.ALCOHOL);
    assertThat(oneLine(run(wash + " --method powdered-sugar").out()))
        .doesNotContain(Caution.ALCOHOL);
  }

  /** Wherever a plan with an acid is compared or named, and nowhere else. */
  @ParameterizedTest
  @CsvSource({
    "compare - --climate temperate --colonies 64 --quiet --out OUT, true",
    "compare - --climate temperate --colonies 64 --quiet --out OUT --only --plan"
        + " on_2025-08-20_with_thymol, false",
    "forecast - --climate temperate --colonies 64 --quiet --out OUT, false",
    "windows - --climate temperate --colonies 64 --quiet --out OUT --controls formic-slow, true",
    "windows - --climate temperate --colonies 64 --quiet --out OUT --controls thymol, false",
    "rules - --climate temperate --colonies 64 --quiet --out OUT --rule 2_with_lactic-spray, true"
  })
  void acidIsCautionedWhereAPlanUsesOne(String call, boolean acid) throws IOException {
    String[] words = call.replace("OUT", folder.toString()).split(" ");
    for (int i = 0; i < words.length; i++) {
      words[i] = words[i].replace('_', ' ');
    }
    Trial said = Trial.run(WASHES, words);
    assertThat(said.code()).as(said.err()).isEqualTo(Main.OK);
    assertThat(oneLine(said.out()).contains(Caution.ACID)).isEqualTo(acid);
    String json = Files.readString(folder.resolve("results.json"));
    assertThat(new ObjectMapper().readTree(json).path("caution").asText().contains(Caution.ACID))
        .isEqualTo(acid);
  }

  @Test
  void theSheetSaysItOfTheHivesThatItConcerns() throws IOException {
    StringBuilder many = new StringBuilder("date,colony,mites,bees\n");
    for (String hive : List.of("Left", "Right")) {
      many.append("2025-06-10,").append(hive).append(",3,310\n");
      many.append("2025-08-09,").append(hive).append(",14,300\n");
    }
    String call =
        "compare - --climate temperate --colonies 64 --quiet --only --out " + folder + " --plan";
    List<String> words = new ArrayList<>(List.of(call.split(" ")));
    words.add("on 2025-08-20 with formic-slow");
    Trial said = Trial.run(many.toString(), words.toArray(String[]::new));
    assertThat(said.code()).as(said.err()).isEqualTo(Main.OK);
    assertThat(oneLine(said.out())).containsOnlyOnce(Caution.ACID);
    List<String> sheet = Files.readAllLines(folder.resolve("sheet.csv"));
    assertThat(sheet.get(0)).contains("acid_caution");
    assertThat(sheet.subList(1, 3)).allMatch(row -> row.contains(Caution.ACID));
  }

  /** Formic acid strips may be on with supers only where their label says so. */
  @Test
  void windowsAndPlansSayWhereTheLabelDecides() {
    String early = WASHES.substring(0, WASHES.indexOf("2025-07-08"));
    Trial windows =
        Trial.run(
            early,
            ("windows - --climate temperate --colonies 64 --quiet --to 2025-09-30"
                    + " --controls formic-strips,thymol --out "
                    + folder)
                .split(" "));
    assertThat(windows.code()).as(windows.err()).isEqualTo(Main.OK);
    assertThat(oneLine(windows.out()))
        .contains("Note: formic-strips begun 11 Jun to ")
        .doesNotContain("Note: thymol");
    Trial plan =
        Trial.run(
            early,
            "compare",
            "-",
            "--climate",
            "temperate",
            "--colonies",
            "64",
            "--quiet",
            "--out",
            folder.resolve("plans").toString(),
            "--plan",
            "on 2025-06-20 with formic-strips",
            "--plan",
            "on 2025-08-20 with formic-strips");
    assertThat(plan.code()).as(plan.err()).isEqualTo(Main.OK);
    assertThat(oneLine(plan.out()))
        .containsPattern(
            "Note: Formic acid, given off within a week from 2025-06-20: supers are usually")
        .doesNotContain("from 2025-08-20: supers");
  }
}
