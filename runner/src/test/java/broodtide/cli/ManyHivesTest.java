package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.files.Journal;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** More hives than are drawn: the same figures, hive by hive, whatever stops the run. */
class ManyHivesTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int HIVES = 33;
  private static final String SETTINGS = " --climate temperate --colonies 64 --quiet";

  /** Kills of a run before it may end; more by -Dkills=10. */
  private static final int KILLS = Integer.getInteger("kills", 3);

  @TempDir private Path folder;

  @Tag("slow")
  @Test
  void hivesAreWrittenOneByOneWithTheFiguresOfEachAlone() throws IOException {
    String csv = washes(HIVES, 0);
    Bench.Outcome brief = run("forecast - --threads 1", "brief", csv);
    assertThat(brief.err()).isEmpty();
    assertThat(brief.out().lines())
        .contains("The other 3 hives stand in sheet.csv.")
        .allMatch(line -> line.length() <= 80)
        .hasSizeLessThan(60);
    try (Stream<Path> files = Files.list(folder.resolve("brief"))) {
      assertThat(files.map(f -> f.getFileName().toString()))
          .containsExactlyInAnyOrder("sheet.csv", "results.jsonl", "broodtide-files.json");
    }
    List<String> lines = Files.readAllLines(folder.resolve("brief/results.jsonl"));
    assertThat(lines).hasSize(HIVES);
    JsonNode alone = JSON.readTree(run("forecast - --json --colony Hive_07", "alone", csv).out());
    assertThat(JSON.readTree(lines.get(7))).isEqualTo(alone.at("/colonies/0"));

    // on other threads, from rows in another order, and as one file
    String json = run("forecast - --json --threads 3", "json", washes(HIVES, 7)).out();
    for (String file : List.of("sheet.csv", "results.jsonl")) {
      assertThat(folder.resolve("json").resolve(file))
          .hasSameBinaryContentAs(folder.resolve("brief").resolve(file));
    }
    JsonNode all = JSON.readTree(json);
    assertThat(all.at("/sheet/rows")).hasSize(HIVES);
    assertThat(all.at("/format")).isEqualTo(alone.at("/format"));
    for (int i = 0; i < HIVES; i++) {
      assertThat(all.at("/colonies/" + i)).isEqualTo(JSON.readTree(lines.get(i)));
    }
    assertThat(json)
        .endsWith("}\n")
        .contains("\n  \"colonies\" : [ {\n    \"colony\" : \"Hive_00\"");
  }

  @Test
  void whatIsFoundOfAHiveIsReadAsItWasPutAway() {
    byte[] row = {4, 0, 2};
    try (Journal journal = Journal.open(folder, new byte[] {1}, false)) {
      journal.add("Odd one", HiveEntry.refused("nothing fits").bytes());
      journal.add(
          "Žofka", new HiveEntry(Optional.empty(), List.of("So.", ""), row, "{}\n").bytes());
      assertThat(HiveEntry.Kept.in(journal, "Odd one").spoken().refused()).contains("nothing fits");
      HiveEntry.Kept kept = HiveEntry.Kept.in(journal, "Žofka");
      assertThat(kept.spoken().refused()).isEmpty();
      assertThat(kept.spoken().said()).containsExactly("So.", "");
      assertThat(kept.rowBytes()).isEqualTo(row);
      assertThat(kept.lineBytes()).asString(StandardCharsets.UTF_8).isEqualTo("{}\n");
    }
  }

  @Test
  void resumeIsForManyHives() {
    assertThat(run("forecast - --resume", "few", washes(2, 0)).err())
        .contains("--resume is for more than 30 hives");
    assertThat(folder.resolve("few")).doesNotExist();
  }

  @Tag("slow")
  @Test
  void aRunThatIsKilledGoesOnAndEndsWithTheSameBytes() throws Exception {
    Path table = folder.resolve("washes.csv");
    Files.writeString(table, washes(HIVES, 0));
    String call = "forecast " + table + SETTINGS + " --out ";
    assertThat(Bench.run((call + folder.resolve("whole")).split(" ")).code()).isZero();
    long all = Files.size(folder.resolve("whole/results.jsonl"));
    Random random = new Random(5);
    Path killed = folder.resolve("killed");
    Path journal = killed.resolve(".broodtide-hives");
    for (int k = 1; k <= KILLS; k++) {
      long enough = (long) (all * (k - random.nextDouble()) / (KILLS + 1));
      Process p = start(call + killed + " --resume");
      long begun = System.nanoTime();
      while (p.isAlive()
          && (!Files.exists(journal) || Files.size(journal) < enough)
          && System.nanoTime() - begun < TimeUnit.MINUTES.toNanos(2)) {
        Thread.sleep(5);
      }
      p.destroyForcibly().waitFor();
      assertThat(killed.resolve("results.jsonl")).doesNotExist();
    }
    assertThat(Files.size(journal)).isPositive();
    assertThat(Bench.run((call + killed + " --resume").split(" ")).code()).isZero();
    assertThat(journal).doesNotExist();
    for (String file : List.of("sheet.csv", "results.jsonl", "broodtide-files.json")) {
      assertThat(killed.resolve(file))
          .hasSameBinaryContentAs(folder.resolve("whole").resolve(file));
    }
  }

  /** Ten times as many hives in the same heap, which held their seasons it would not. */
  @Tag("slow")
  @Test
  void memoryDoesNotGrowWithHives() throws Exception {
    for (int hives : List.of(40, 400)) {
      Path table = folder.resolve(hives + ".csv");
      Files.writeString(table, washes(hives, 0));
      Process p =
          start(
              "forecast "
                  + table
                  + SETTINGS
                  + " --threads 2 --out "
                  + folder.resolve("out" + hives),
              "-Xmx48m");
      assertThat(p.waitFor(5, TimeUnit.MINUTES)).isTrue();
      assertThat(p.exitValue()).as("%d hives", hives).isZero();
      assertThat(Files.readAllLines(folder.resolve("out" + hives).resolve("results.jsonl")))
          .hasSize(hives);
    }
  }

  @Test
  void progressSaysHowFastAndHowLong() {
    assertThat(HiveProgress.text(12, 0, 988, 0.5)).isEqualTo("12 of 1,000 hives, 0.0 a second");
    assertThat(HiveProgress.text(100, 300, 900, 30))
        .isEqualTo("400 of 1,000 hives, 10 a second, about 1 min left");
    assertThat(HiveProgress.text(0, 300, 10_000, 100))
        .isEqualTo("300 of 10,000 hives, 3.0 a second, about 54 min left");
    assertThat(HiveProgress.text(0, 20, 40, 4))
        .isEqualTo("20 of 40 hives, 5.0 a second, about 4 s left");
  }

  private Process start(String call, String... java) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of(java));
    command.addAll(
        List.of(
            "-XX:+UseSerialGC",
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path")));
    command.add(Main.class.getName());
    command.addAll(List.of(call.split(" ")));
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("said-" + command.hashCode()).toFile())
        .start();
  }

  private Bench.Outcome run(String call, String out, String csv) {
    String all = call + SETTINGS + " --out " + folder.resolve(out);
    return Bench.fed(csv, all.split(" "));
  }

  /** Invented hives in two yards; a seed other than 0 shuffles their rows. */
  private static String washes(int hives, long seed) {
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < hives; i++) {
      rows.add("2026-06-27,Hive_%02d,%d,300".formatted(i, i % 5));
      rows.add("2026-07-25,Hive_%02d,%d,300".formatted(i, i % 11 + i % 5));
    }
    if (seed != 0) {
      Collections.shuffle(rows, new Random(seed));
    }
    return "date,colony,mites,bees\n" + String.join("\n", rows) + "\n";
  }
}
