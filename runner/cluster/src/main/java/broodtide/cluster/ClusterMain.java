package broodtide.cluster;

import broodtide.assessment.Caution;
import broodtide.catalog.Catalog;
import broodtide.catalog.ResistantMites;
import broodtide.catalog.Surroundings;
import broodtide.fit.Priors;
import broodtide.measure.OutOfRange;
import broodtide.measure.RefusedException;
import broodtide.season.YearSpan;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintStream;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import org.apache.spark.SparkException;
import org.apache.spark.sql.SparkSession;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The job's entry, for {@code spark-submit}. */
@Command(
    name = "broodtide-cluster",
    mixinStandardHelpOptions = true,
    description = {
      "Works out all hives of a table on a Spark cluster: the sheet of 'broodtide forecast' or"
          + " 'broodtide compare', the counts of each region, and the rows that were rejected."
    })
public final class ClusterMain implements Callable<Integer> {
  /** The job was carried out. */
  static final int OK = 0;

  /** The cluster or the program failed. */
  static final int FAILED = 1;

  /** The input is faulty, or the usage invalid. */
  static final int BAD_INPUT = 2;

  private static final int FEWEST = 64;
  private static final int MOST = 262_144;

  /** What is looked at. */
  enum Asked {
    /** What happens if one waits. */
    forecast,
    /** Plans side by side. */
    compare
  }

  private final HiveWork work;
  private final PrintStream out;
  private final PrintStream err;
  private final LocalDate today;
  private final LostExecutors lost = new LostExecutors();

  @Parameters(index = "0", paramLabel = "QUESTION", description = "${COMPLETION-CANDIDATES}.")
  private @Nullable Asked asked;

  @Option(
      names = "--washes",
      required = true,
      paramLabel = "PATH",
      description =
          "Table of washes, CSV or Parquet: a file, or a folder of files. The columns of the"
              + " washes file with yard, and climate and region if wanted.")
  String washes = "";

  @Option(
      names = "--given",
      paramLabel = "PATH",
      description = "Table of treatments already given, likewise.")
  private @Nullable String given;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "PATH",
      description = "Folder of the results, which all machines can write to.")
  String folder = "";

  @Option(
      names = "--format",
      paramLabel = "FORMAT",
      defaultValue = "CSV",
      description = "How results are written: ${COMPLETION-CANDIDATES}. Default: csv.")
  private TableWriter.Format format = TableWriter.Format.CSV;

  @Option(
      names = "--climate",
      paramLabel = "CLIMATE",
      description = "Climate where a row names none, by name or path of a JSON file.")
  private @Nullable String climate;

  @Option(names = "--south", description = "The colonies stand south of the equator.")
  private boolean south;

  @Option(
      names = "--neighbours",
      paramLabel = "DENSITY",
      defaultValue = "sparse",
      description = "Colonies around, which bring mites. Default: ${DEFAULT-VALUE}.")
  private String neighbours = "sparse";

  @Option(
      names = "--threshold",
      paramLabel = "THRESHOLD",
      defaultValue = Catalog.USUAL_THRESHOLD,
      description =
          "Treatment threshold: a set by name, the path of a JSON file, N or N/300. Default:"
              + " ${DEFAULT-VALUE}.")
  private String threshold = Catalog.USUAL_THRESHOLD;

  @Option(
      names = "--supers",
      paramLabel = "FROM..TO",
      description = "When honey supers stand, like 05-10..07-25.")
  private @Nullable String supers;

  @Option(
      names = "--winter-bees",
      paramLabel = "FROM..TO",
      description = "When winter bees are reared, like 08-15..09-30.")
  private @Nullable String winterBees;

  @Option(
      names = "--resistant",
      paramLabel = "SUBSTANCE",
      split = ",",
      description = "Active substances that did badly, by comma.")
  private List<String> resistant = List.of();

  @Option(names = "--until", paramLabel = "DATE", description = "Last day to look at.")
  private @Nullable LocalDate until;

  @Option(
      names = "--decide-on",
      paramLabel = "DATE",
      description =
          "The day of decision of all colonies. Default: the day after the newest wash or treatment"
              + " of the tables.")
  private @Nullable LocalDate decideOn;

  @Option(
      names = "--with",
      paramLabel = "CONTROL",
      description = "Use this control on each date of the usual plans.")
  private @Nullable String with;

  @Option(
      names = "--plan",
      paramLabel = "PLAN",
      description = "A plan of one's own, like \"on 2026-08-05 with thymol\". May be repeated.")
  private List<String> plans = List.of();

  @Option(names = "--only", description = "Compare the plans of --plan with waiting only.")
  private boolean only;

  @Option(
      names = "--colonies",
      paramLabel = "N",
      defaultValue = "4096",
      description = "Simulated colonies of each hive, 64 to 262144. Default: ${DEFAULT-VALUE}.")
  private int colonies = 4096;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of the random numbers. Default: ${DEFAULT-VALUE}.")
  private long seed = 1;

  @Option(
      names = "--tasks",
      paramLabel = "N",
      defaultValue = "0",
      description = "Parts that the yards are worked on in. Default: four for each core.")
  private int tasks;

  @Option(names = "--trace", description = "Print where a fault came from.")
  private boolean trace;

  ClusterMain(HiveWork work, PrintStream out, PrintStream err, LocalDate today) {
    this.work = work;
    this.out = out;
    this.err = err;
    this.today = today;
  }

  /**
   * Runs the job and exits.
   *
   * @param args the question and its options
   */
  public static void main(String[] args) {
    LocalDate today = LocalDate.now(ZoneId.systemDefault());
    int code = run(YardWorker.CORE, System.out, System.err, today, args);
    if (code != OK) {
      System.exit(code);
    }
  }

  /**
   * Runs the job.
   *
   * @param work works out one hive
   * @param today no wash or treatment may be later
   * @return exit code: {@link #OK}, {@link #FAILED} or {@link #BAD_INPUT}
   */
  static int run(HiveWork work, PrintStream out, PrintStream err, LocalDate today, String... args) {
    ClusterMain job = new ClusterMain(work, out, err, today);
    CommandLine line = new CommandLine(job);
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setExecutionExceptionHandler((e, command, parsed) -> job.failed(e));
    return line.execute(args);
  }

  private int failed(Exception e) {
    if (trace) {
      e.printStackTrace(err);
    }
    if (e instanceof RefusedException refused) {
      err.println(refused.reason());
      return BAD_INPUT;
    }
    if (e instanceof SparkException || e instanceof IOException) {
      err.println("The cluster could not carry out the job; no results were written.");
      err.println(HiveJob.reason(e));
      lost.text().ifPresent(err::println);
    } else {
      err.println("A fault of the program; no results were written: " + e);
    }
    return FAILED;
  }

  @Override
  public Integer call() throws IOException {
    Question question = question();
    SparkSession spark =
        SparkSession.builder()
            .appName("broodtide " + asked)
            .config("spark.sql.datetime.java8API.enabled", "true")
            .config("spark.sql.parquet.compression.codec", "snappy")
            .getOrCreate();
    spark.sparkContext().addSparkListener(lost);
    ResultFolder results = ResultFolder.claim(folder, spark.sparkContext().hadoopConfiguration());
    boolean done = false;
    try {
      JobCounts counts =
          new HiveJob(spark, question, work, results, tasks)
              .run(washes, given, format, facts(question));
      done = true;
      out.println(counts.text());
      out.println("Written to " + folder + ".");
      out.println(Caution.answer(counts.acid()));
    } finally {
      if (!done) {
        results.sweep();
      }
      lost.stopCounting();
      spark.stop();
    }
    return OK;
  }

  private ObjectNode facts(Question question) {
    ObjectNode facts = ResultFolder.facts();
    String version = ClusterMain.class.getPackage().getImplementationVersion();
    facts
        .put("program", "broodtide " + (version == null ? "development" : version))
        .put("question", String.valueOf(asked))
        .put("seed", seed)
        .put("simulatedColonies", colonies)
        .put("climate", question.usualClimate())
        .put("threshold", threshold)
        .put("neighbours", neighbours);
    plans.forEach(facts.putArray("plans")::add);
    return facts;
  }

  /** What is asked, with everything that the words mean looked up once. */
  Question question() {
    boolean compare = asked == Asked.compare;
    if (!compare && (with != null || only || !plans.isEmpty())) {
      throw new RefusedException(
          "--with, --plan and --only are for 'compare'; leave them out of 'forecast'");
    }
    OutOfRange.check("--colonies", colonies, FEWEST, MOST, "colonies");
    checkSpan("--supers", supers);
    checkSpan("--winter-bees", winterBees);
    List<String> densities = Arrays.stream(Surroundings.values()).map(Surroundings::word).toList();
    if (!densities.contains(neighbours)) {
      throw new OutOfRange("--neighbours", "\"" + neighbours + "\"", String.join(", ", densities));
    }
    if (!resistant.isEmpty()) {
      ResistantMites.believed("--resistant", resistant, Priors.defaults());
    }
    Catalog.threshold(threshold);
    ShippedText place = climate == null ? null : ShippedText.of(climate, Catalog.CLIMATES);
    ShippedText control = with == null ? null : ShippedText.of(with, Catalog.CONTROLS);
    if (place != null) {
      place.read(Catalog.CLIMATES);
    }
    Question question =
        new Question(
            compare,
            place,
            south,
            neighbours,
            threshold(),
            supers,
            winterBees,
            List.copyOf(resistant),
            until,
            decideOn,
            control,
            List.copyOf(plans),
            only,
            colonies,
            seed,
            today);
    question.choice();
    return question;
  }

  private ShippedText threshold() {
    return threshold.endsWith(".json")
        ? ShippedText.of(threshold, Catalog.THRESHOLDS)
        : new ShippedText(threshold, null);
  }

  private static void checkSpan(String option, @Nullable String text) {
    if (text != null && YearSpan.parse(text).isEmpty()) {
      throw new RefusedException(
          option + ": '" + text + "' is not a span of the year; write it like 05-10..07-25");
    }
  }
}
