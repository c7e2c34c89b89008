package broodtide.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.cluster.FaultyJob.Fault;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;

/**
 * The job on a real cluster of one master and two workers, of which something goes wrong: its
 * results are whole and those of one machine, or it fails clearly and leaves nothing half-written.
 */
@Tag("cluster")
@TestInstance(Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class LocalClusterIT {
  private static final String SETTINGS = " --climate temperate --colonies 64";

  /** In four yards, so that two are done and two are held when something is killed. */
  private static final int HIVES = 8;

  private static final int PER_YARD = 2;

  private static final int LARGE = 2000;
  private static final List<String> TABLES =
      List.of("sheet.csv", "regions.csv", "region_counts.csv", "rejected.csv");
  private static final Pattern LOST = Pattern.compile("Lost executor \\d+ on ");

  private final Path shared;
  private final LocalCluster cluster;
  private final Path washes;
  private final Path expected;

  private Path folder;
  private Path out;
  private final List<ScriptRun> jobs = new ArrayList<>();

  /** What one machine gives: the program's own sheet, and the job's regions within one process. */
  LocalClusterIT(@TempDir Path shared) throws IOException, InterruptedException {
    this.shared = shared;
    folder = shared;
    out = shared;
    washes = shared.resolve("washes.csv");
    Files.writeString(washes, InventedTable.csv(InventedTable.rows(HIVES, PER_YARD)));
    expected = shared.resolve("expected");
    JobRun.Outcome job =
        JobRun.job(1, "forecast --washes " + washes + SETTINGS + " --out " + expected);
    assertThat(job.code()).as(job.err()).isZero();
    assertThat(expected.resolve("sheet.csv")).hasSameBinaryContentAs(plainSheet(washes, SETTINGS));
    cluster = LocalCluster.start(Files.createDirectory(shared.resolve("cluster")));
  }

  @BeforeEach
  void begin() throws IOException {
    folder = Files.createTempDirectory(shared, "run");
    out = folder.resolve("out");
  }

  @AfterEach
  void noJobRunsOn() throws Exception {
    List<ProcessHandle> left = new ArrayList<>();
    for (ScriptRun job : jobs) {
      left.addAll(job.stop());
    }
    jobs.clear();
    assertThat(left).as("processes that outlive their job").isEmpty();
  }

  @AfterAll
  void nothingRunsOn() throws Exception {
    assertThat(cluster.run().stop()).as("processes that outlive their cluster").isEmpty();
  }

  /** The last one: it costs the cluster a worker. */
  @Test
  @Order(Integer.MAX_VALUE)
  void aWorkerThatIsKilledInTheMiddleCostsNothing() throws Exception {
    ScriptRun job = start(Fault.HELD);
    job.awaitHeld(2);
    cluster.run().kill("worker-1");
    job.letGo();
    assertThat(job.code()).as(job.said()).isZero();
    assertThat(job.log()).containsPattern(LOST);
    isTheSame();
  }

  @Test
  void anExecutorThatRunsOutOfMemoryOnceIsStartedAnew() throws Exception {
    ScriptRun job = start(Fault.MEMORY_ONCE);
    assertThat(job.code()).as(job.said()).isZero();
    assertThat(job.log()).contains("OutOfMemoryError").containsPattern(LOST);
    isTheSame();
  }

  @Test
  void anExecutorThatAlwaysRunsOutOfMemoryEndsTheJob() throws Exception {
    ScriptRun job = start(Fault.MEMORY);
    assertThat(job.code()).as(job.said()).isEqualTo(ClusterMain.FAILED);
    assertThat(job.said())
        .contains("no results were written")
        .containsPattern("Executors lost: [1-9]\\d*; out of memory: [1-9]\\d*\\.")
        .contains("--executor-memory")
        .doesNotContain("\tat ");
    nothingIsWritten();
  }

  @Test
  void aYardThatThrowsEndsTheJobAndIsNamed() throws Exception {
    ScriptRun job = start(Fault.THROWN);
    assertThat(job.code()).as(job.said()).isEqualTo(ClusterMain.FAILED);
    assertThat(job.said())
        .contains("no results were written")
        .contains("colony \"Hive 00003\" of yard \"Yard 001\" cannot be worked out")
        .contains("the bees have flown")
        .doesNotContain("\tat ");
    nothingIsWritten();
  }

  @Test
  void aRunAfterAKilledDriverBeginsAnew() throws Exception {
    ScriptRun killed = start(Fault.HELD);
    killed.awaitHeld(2);
    killed.kill("driver");
    assertThat(killed.code()).isNotZero();
    assertThat(out.resolve(ResultFolder.STAGE)).isNotEmptyDirectory();
    TABLES.forEach(table -> assertThat(out.resolve(table)).doesNotExist());
    assertThat(out.resolve(ResultFolder.MANIFEST)).doesNotExist();

    ScriptRun again = start(Fault.NONE);
    assertThat(again.code()).as(again.said()).isZero();
    again.eachExecutorHadOneSetOfBanks();
    isTheSame();
  }

  /** One yard has nearly all hives; what is said of a hive does not hang on other yards. */
  @Test
  void aYardOfTwoThousandHivesIsDone() throws Exception {
    String brief = SETTINGS + " --until 2026-05-20";
    List<String> small = new ArrayList<>();
    for (String row : InventedTable.firstRound(40, 4)) {
      small.add(row.replace("Hive ", "Small hive ").replace("Yard ", "Small yard "));
    }
    List<String> all = new ArrayList<>(InventedTable.firstRound(LARGE, LARGE));
    all.addAll(small);
    ScriptRun job = start(Fault.NONE, table("all.csv", all), brief);
    assertThat(job.code()).as(job.said()).isZero();
    job.eachExecutorHadOneSetOfBanks();
    assertThat(job.said()).contains("Hives on the sheet: 2040, in yards: 11.");
    List<String> sheet = Files.readAllLines(out.resolve("sheet.csv"));
    assertThat(sheet).hasSize(1 + 2040);
    Path plain = plainSheet(table("small.csv", small), brief + " --decide-on 2026-05-13");
    assertThat(sheet).containsSubsequence(Files.readAllLines(plain));
    assertThat(Files.readString(out.resolve("regions.csv")))
        .contains("Region 0,over-threshold-today,," + (LARGE + 16) + ",");
  }

  private Path table(String name, List<String> rows) throws IOException {
    return Files.writeString(folder.resolve(name), InventedTable.csv(rows));
  }

  private ScriptRun start(Fault fault) throws IOException {
    return start(fault, washes, SETTINGS);
  }

  private ScriptRun start(Fault fault, Path table, String settings) throws IOException {
    ScriptRun job =
        cluster.submit(
            Files.createTempDirectory(folder, "job"),
            fault,
            "forecast --washes " + table + settings + " --tasks 4 --out " + out);
    jobs.add(job);
    return job;
  }

  private Path plainSheet(Path table, String settings) throws IOException {
    Path plain = Files.createTempDirectory(shared, "plain").resolve("out");
    JobRun.Outcome program =
        JobRun.program("forecast " + table + settings + " --quiet --out " + plain);
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
