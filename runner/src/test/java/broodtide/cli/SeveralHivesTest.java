package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is shown of several hives: one sheet, and its figures are those of each hive alone. */
@Tag("slow")
class SeveralHivesTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String COMMON = " --climate cool-maritime --colonies 64";

  @TempDir private Path folder;

  @Test
  void forecastOpensWithTheSheet() throws IOException {
    Trial trial = run("forecast - --quiet", EightHives.csv());
    List<String> lines = trial.out().lines().toList();
    String opening = String.join(" ", lines.subList(0, 2));
    assertThat(opening).containsPattern("of 8 hives (is|are) over the treatment threshold of 3");
    assertThat(opening).containsPattern("on 3 August 2025, between \\d and \\d[.]");
    for (String hive :
        List.of("7", "North wall", "Nuc 3 (split)", "Old oak", "Ost-Ecke", "Red", "The one by")) {
      assertThat(lines.subList(0, 25)).as(hive).anyMatch(line -> line.startsWith(hive + " "));
    }
    assertThat(lines.subList(0, 25)).anyMatch(line -> line.startsWith("\u017dofka"));
    assertThat(lines).allMatch(line -> line.length() <= 80).hasSizeLessThan(50);
    assertThat(lines).noneMatch(line -> line.startsWith("Colony "));
    assertThat(String.join(" ", lines))
        .contains(
            "Wash now, the last count is over 6 weeks old: North wall.",
            "Wash again by 30 August 2025, one count says nothing of growth: 7.");
    assertThat(Files.readString(folder.resolve("forecast/sheet.csv")).lines()).hasSize(9);
    assertThat(folder.resolve("forecast/apiary.svg")).content().contains("Old oak, today: ");
  }

  @Test
  void eachHiveIsAnsweredInFullBelowTheSheetWhereThatIsAsked() {
    String washes = hives(3);
    Trial brief = run("forecast - --quiet", washes);
    Trial full = run("forecast - --quiet --each", washes);
    assertThat(brief.out()).doesNotContain("Colony Hive 1").contains("--each");
    assertThat(full.out())
        .contains("of 3 hives", "Colony Hive 1", "Colony Hive 2", "Colony Hive 3");
  }

  @Test
  void oneHiveIsAnsweredWithoutASheet() throws IOException {
    Trial trial = run("forecast - --quiet --colony Red", EightHives.csv());
    assertThat(trial.out()).startsWith("Colony Red\n").doesNotContain("hives");
    assertThat(folder.resolve("forecast/sheet.csv")).doesNotExist();
    assertThat(JSON.readTree(folder.resolve("forecast/results.json").toFile()).has("sheet"))
        .isFalse();
  }

  @Test
  void twelveHivesStandOnOneSheet() throws IOException {
    Trial trial = run("forecast - --json", hives(12));
    JsonNode rows = JSON.readTree(trial.out()).at("/sheet/rows");
    assertThat(rows).hasSize(12);
    double before = 1;
    boolean over = true;
    for (JsonNode row : rows) {
      boolean now = row.get("overThresholdToday").asDouble() >= 0.5;
      double loss = row.get("winterLoss").asDouble();
      assertThat(over || !now).as("hives that are over come first").isTrue();
      assertThat(loss).isLessThanOrEqualTo(over == now ? before : 1);
      over = now;
      before = loss;
    }
  }

  /** The sheet, the decision of each hive, and the hive asked about alone say the same. */
  @Test
  void figuresAreThoseOfEachHiveAlone() throws IOException {
    String washes = hives(2);
    String plan = " --only --plan 'on 2025-08-20 with thymol'";
    JsonNode together = JSON.readTree(run("compare - --json" + plan, washes).out());
    assertThat(together.at("/sheet/hives").asInt()).isEqualTo(2);
    assertThat(together.at("/sheet/together/0/hivesTreated").asInt()).isZero();
    assertThat(together.at("/sheet/together").findValuesAsText("whom"))
        .startsWith("none")
        .endsWith("all");
    assertThat(together.at("/sheet/washNext").isArray()).isTrue();
    double expected = 0;
    double lost = 0;
    for (JsonNode row : together.at("/sheet/rows")) {
      String hive = row.get("colony").asText();
      JsonNode alone =
          JSON.readTree(run("compare - --json --colony '" + hive + "'" + plan, washes).out())
              .at("/colonies/0");
      JsonNode decision = alone.get("decision");
      assertThat(row.get("overThresholdToday")).isEqualTo(decision.get("overThresholdToday"));
      assertThat(row.get("winterLoss")).isEqualTo(decision.at("/waiting/winterLoss"));
      assertThat(row.get("winterLossWithBest")).isEqualTo(decision.at("/best/winterLoss"));
      assertThat(row.get("best")).isEqualTo(decision.at("/best/plan"));
      assertThat(row.get("from")).isEqualTo(decision.at("/best/from"));
      assertThat(row.get("tied")).isEqualTo(decision.get("tied"));
      assertThat(row.at("/washToday/gain").asDouble()).isBetween(0.0, 1.0);
      assertThat(row.get("judged")).isEqualTo(alone.at("/plans/0/whenRaised/infestation"));
      JsonNode waiting =
          JSON.readTree(run("forecast - --json --colony '" + hive + "'", washes).out())
              .at("/colonies/0/decision");
      assertThat(row.get("winterLoss")).isEqualTo(waiting.at("/waiting/winterLoss"));
      assertThat(row.get("overThresholdToday")).isEqualTo(waiting.get("overThresholdToday"));
      lost += row.get("winterLoss").asDouble();
      expected += row.get("overThresholdToday").asDouble();
    }
    // Each row is rounded to four digits, and so is their sum, which may be above 1.
    double rounded = 2 * 5e-5 + 5e-4;
    assertThat(together.at("/sheet/hivesOverThresholdToday/expected").asDouble())
        .isCloseTo(expected, within(rounded));
    assertThat(together.at("/sheet/together/0/hivesLost/expected").asDouble())
        .isCloseTo(lost, within(rounded));
  }

  /** Invented hives with three counts each. */
  private static String hives(int hives) {
    StringBuilder csv = new StringBuilder("date,colony,mites,bees\n");
    IntStream.rangeClosed(1, hives)
        .forEach(
            i -> {
              csv.append("2025-06-01,Hive " + i + "," + i % 4 + ",300\n");
              csv.append("2025-07-01,Hive " + i + "," + i % 7 + ",300\n");
              csv.append("2025-08-01,Hive " + i + "," + 3 * i % 23 + ",300\n");
            });
    return csv.toString();
  }

  private Trial run(String command, String washes) {
    List<String> words = new ArrayList<>();
    boolean quoted = false;
    for (String part :
        (command + COMMON + " --out " + folder.resolve(command.split(" ", -1)[0])).split("'", -1)) {
      words.addAll(quoted ? List.of(part) : List.of(part.strip().split(" +")));
      quoted = !quoted;
    }
    Trial trial = Trial.run(washes, words.toArray(String[]::new));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    return trial;
  }
}
