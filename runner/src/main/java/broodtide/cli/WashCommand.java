package broodtide.cli;

import broodtide.assessment.Caution;
import broodtide.assessment.CountOutlook;
import broodtide.assessment.CountReading;
import broodtide.assessment.YearStages;
import broodtide.catalog.Catalog;
import broodtide.engine.Workers;
import broodtide.files.Outputs;
import broodtide.measure.OutOfRange;
import broodtide.report.CountPicture;
import broodtide.results.CountPrecision;
import broodtide.results.ResultsFile;
import broodtide.season.Climate;
import broodtide.study.WashFile;
import broodtide.wash.BoardCount;
import broodtide.wash.Frame;
import broodtide.wash.SamplePlan;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import broodtide.words.Digits;
import broodtide.words.PrecisionWords;
import broodtide.words.ThresholdWords;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** What does one count say? */
@Command(
    name = "wash",
    mixinStandardHelpOptions = true,
    header = "What one count says, or the counts of one day.",
    description = {
      "What one count says: mites per 100 bees with an interval, where it stands against the"
          + " treatment threshold, and what it implies for the whole colony. With --days, what"
          + " mites fallen on a board say. For a table of counts, a sheet: the hives of one day,"
          + " the most likely over the threshold first."
    },
    footer = {
      "  broodtide wash 7 --bees 300 --date 2026-08-20 --climate cool-maritime",
      "  broodtide wash 24 --days 3 --date 2026-08-20 --climate cool-maritime",
      "  broodtide wash washes.csv --climate cool-maritime"
    })
final class WashCommand implements Callable<Integer> {
  /** Mites per 100 bees between which it is said how sure a wash is. */
  private static final double LEAST_RATE = 0.3;

  private static final double MOST_RATE = 99;

  /** Name of the one colony that is asked about. */
  private static final String COLONY = "the colony";

  private final CommandContext desk;

  @Parameters(
      index = "0",
      paramLabel = "MITES",
      converter = CountedOrTable.Converter.class,
      description =
          "Mites counted; or a table of counts (CSV) as other commands read it. The counts of one"
              + " day are shown as a sheet. '-' reads it from standard input.")
  private CountedOrTable counted = new CountedOrTable(OptionalInt.of(0), Optional.empty());

  @Spec private CommandSpec spec = CommandSpec.create();

  @Option(
      names = "--bees",
      paramLabel = "N",
      description = "Bees in the wash. Default: a half cup, not counted.")
  private @Nullable Integer bees;

  @Option(
      names = "--days",
      paramLabel = "N",
      description =
          "The mites fell on a board under the colony, which lay for N days up to --date. 1 to"
              + " 28.")
  private @Nullable Integer days;

  @Option(
      names = "--date",
      paramLabel = "DATE",
      description = "Day of the count. In a table the default is the newest.")
  private @Nullable LocalDate date;

  @Option(
      names = "--climate",
      paramLabel = "CLIMATE",
      description = "Climate, by name or path of a JSON file. Known: ${COMPLETION-CANDIDATES}.",
      completionCandidates = KnownWords.Climates.class,
      required = true)
  private String climate = "";

  @Option(names = "--south", description = "The place is south of the equator.")
  private boolean south;

  @Option(
      names = "--method",
      paramLabel = "METHOD",
      description =
          "How it was done: ${COMPLETION-CANDIDATES}. Default: ${DEFAULT-VALUE}; with --days a"
              + " board.",
      completionCandidates = KnownWords.Methods.class,
      defaultValue = "alcohol")
  private String method = "alcohol";

  @Option(
      names = "--frame",
      paramLabel = "FRAME",
      description =
          "Where the bees were taken: ${COMPLETION-CANDIDATES}. Default: ${DEFAULT-VALUE}.",
      completionCandidates = KnownWords.Frames.class,
      defaultValue = "mixed")
  private String frame = "mixed";

  @Option(
      names = "--threshold",
      paramLabel = "THRESHOLD",
      description =
          "Treatment threshold: N (mites per 100 bees), N/300 (mites in 300 bees) or the"
              + " path of a JSON file. Or a set by name: ${COMPLETION-CANDIDATES}. Default:"
              + " kulhanek-2021, 3 per 100.",
      completionCandidates = KnownWords.Thresholds.class,
      defaultValue = "kulhanek-2021")
  private String threshold = Catalog.USUAL_THRESHOLD;

  @Option(
      names = "--hives",
      paramLabel = "N",
      description = "Hives in the apiary: says how many to wash for its mean.")
  private @Nullable Integer hives;

  @Mixin private FolderOption folder = new FolderOption();
  @Mixin private JsonOption as = new JsonOption();

  WashCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    return counted.table().isPresent()
        ? table(counted.table().get())
        : count(counted.mites().orElseThrow());
  }

  private int table(String name) {
    for (String option : List.of("--bees", "--days", "--method", "--frame", "--hives")) {
      if (given(option)) {
        throw new Refusal(
            option + " has no place beside a table of counts, which says it itself; leave it out");
      }
    }
    return new CountTable(desk, folder, as.json)
        .answer(
            name, date, year(), Catalog.threshold(threshold), reading -> precision(reading, null));
  }

  private boolean given(String option) {
    return spec.commandLine().getParseResult().hasMatchedOption(option);
  }

  private LocalDate day() {
    LocalDate day = date;
    if (day == null) {
      throw new ParameterException(spec.commandLine(), "Missing required option: '--date=DATE'");
    }
    if (day.isAfter(LocalDate.now(desk.clock()))) {
      throw new OutOfRange("--date", day.toString(), "today or earlier");
    }
    if (day.isBefore(WashFile.EARLIEST)) {
      throw new OutOfRange("--date", day.toString(), WashFile.EARLIEST + " or later");
    }
    return day;
  }

  private int board(int mites) {
    if (given("--method") && !method.equals(KnownWords.BOARD)) {
      throw new Refusal(
          "--method "
              + method
              + " has no place beside --days, which says that the mites fell on a board; leave one"
              + " of the two out");
    }
    for (String option : List.of("--bees", "--frame", "--hives")) {
      if (given(option)) {
        throw new Refusal(
            option + " has no place beside mites on a board, which holds no bees; leave it out");
      }
    }
    Integer lay = days;
    if (lay == null) {
      throw new Refusal(
          "--method board needs to know for how many days the board lay; add --days N, as --days"
              + " 3");
    }
    OutOfRange.check("--days", lay, BoardCount.FEWEST_DAYS, BoardCount.MOST_DAYS, "days");
    OutOfRange.check("MITES", mites, 0, BoardCount.MOST_MITES, "mites");
    LocalDate out = day();
    BoardCount board = new BoardCount(out.minusDays(lay), out, COLONY, mites);
    return BoardAnswer.give(
        new CountDelivery(desk, folder, as.json), board, year(), Catalog.threshold(threshold));
  }

  private int count(int mites) {
    if (days != null || method.equals(KnownWords.BOARD)) {
      return board(mites);
    }
    LocalDate date = day();
    Wash wash =
        new Wash(
            date,
            COLONY,
            mites,
            bees == null ? OptionalInt.empty() : OptionalInt.of(bees),
            KnownWords.read("--method", method, WashMethod.values(), WashMethod::id),
            KnownWords.read("--frame", frame, Frame.values(), Frame::id),
            "",
            OptionalDouble.empty());
    if (hives != null) {
      OutOfRange.check("--hives", hives, 1, 10_000, "hives");
    }
    Climate year = year();
    ThresholdSet held = Catalog.threshold(threshold);
    CountDelivery delivery = new CountDelivery(desk, folder, as.json);
    Optional<Outputs> outputs = delivery.open();
    CountReading reading = CountReading.of(wash, year, held);
    CountOutlook outlook;
    try (Workers workers = Workers.all()) {
      outlook = CountOutlook.of(wash, year, held, workers);
    }
    return delivery.deliver(
        outputs,
        words(reading, outlook),
        () -> CountPicture.of(reading),
        () -> json(reading, outlook));
  }

  private Climate year() {
    Climate place = Catalog.climate(climate);
    return south ? place.inSouth() : place;
  }

  private static CountPrecision precision(CountReading reading, @Nullable Integer hives) {
    SamplePlan plan = SamplePlan.usual();
    double rate = rate(reading);
    return new CountPrecision(
        plan.precision(rate, sample(reading), 0.9),
        plan.beesFor(rate, 0.25, 0.9),
        hives == null ? OptionalInt.empty() : OptionalInt.of(hivesToWash(reading, hives)));
  }

  private List<String> words(CountReading reading, CountOutlook outlook) {
    List<String> sentences = new ArrayList<>(WashWords.sentences(reading));
    outlook.ahead().ifPresent(o -> sentences.add(WashWords.ahead(o)));
    sentences.add(next(reading));
    sentences.addAll(
        ThresholdWords.notes(new YearStages(year()), reading.thresholds(), reading.wash().date()));
    if (hives != null) {
      sentences.add(apiary(reading, hives));
    }
    sentences.add(caution(reading));
    return sentences;
  }

  private String json(CountReading reading, CountOutlook outlook) {
    ResultsFile file =
        new ResultsFile(
            "wash",
            Version.number(),
            CountOutlook.SEED,
            CountOutlook.COLONIES,
            alcohol(reading) ? List.of(Caution.ALCOHOL) : List.of());
    file.addCount(reading, precision(reading, hives), outlook);
    return file.text();
  }

  private static double rate(CountReading reading) {
    return Math.min(MOST_RATE, Math.max(LEAST_RATE, reading.asCounted().median()));
  }

  private static int sample(CountReading reading) {
    return (int) Math.round(reading.wash().beesOrAssumed());
  }

  private static int hivesToWash(CountReading reading, int hives) {
    return SamplePlan.usual().hivesFor(rate(reading), sample(reading), hives, 0.25);
  }

  private static String caution(CountReading reading) {
    return Caution.ANSWER + (alcohol(reading) ? " " + Caution.ALCOHOL : "");
  }

  private static boolean alcohol(CountReading reading) {
    return reading.wash().method().id().startsWith(WashMethod.ALCOHOL.id());
  }

  /** What another wash, or a larger one, would bring. */
  private static String next(CountReading reading) {
    return "How sure is that? " + PrecisionWords.sentence(rate(reading), sample(reading));
  }

  /** How many hives tell the mean of the apiary. */
  private static String apiary(CountReading reading, int hives) {
    int needed = hivesToWash(reading, hives);
    int sample = sample(reading);
    return "For the mean of "
        + Digits.count(hives)
        + " hives, within a quarter, wash about "
        + Digits.count(needed)
        + " of them, "
        + Digits.count(sample)
        + " bees each; one hive says little about its neighbours.";
  }
}
