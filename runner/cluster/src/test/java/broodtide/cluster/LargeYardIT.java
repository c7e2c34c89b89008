package broodtide.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.cluster.FaultyJob.Fault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A table of which one yard has nearly all hives, on a cluster of processes. */
@Tag("cluster")
@Tag("long")
class LargeYardIT {
  private static final String SETTINGS = " --climate temperate --colonies 64 --until 2026-09-15";
  private static final int LARGE = 2000;
  private static final int SMALL = 40;
  private static final int PER_SMALL_YARD = 4;

  @TempDir private Path folder;

  @Test
  void aYardOfTwoThousandHivesIsDone() throws Exception {
    List<String> small = new ArrayList<>();
    for (String row : InventedTable.rows(SMALL, PER_SMALL_YARD)) {
      small.add(row.replace("Hive ", "Small hive ").replace("Yard ", "Small yard "));
    }
    List<String> all = new ArrayList<>(InventedTable.rows(LARGE, LARGE));
    all.addAll(small);
    Path washes = folder.resolve("washes.csv");
    Files.writeString(washes, InventedTable.csv(all));
    Path out = folder.resolve("out");
    LocalCluster cluster =
        LocalCluster.start(
            Files.createDirectory(folder.resolve("cluster")),
            Fault.NONE,
            "forecast --washes " + washes + SETTINGS + " --out " + out);
    try {
      assertThat(cluster.code()).as(cluster.said()).isZero();
    } finally {
      assertThat(cluster.stop()).as("processes that outlive their cluster").isEmpty();
    }
    assertThat(cluster.said())
        .contains("Hives on the sheet: " + (LARGE + SMALL) + ", in yards: 11.");
    List<String> sheet = Files.readAllLines(out.resolve("sheet.csv"));
    assertThat(sheet).hasSize(1 + LARGE + SMALL);
    // What is said of a hive does not hang on hives of other yards.
    assertThat(sheet).containsSubsequence(plainSheet(small));
    assertThat(Files.readString(out.resolve("regions.csv")))
        .contains("Region 0,over-threshold-today,," + (LARGE + 4 * PER_SMALL_YARD) + ",");
  }

  private List<String> plainSheet(List<String> rows) throws IOException {
    Path washes = folder.resolve("small.csv");
    Files.writeString(washes, InventedTable.csv(rows));
    Path plain = folder.resolve("plain");
    JobRun.Outcome program =
        JobRun.program("forecast " + washes + SETTINGS + " --quiet --out " + plain);
    assertThat(program.code()).as(program.out()).isZero();
    return Files.readAllLines(plain.resolve("sheet.csv"));
  }
}
