package broodtide.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The job's sheet has the bytes of the program's, and no row is lost. */
@Tag("cluster")
class SameSheetTest {
  private static final String SETTINGS = " --climate temperate --colonies 64";

  @TempDir private Path folder;

  @Test
  void theSheetOfAForecastHasTheSameBytes() throws IOException {
    List<String> rows = new ArrayList<>(InventedTable.rows(60, 7));
    Path washes = folder.resolve("washes.csv");
    Files.writeString(washes, InventedTable.csv(rows));
    JobRun.Outcome plain =
        JobRun.program(
            "forecast " + washes + SETTINGS + " --quiet --out " + folder.resolve("plain"));
    assertThat(plain.code()).as(plain.out()).isZero();
    byte[] sheet = Files.readAllBytes(folder.resolve("plain/sheet.csv"));

    JobRun.Outcome one =
        JobRun.job(1, "forecast --washes " + washes + SETTINGS + " --out " + folder.resolve("one"));
    assertThat(one.code()).as(one.err()).isZero();
    assertThat(one.out()).contains("Counts read: 180; used: 180; rejected: 0.");
    assertThat(folder.resolve("one/sheet.csv")).hasBinaryContent(sheet);

    // other threads and parts, several files, rows in another order, and bad ones among them
    Collections.shuffle(rows, new Random(3));
    rows.add(20, "2026-13-40,Hive 00001,3,300,Yard 000,,");
    rows.add(40, "2026-06-02,Hive 00002,400,300,Yard 000,,");
    rows.add(90, rows.get(100));
    rows.add("2026-06-02,Hive 00003,4,300,Yard 999,,");
    rows.add("2026-06-02,Stranger,4,300,Yard 000,Region 7,");
    rows.add("2026-06-02,Traveller,4,300,Elsewhere,,moon");
    Path several = Files.createDirectory(folder.resolve("several"));
    Files.writeString(several.resolve("a.csv"), InventedTable.csv(rows.subList(0, 95)));
    Files.writeString(several.resolve("b.csv"), InventedTable.csv(rows.subList(95, rows.size())));
    JobRun.Outcome two =
        JobRun.job(
            2,
            "forecast --washes "
                + several
                + SETTINGS
                + " --tasks 5 --out "
                + folder.resolve("two"));
    assertThat(two.code()).as(two.err()).isZero();
    assertThat(two.out()).contains("Counts read: 186; used: 180; rejected: 6.");
    assertThat(folder.resolve("two/sheet.csv")).hasBinaryContent(sheet);
    assertThat(folder.resolve("two/regions.csv"))
        .hasSameBinaryContentAs(folder.resolve("one/regions.csv"));
    List<String> rejected = Files.readAllLines(folder.resolve("two/rejected.csv"));
    assertThat(rejected).hasSize(7);
    assertThat(rejected.get(0)).isEqualTo("file,line,column,value,reason");
    assertThat(rejected.get(1)).contains("a.csv,22,date,2026-13-40,");
    assertThat(rejected.get(2)).contains("a.csv,42,mites,400,").contains("0 to 300");
    assertThat(String.join("\n", rejected))
        .contains("the row is the same as line ")
        .contains("yard,Yard 999,")
        .contains("region,Region 7,")
        .contains("climate,moon,");
    JsonNode manifest =
        new ObjectMapper().readTree(folder.resolve("two/broodtide-cluster.json").toFile());
    assertThat(manifest.at("/rows/countsRead").asInt()).isEqualTo(186);
    assertThat(manifest.at("/seed").asInt()).isEqualTo(1);
  }

  @Test
  void whatCannotBeUsedIsRefusedAndNothingIsWritten() throws IOException {
    Path none = folder.resolve("none.csv");
    Files.writeString(none, "colony,mites\nA,3\n");
    Path washes = folder.resolve("washes.csv");
    Files.writeString(washes, InventedTable.csv(InventedTable.rows(2, 2)));
    Path out = folder.resolve("out");
    JobRun.Outcome noTable =
        JobRun.job(1, "forecast --washes " + none + SETTINGS + " --out " + out);
    assertThat(noTable.code()).isEqualTo(ClusterMain.BAD_INPUT);
    assertThat(noTable.err()).contains("missing date, bees").doesNotContain("\tat ");
    assertThat(out).doesNotExist();

    Files.createDirectories(out);
    Files.writeString(out.resolve("mine.txt"), "mine");
    JobRun.Outcome taken =
        JobRun.job(1, "forecast --washes " + washes + SETTINGS + " --out " + out);
    assertThat(taken.code()).isEqualTo(ClusterMain.BAD_INPUT);
    assertThat(taken.err()).contains("it holds mine.txt, which this job did not write");
    assertThat(out.resolve("mine.txt")).hasContent("mine");
  }
}
