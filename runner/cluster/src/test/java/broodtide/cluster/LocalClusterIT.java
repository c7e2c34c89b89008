package broodtide.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.cluster.FaultyJob.Fault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;

/**
 * The job on a real cluster of one master and two workers, of which something goes wrong: its
 * results are whole and those of one machine, or it fails clearly and leaves nothing half-written.
 */
@Tag("cluster")
@Tag("long")
@TestInstance(Lifecycle.PER_CLASS)
class LocalClusterIT {
  private static final String SETTINGS = " --climate temperate --colonies 64";

  private static final int HIVES = 24;
  private static final int PER_YARD = 3;
  private static final List<String> TABLES =
      List.of("sheet.csv", "regions.csv", "region_counts.csv", "rejected.csv");
  private static final Pattern LOST = Pattern.compile("Lost executor \\d+ on ");

  private Path shared;
  private Path washes;
  private Path expected;

  private Path folder;
  private Path out;
  private final List<LocalCluster> started = new ArrayList<>();

  /** What one machine gives: the program's own sheet, and the job's regions within one process. */
  @BeforeAll
  void oneMachine(@TempDir Path ofAll) throws IOException {
    shared = ofAll;
    washes = shared.resolve("washes.csv");
    Files.writeString(washes, InventedTable.csv(InventedTable.rows(HIVES, PER_YARD)));
    expected = shared.resolve("expected");
    JobRun.Outcome job =
        JobRun.job(1, "forecast --washes " + washes + SETTINGS + " --out " + expected);
    assertThat(job.code()).as(job.err()).isZero();
    assertThat(expected.resolve("sheet.csv")).hasSameBinaryContentAs(plainSheet());
  }

  @BeforeEach
  void begin() throws IOException {
    folder = Files.createTempDirectory(shared, "run");
    out = folder.resolve("out");
  }

  @AfterEach
  void nothingRunsOn() throws Exception {
    List<ProcessHandle> left = new ArrayList<>();
    for (LocalCluster cluster : started) {
      left.addAll(cluster.stop());
    }
    started.clear();
    assertThat(left).as("processes that outlive their cluster").isEmpty();
  }

  @Test
  void aWorkerThatIsKilledInTheMiddleCostsNothing() throws Exception {
    LocalCluster cluster = start(Fault.HELD);
    cluster.awaitHeld(2);
    cluster.kill("worker-1");
    cluster.letGo();
    assertThat(cluster.code()).as(cluster.said()).isZero();
    assertThat(cluster.log()).containsPattern(LOST);
    isTheSame();
  }

  @Test
  void anExecutorThatRunsOutOfMemoryOnceIsStartedAnew() throws Exception {
    LocalCluster cluster = start(Fault.MEMORY_ONCE);
    assertThat(cluster.code()).as(cluster.said()).isZero();
    assertThat(cluster.log()).contains("OutOfMemoryError").containsPattern(LOST);
    isTheSame();
  }

  @Test
  void anExecutorThatAlwaysRunsOutOfMemoryEndsTheJob() throws Exception {
    LocalCluster cluster = start(Fault.MEMORY);
    assertThat(cluster.code()).as(cluster.said()).isEqualTo(ClusterMain.FAILED);
    assertThat(cluster.said())
        .contains("no results were written")
        .containsPattern("Executors lost: [1-9]\\d*; out of memory: [1-9]\\d*\\.")
        .contains("--executor-memory")
        .doesNotContain("\tat ");
    nothingIsWritten();
  }

  @Test
  void aYardThatThrowsEndsTheJobAndIsNamed() throws Exception {
    LocalCluster cluster = start(Fault.THROWN);
    assertThat(cluster.code()).as(cluster.said()).isEqualTo(ClusterMain.FAILED);
    assertThat(cluster.said())
        .contains("no results were written")
        .contains("colony \"Hive 00007\" of yard \"Yard 002\" cannot be worked out")
        .contains("the bees have flown")
        .doesNotContain("\tat ");
    nothingIsWritten();
  }

  @Test
  void aRunAfterAKilledDriverBeginsAnew() throws Exception {
    LocalCluster killed = start(Fault.HELD);
    killed.awaitHeld(2);
    killed.kill("driver");
    assertThat(killed.code()).isNotZero();
    assertThat(out.resolve(ResultFolder.STAGE)).isNotEmptyDirectory();
    TABLES.forEach(table -> assertThat(out.resolve(table)).doesNotExist());
    assertThat(out.resolve(ResultFolder.MANIFEST)).doesNotExist();

    LocalCluster again = start(Fault.NONE);
    assertThat(again.code()).as(again.said()).isZero();
    isTheSame();
  }

  private LocalCluster start(Fault fault) throws IOException {
    LocalCluster cluster =
        LocalCluster.start(
            Files.createTempDirectory(folder, "cluster"),
            fault,
            "forecast --washes " + washes + SETTINGS + " --tasks 8 --out " + out);
    started.add(cluster);
    return cluster;
  }

  private Path plainSheet() throws IOException {
    Path plain = Files.createTempDirectory(shared, "plain").resolve("out");
    JobRun.Outcome program =
        JobRun.program("forecast " + washes + SETTINGS + " --quiet --out " + plain);
    assertThat(program.code()).as(program.out()).isZero();
    return plain.resolve("sheet.csv");
  }

  private void isTheSame() {
    for (String table : TABLES) {
      assertThat(out.resolve(table)).hasSameBinaryContentAs(expected.resolve(table));
    }
    assertThat(out.resolve(ResultFolder.MANIFEST)).exists();
    assertThat(out.resolve(ResultFolder.STAGE)).doesNotExist();
  }

  private void nothingIsWritten() {
    if (Files.exists(out)) {
      assertThat(out).isEmptyDirectory();
    }
  }
}
