package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where results go, and that no command loses those of another. */
class FoldersTest {
  @TempDir Path folder;
  private Path out;
  private Path washes;

  @BeforeEach
  void washes() throws IOException {
    out = folder.resolve("out");
    washes =
        Files.writeString(
            folder.resolve("washes.csv"),
            "date,colony,mites,bees\n2026-04-18,Meadow,1,310\n2026-05-20,Meadow,2,295\n"
                + "2026-06-21,Meadow,6,300\n");
  }

  private Bench.Outcome run(String command, String... more) {
    String[] call = {
      command, washes.toString(), "--climate", "temperate", "--colonies", "128", "--out"
    };
    String[] all = Arrays.copyOf(call, call.length + 1 + more.length);
    all[call.length] = out.toString();
    System.arraycopy(more, 0, all, call.length + 1, more.length);
    return Bench.run(all);
  }

  @Test
  void eachCommandHasAFolderOfItsOwn() {
    assertThat(Bench.run("compare", "--help").out().replaceAll("\\s+", " "))
        .contains("Default: broodtide-out/compare.");
    assertThat(Bench.run("windows", "--help").out().replaceAll("\\s+", " "))
        .contains("Default: broodtide-out/windows.");
  }

  @Test
  void anotherCommandsResultsAreLeftAsTheyAre() throws IOException {
    assertThat(run("backtest").code()).isZero();
    byte[] before = Files.readAllBytes(out.resolve("results.json"));
    Bench.Outcome r = run("growth");
    assertThat(r.code()).as("writes no files and has no folder").isEqualTo(2);
    r = run("worth");
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).contains("holds the results of 'backtest'", "--out");
    assertThat(Files.readAllBytes(out.resolve("results.json"))).isEqualTo(before);
    assertThat(run("backtest", "--seed", "2").code()).as("its own are replaced").isZero();
    assertThat(Files.readAllBytes(out.resolve("results.json"))).isNotEqualTo(before);
  }

  @Test
  void nobodysFileOfThatNameIsOverwritten() throws IOException {
    Files.createDirectories(out);
    Files.writeString(out.resolve("results.json"), "[1, 2, 3]");
    Bench.Outcome r = run("forecast");
    assertThat(r.code()).isEqualTo(2);
    assertThat(r.err()).contains("results.json", "was not written by this program", "--out");
    assertThat(out.resolve("results.json")).hasContent("[1, 2, 3]");
  }

  @Test
  void aBacktestIsWrittenAsItIsPrinted() throws IOException {
    Bench.Outcome r = run("backtest", "--json");
    assertThat(r.code()).as(r.err()).isZero();
    assertThat(out.resolve("results.json")).hasContent(r.out());
    JsonNode json = new ObjectMapper().readTree(r.out());
    assertThat(json.path("tool").asText()).isEqualTo("backtest");
    JsonNode held = json.at("/colonies/0/heldOut");
    assertThat(held).hasSize(1);
    assertThat(held.at("/0/date").asText()).isEqualTo("2026-06-21");
    assertThat(held.at("/0/mites").asInt()).isEqualTo(6);
    assertThat(held.at("/0/forecast/q05").asInt())
        .isLessThanOrEqualTo(held.at("/0/forecast/q95").asInt());
    assertThat(json.at("/marks/forecasts").asInt()).isEqualTo(1);
  }
}
