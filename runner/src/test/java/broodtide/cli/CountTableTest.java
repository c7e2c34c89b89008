package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.wash.Infestation;
import broodtide.wash.RatePosterior;
import broodtide.wash.Wash;
import broodtide.words.Plain;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code wash} reads a table of counts as a sheet. */
class CountTableTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;

  @Test
  void theHiveLikeliestOverTheThresholdStandsFirst() {
    Trial trial = run(EightHives.csv(), "wash - --climate cool-maritime");
    List<String> lines = trial.out().lines().toList();
    assertThat(String.join(" ", lines.subList(0, 2)))
        .startsWith("About 1 of 4 hives is over the treatment threshold of 3")
        .containsPattern(
            "on 2 August 2025, between [01] and [23], judged from these counts only[.]");
    assertThat(lines.subList(3, 8).stream().map(l -> l.split(" {2,}")[0]))
        .containsExactly("Hive", "Old oak", "\u017dofka <b>&</b>", "7", "Ost-Ecke \"Lise\"");
    assertThat(trial.out())
        .contains("half cup", "The counts of 2 August 2025 alone are shown", "--date");
  }

  @Test
  void aHiveWashedTwiceIsOneHive() throws IOException {
    String table =
        "date,colony,mites,bees\n2025-08-02,A,20,300\n2025-08-02,A,22,300\n2025-08-02,B,1,300\n";
    Trial trial = run(table, "wash - --climate cool-maritime");
    assertThat(trial.out().replaceAll("\\s+", " "))
        .startsWith("About 1 of 2 hives is over the treatment threshold")
        .contains("Counted more than once on that day: A.");
    JsonNode counts = JSON.readTree(run(table, "wash - --climate boreal --json").out());
    assertThat(counts.at("/counts/hives").asInt()).isEqualTo(2);
    assertThat(counts.at("/counts/rows")).hasSize(3);
    assertThat(counts.at("/counts/hivesOverThreshold/q95").asInt()).isEqualTo(1);
  }

  /** The figure at which pictures of a season draw the dot of a count is printed beside it. */
  @Test
  void theColonyIsSaidAsItsDotIsDrawn() {
    Wash wash = Wash.of(LocalDate.of(2025, 7, 20), "Meadow", 9, 300);
    RatePosterior colony = Infestation.of(wash).inColony();
    Trial trial = run("", "wash 9 --bees 300 --date 2025-07-20 --climate temperate");
    assertThat(trial.out().replaceAll("\\s+", " "))
        .contains("9 mites in 300 bees is 3.0 per 100")
        .contains("the colony has about " + Plain.level(colony.median()) + " (");
  }

  /** Every row says what the count says that is asked about alone. */
  @Test
  void figuresAreThoseOfEachCountAlone() throws IOException {
    Trial table = run(EightHives.csv(), "wash - --climate cool-maritime --json");
    JsonNode counts = JSON.readTree(table.out()).get("counts");
    assertThat(counts.get("hives").asInt()).isEqualTo(4);
    JsonNode over = counts.get("hivesOverThreshold");
    assertThat(over.get("expected").asDouble())
        .isCloseTo(counts.get("expectedOverThreshold").asDouble(), within(1e-5));
    assertThat(over.get("q05").asInt()).isLessThanOrEqualTo(over.get("median").asInt());
    for (JsonNode row : counts.get("rows")) {
      JsonNode count = row.get("count");
      String bees = count.get("beesAssumed").asBoolean() ? "" : " --bees " + count.get("bees");
      Trial alone =
          run(
              "",
              "wash "
                  + count.get("mites")
                  + bees
                  + " --date 2025-08-02 --climate cool-maritime --json");
      assertThat(count).isEqualTo(JSON.readTree(alone.out()).at("/colonies/0/count"));
    }
  }

  @Test
  void anotherDayCanBeChosen() {
    Trial trial = run(EightHives.csv(), "wash - --climate cool-maritime --date 2025-06-14");
    assertThat(trial.out()).contains("4 hives", "Red", "12").doesNotContain("North wall");
    refused(
        EightHives.csv(),
        "wash - --climate cool-maritime --date 2025-06-15",
        "--date: 2025-06-15 has no count in -; its newest counts are of 2025-08-02");
  }

  @Test
  void faultsAreThoseOfTheUsualReader() throws IOException {
    Path table = folder.resolve("counts.csv");
    Files.writeString(table, "date,colony,mites,bees\n2025-08-02,A,400,300\n2025-08-02,B,x,300\n");
    refused("", "wash " + table + " --climate boreal", "counts.csv, line 2", "0 to 300", "line 3");
    refused("", "wash missing.csv --climate boreal", "missing.csv: there is no such file");
    refused("", "wash x --climate boreal", "MITES: 'x' is no whole number");
    refused("", "wash 7.5 --climate boreal", "MITES: '7.5' is no whole number");
    refused("", "wash 7 --climate boreal", "Missing required option: '--date=DATE'");
    refused(EightHives.csv(), "wash - --climate boreal --bees 300", "--bees has no place beside");
  }

  @Test
  void writesPageAndPicture() {
    run(EightHives.csv(), "wash - --climate cool-maritime --out " + folder);
    assertThat(folder.resolve("report.html")).content().contains("About 1 of 4 hives", "Old oak");
    assertThat(folder.resolve("wash.svg")).content().contains("Old oak: 4.7");
    assertThat(folder.resolve("results.json")).content().contains("\"counts\"");
  }

  private static Trial run(String input, String command) {
    Trial trial = Trial.run(input, command.split(" ", -1));
    assertThat(trial.code()).as(trial.err()).isEqualTo(Main.OK);
    return trial;
  }

  private static void refused(String input, String command, String... why) {
    Trial trial = Trial.run(input, command.split(" ", -1));
    assertThat(trial.code()).as(trial.out()).isEqualTo(Main.BAD_INPUT);
    assertThat(trial.err()).contains(why);
    assertThat(trial.out()).isEmpty();
  }
}
