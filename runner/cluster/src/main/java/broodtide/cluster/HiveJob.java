package broodtide.cluster;

import broodtide.assessment.Caution;
import broodtide.assessment.RegionCount;
import broodtide.forms.Fault;
import broodtide.measure.RefusedException;
import broodtide.results.SheetColumns;
import broodtide.study.RowSieve;
import broodtide.study.RowSieve.Table;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apache.spark.SparkException;
import org.apache.spark.api.java.JavaPairRDD;
import org.apache.spark.api.java.JavaRDD;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.storage.StorageLevel;
import org.jspecify.annotations.Nullable;
import scala.Tuple2;

/**
 * One run of the job: reads the tables, works out yard by yard, and puts sheet, regions and
 * rejected rows into the folder. What was worked out of a yard is staged there before anything is
 * made of it, so that no yard is worked out twice.
 */
final class HiveJob {
  /** Tasks for each core, so that a large yard holds up the others less. */
  private static final int TASKS_PER_CORE = 4;

  private static final String WORK = "work";

  private final SparkSession spark;
  private final Question question;
  private final HiveWork work;
  private final ResultFolder out;
  private final int tasks;

  /**
   * A run.
   *
   * @param tasks parts that the yards are worked on in; 0 for some on each core
   */
  HiveJob(SparkSession spark, Question question, HiveWork work, ResultFolder out, int tasks) {
    this.spark = spark;
    this.question = question;
    this.work = work;
    this.out = out;
    this.tasks = tasks > 0 ? tasks : TASKS_PER_CORE * spark.sparkContext().defaultParallelism();
  }

  /**
   * The colonies as they stand in their tables.
   *
   * @param yards what came of the colonies of each yard
   * @param rejectedCounts rows set aside before yards were made
   * @param rejectedGiven treatments set aside
   * @param counts rows of the table of washes
   * @param given rows of the table of treatments
   * @param used treatments of colonies with washes, and of all colonies
   * @param unused treatments of colonies without washes
   */
  private record Colonies(
      JavaRDD<YardRows> yards,
      JavaRDD<RejectedRow> rejectedCounts,
      JavaRDD<RejectedRow> rejectedGiven,
      long counts,
      long given,
      long used,
      long unused) {}

  /**
   * Runs the job.
   *
   * @param washes the table of washes
   * @param given the table of treatments; null for none
   * @param format how tables are written
   * @param facts what the manifest says besides
   */
  JobCounts run(String washes, @Nullable String given, TableWriter.Format format, ObjectNode facts)
      throws IOException {
    Colonies colonies = colonies(washes, given);
    JavaRDD<Yard> yards =
        colonies.yards().filter(y -> y.yard() != null).map(y -> Objects.requireNonNull(y.yard()));
    YardSurvey all = yards.aggregate(YardSurvey.NONE, YardSurvey::and, YardSurvey::and);
    LocalDate newest = all.newest();
    if (newest == null) {
      throw new RefusedException(nothing(colonies));
    }
    LocalDate decideOn = question.decideOn();
    LocalDate now = decideOn == null ? newest.plusDays(1) : decideOn;
    LocalDate newestBoard = decideOn == null ? all.newestBoard() : null;
    all.climates().forEach(climate -> question.cases(climate, now));
    YardWorker worker = new YardWorker(question, now, newestBoard, work);
    String place = out.staged(WORK).toString();
    JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
    Broadcast<SharedSeasons> seasons = context.broadcast(new SharedSeasons(question.colonies()));
    yards
        .sortBy(YardOrder::of, true, tasks)
        .mapPartitions(part -> worker.each(part, seasons.value().here()))
        .saveAsObjectFile(place);
    JavaRDD<YardResult> results = context.objectFile(place);
    JobCounts counts = write(results, colonies, format);
    out.discard(WORK);
    facts.put("decisionDate", decidedOn(now, newestBoard).toString());
    facts.put("caution", Caution.answer(counts.acid()));
    counts.write(facts.putObject("rows"));
    out.publish(facts);
    return counts;
  }

  private static LocalDate decidedOn(LocalDate now, @Nullable LocalDate board) {
    return board != null && !board.isBefore(now) ? board.plusDays(1) : now;
  }

  private static String nothing(Colonies colonies) {
    List<RejectedRow> first =
        colonies
            .rejectedCounts()
            .union(colonies.yards().flatMap(y -> y.rejected().iterator()))
            .takeOrdered(1);
    return "no row of the table of washes can be used"
        + first.stream()
            .map(
                r ->
                    "; the first fault: "
                        + new Fault(r.file(), r.line(), 0, r.column(), null, r.reason()).text())
            .findFirst()
            .orElse("; it has none");
  }

  private Colonies colonies(String washes, @Nullable String given) {
    InputTables tables = new InputTables(spark, question.today());
    JavaRDD<InputTables.Sifted> counts =
        tables.read(Table.WASHES, "--washes", washes).persist(StorageLevel.MEMORY_AND_DISK());
    InputTables.check(counts);
    JavaRDD<InputTables.Sifted> treatments =
        given == null
            ? JavaSparkContext.fromSparkContext(spark.sparkContext()).emptyRDD()
            : tables
                .read(Table.TREATMENTS, "--given", given)
                .persist(StorageLevel.MEMORY_AND_DISK());
    InputTables.check(treatments);
    List<RejectedRow> rejectedToAll = new ArrayList<>();
    List<InputRow> toAll =
        toAll(InputTables.sound(treatments).filter(ColonyRows::toAll).collect(), rejectedToAll);
    LocalDate today = question.today();
    JavaPairRDD<String, InputRow> byColony =
        InputTables.sound(counts).mapToPair(row -> new Tuple2<>(ColonyRows.colony(row), row));
    JavaPairRDD<String, InputRow> givenByColony =
        InputTables.sound(treatments)
            .filter(row -> !ColonyRows.toAll(row))
            .mapToPair(row -> new Tuple2<>(ColonyRows.colony(row), row));
    JavaRDD<ColonyRows> judged =
        byColony
            .cogroup(givenByColony, tasks)
            .map(
                group ->
                    ColonyRows.of(
                        group._1(), list(group._2()._1()), list(group._2()._2()), toAll, today))
            .persist(StorageLevel.MEMORY_AND_DISK());
    String usual = question.usualClimate();
    JavaRDD<Hive> hives =
        judged.filter(c -> c.hive() != null).map(c -> Objects.requireNonNull(c.hive()));
    JavaRDD<YardRows> yards =
        hives
            .mapToPair(hive -> new Tuple2<>(YardKey.of(hive), hive))
            .groupByKey(tasks)
            .map(group -> YardRows.of(group._1(), list(group._2()), usual))
            .persist(StorageLevel.MEMORY_AND_DISK());
    JavaSparkContext context = JavaSparkContext.fromSparkContext(spark.sparkContext());
    return new Colonies(
        yards,
        InputTables.faulty(counts).union(judged.flatMap(c -> c.rejectedCounts().iterator())),
        InputTables.faulty(treatments)
            .union(judged.flatMap(c -> c.rejectedGiven().iterator()))
            .union(context.parallelize(rejectedToAll, 1)),
        counts.count(),
        treatments.count(),
        toAll.size()
            + hives
                .map(h -> h.given().stream().filter(g -> !ColonyRows.toAll(g)).count())
                .fold(0L, Long::sum),
        judged.map(c -> (long) c.unusedGiven()).fold(0L, Long::sum));
  }

  /** Treatments of all colonies as they can stand beside one another. */
  private List<InputRow> toAll(List<InputRow> rows, List<RejectedRow> rejected) {
    List<InputRow> sorted = rows.stream().sorted(InputRow.BY_PLACE).toList();
    List<Fault> faults =
        RowSieve.treatments(
                ColonyRows.cells(sorted), i -> sorted.get(i - 1).place(), question.today())
            .faults();
    rejected.addAll(ColonyRows.rejected(sorted, faults));
    return ColonyRows.without(sorted, faults);
  }

  private static <T> List<T> list(Iterable<T> all) {
    List<T> out = new ArrayList<>();
    all.forEach(out::add);
    return out;
  }

  private JobCounts write(JavaRDD<YardResult> results, Colonies colonies, TableWriter.Format format)
      throws IOException {
    TableWriter writer = new TableWriter(spark, out, format);
    JavaRDD<RejectedRow> rejectedCounts =
        colonies
            .rejectedCounts()
            .union(colonies.yards().flatMap(y -> y.rejected().iterator()))
            .union(results.flatMap(y -> y.rejected().iterator()));
    YardTally tally = results.aggregate(YardTally.NONE, YardTally::and, YardTally::and);
    JobCounts counts =
        new JobCounts(
            colonies.counts(),
            tally.counts(),
            rejectedCounts.count(),
            colonies.given(),
            colonies.used(),
            colonies.unused(),
            colonies.rejectedGiven().count(),
            tally.hives(),
            tally.yards(),
            tally.acid());
    if (counts.hives() == 0) {
      throw new RefusedException(
          "nothing can be said of any hive; the first reason: "
              + rejectedCounts.min(Comparator.naturalOrder()).reason());
    }
    writer.write(
        "sheet",
        SheetColumns.ALL,
        results
            .flatMap(y -> y.lines().iterator())
            .mapToPair(line -> new Tuple2<>(line.urgency(), line.cells()))
            .sortByKey(true, tasks)
            .values());
    writer.write(
        "rejected",
        RejectedRow.COLUMNS,
        rejectedCounts
            .union(colonies.rejectedGiven())
            .sortBy(row -> row, true, 1)
            .map(RejectedRow::cells));
    JavaRDD<Tuple2<Regions.Key, RegionCount>> regions =
        Regions.of(results, tasks).persist(StorageLevel.MEMORY_AND_DISK());
    writer.write("regions", Regions.SUMMARY, regions.map(r -> Regions.summary(r._1(), r._2())));
    writer.write(
        "region_counts", Regions.CHANCES, regions.flatMap(r -> Regions.chances(r._1(), r._2())));
    return counts;
  }

  /** What went wrong: the yard's own words when it was a yard, otherwise those of the engine. */
  static String reason(Throwable failed) {
    String said = "";
    for (Throwable each = failed; each != null; each = each.getCause()) {
      String message = Optional.ofNullable(each.getMessage()).orElse(each.toString());
      String line = message.lines().findFirst().orElse(each.toString());
      if (each instanceof YardFailed) {
        return line;
      }
      // The engine's outermost words say that the job was aborted, those below say why.
      if (said.isEmpty() || (each instanceof SparkException && line.length() > said.length())) {
        said = line;
      }
    }
    return said;
  }
}
