package broodtide.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.Caution;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.functions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Plans side by side, treatments, regions, and tables in Parquet. */
@Tag("cluster")
class PlansAndParquetTest {
  private static final String PLAN = "on 2026-08-25 with thymol";

  @TempDir private Path folder;

  private List<String> words(String... more) {
    List<String> words =
        new ArrayList<>(
            List.of(
                "compare",
                "--given",
                folder.resolve("given.csv").toString(),
                "--climate",
                "cool-maritime",
                "--colonies",
                "64",
                "--only",
                "--plan",
                PLAN));
    words.addAll(List.of(more));
    return words;
  }

  @Test
  void plansGiveTheSameSheetFromEitherKindOfTable() throws IOException {
    Path csv = folder.resolve("washes.csv");
    Files.writeString(csv, InventedTable.csv(InventedTable.rows(32, 4)));
    Files.writeString(
        folder.resolve("given.csv"),
        """
        date,colony,control
        2026-06-01,Hive 00003,thymol
        2026-07-20,*,drone-comb
        2026-06-01,Nobody,thymol
        """);
    List<String> plain = words(csv.toString(), "--quiet", "--out", path("plain"));
    JobRun.Outcome program = JobRun.program(plain);
    assertThat(program.code()).as(program.out()).isZero();

    List<String> words = words("--washes", csv.toString(), "--out", path("csv"));
    JobRun.Outcome job = JobRun.job(YardWorker.CORE, 2, words.toArray(String[]::new));
    assertThat(job.code()).as(job.err()).isZero();
    assertThat(job.out())
        .contains("Treatments read: 3; used: 2; of colonies without counts: 1; rejected: 0.")
        .contains(Caution.answer(false))
        .doesNotContain(Caution.ACID);
    assertThat(folder.resolve("csv/sheet.csv"))
        .hasSameBinaryContentAs(folder.resolve("plain/sheet.csv"));
    List<String> regions = Files.readAllLines(folder.resolve("csv/regions.csv"));
    assertThat(regions).hasSize(1 + 3 * 3);
    assertThat(regions.get(1)).startsWith("Region 0,over-threshold-today,,12,");
    assertThat(regions.get(2)).startsWith("Region 0,lost-by-spring,thymol 25 Aug,12,");
    assertThat(regions.get(3)).startsWith("Region 0,lost-by-spring,wait,12,");
    theChancesAddUp();

    // the same rows as Parquet, and the results too; then once more over the same folder
    asParquet(csv, folder.resolve("washes"));
    for (int run = 0; run < 2; run++) {
      List<String> again =
          words("--washes", path("washes"), "--format", "parquet", "--out", path("parquet"));
      JobRun.Outcome second = JobRun.job(YardWorker.CORE, 1, again.toArray(String[]::new));
      assertThat(second.code()).as(second.err()).isZero();
    }
    theSameInParquet();
  }

  @Test
  void acidsAreWarnedOfAsByTheProgram() throws IOException {
    Path csv = folder.resolve("washes.csv");
    Files.writeString(csv, InventedTable.HEAD + "\n2026-08-01,Brimful,40,300,Yard,Region,\n");
    String end =
        " --climate cool-maritime --colonies 64 --only --plan on|2026-08-05|with|formic-strips"
            + " --out ";
    JobRun.Outcome program = JobRun.program(spaced("compare " + csv + end + path("plain")));
    assertThat(program.code()).as(program.out()).isZero();
    assertThat(program.out().replaceAll("\\s+", " ")).contains(Caution.ACID);
    String[] words = spaced("compare --washes " + csv + end + path("job")).toArray(String[]::new);
    JobRun.Outcome job = JobRun.job(YardWorker.CORE, 1, words);
    assertThat(job.code()).as(job.err()).isZero();
    assertThat(job.out()).contains(Caution.answer(true));
    assertThat(Files.readString(folder.resolve("job/broodtide-cluster.json")))
        .contains(Caution.answer(true));
  }

  /** Words parted by blanks, with bars for blanks within a word. */
  private static List<String> spaced(String call) {
    return Arrays.stream(call.split(" ")).map(word -> word.replace('|', ' ')).toList();
  }

  private String path(String name) {
    return folder.resolve(name).toString();
  }

  private void theChancesAddUp() throws IOException {
    Map<String, Double> sums =
        Files.readAllLines(folder.resolve("csv/region_counts.csv")).stream()
            .skip(1)
            .map(line -> line.split(","))
            .collect(
                Collectors.groupingBy(
                    c -> c[0] + c[1] + c[2],
                    Collectors.summingDouble(c -> Double.parseDouble(c[4]))));
    assertThat(sums).hasSize(9);
    // Each has two digits, so is off by a twentieth of itself at most.
    assertThat(sums.values()).allMatch(sum -> Math.abs(sum - 1) < 0.05);
  }

  private void asParquet(Path csv, Path to) throws IOException {
    try (SparkSession spark = session()) {
      spark
          .read()
          .option("header", true)
          .csv(csv.toString())
          .withColumn("date", functions.col("date").cast("date"))
          .withColumn("mites", functions.col("mites").cast("int"))
          .coalesce(1)
          .write()
          .parquet(to.toString());
    }
  }

  private void theSameInParquet() throws IOException {
    List<String> lines = Files.readAllLines(folder.resolve("csv/sheet.csv"));
    try (SparkSession spark = session()) {
      Dataset<Row> sheet = spark.read().parquet(path("parquet/sheet"));
      assertThat(String.join(",", sheet.columns())).isEqualTo(lines.get(0));
      List<Row> rows = sheet.collectAsList();
      assertThat(rows).hasSize(32);
      for (Row row : rows) {
        String line = "(?s)" + row.getString(0) + "," + row.<LocalDate>getAs("last_count") + ",.*";
        assertThat(lines).anyMatch(l -> l.matches(line));
      }
      assertThat(spark.read().parquet(path("parquet/regions")).count()).isEqualTo(9);
      assertThat(spark.read().parquet(path("parquet/rejected")).count()).isZero();
    }
  }

  private static SparkSession session() {
    return SparkSession.builder()
        .master("local[1]")
        .config("spark.ui.enabled", "false")
        .config("spark.driver.host", "127.0.0.1")
        .config("spark.driver.bindAddress", "127.0.0.1")
        .config("spark.sql.datetime.java8API.enabled", "true")
        .getOrCreate();
  }
}
