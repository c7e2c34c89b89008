package broodtide.cli;

import broodtide.compare.CountReading;
import broodtide.measure.OutOfRange;
import broodtide.report.Digits;
import broodtide.season.Climate;
import broodtide.study.Library;
import broodtide.wash.Frame;
import broodtide.wash.SamplePlan;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What does one count say? */
@Command(
    name = "wash",
    mixinStandardHelpOptions = true,
    description = {
      "What one count says: mites per 100 bees with an interval, where it stands against the limit"
          + " of the season, and what it implies for the whole colony.",
      "",
      "Example:",
      "  broodtide wash 7 --bees 300 --date 2026-08-20 --climate cool-maritime",
      ""
    })
final class WashCommand implements Callable<Integer> {
  private final Desk desk;

  @Parameters(index = "0", paramLabel = "MITES", description = "Mites counted.")
  private int mites;

  @Option(
      names = "--bees",
      paramLabel = "N",
      description = "Bees in the wash. Default: a half cup, not counted.")
  private @Nullable Integer bees;

  @Option(names = "--date", paramLabel = "DATE", description = "Day of the wash.", required = true)
  private LocalDate date = LocalDate.EPOCH;

  @Option(
      names = "--climate",
      paramLabel = "NAME",
      description = "Climate, by name or path. Known: ${COMPLETION-CANDIDATES}.",
      completionCandidates = ClimateNames.class,
      required = true)
  private String climate = "";

  @Option(names = "--south", description = "The place lies south of the equator.")
  private boolean south;

  @Option(
      names = "--method",
      paramLabel = "NAME",
      description =
          "alcohol, alcohol-three-rinses, soapy-water, powdered-sugar or carbon-dioxide. Default:"
              + " ${DEFAULT-VALUE}.",
      defaultValue = "alcohol")
  private String method = "alcohol";

  @Option(
      names = "--frame",
      paramLabel = "NAME",
      description = "brood-centre, brood-edge, honey or mixed. Default: ${DEFAULT-VALUE}.",
      defaultValue = "mixed")
  private String frame = "mixed";

  @Option(
      names = "--limits",
      paramLabel = "NAME",
      description = "Set of limits. Default: ${DEFAULT-VALUE}.",
      defaultValue = "common-practice")
  private String limits = "common-practice";

  @Option(
      names = "--hives",
      paramLabel = "N",
      description = "Hives in the apiary: says how many to wash for its mean.")
  private @Nullable Integer hives;

  @Option(names = "--json", description = "Print the result as JSON instead of text.")
  private boolean json;

  WashCommand(Desk desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    if (date.isAfter(LocalDate.now(desk.clock()))) {
      throw new OutOfRange("--date", date.toString(), "today or earlier");
    }
    Wash wash =
        new Wash(
            date,
            "the colony",
            mites,
            bees == null ? OptionalInt.empty() : OptionalInt.of(bees),
            named("--method", method, WashMethod.values(), WashMethod::id),
            named("--frame", frame, Frame.values(), Frame::id),
            "",
            OptionalDouble.empty());
    Climate place = Library.climate(climate);
    CountReading reading =
        CountReading.of(wash, south ? place.inSouth() : place, CaseReader.limits(limits));
    if (json) {
      desk.out().print(WashWords.json(reading));
    } else {
      WashWords.sentences(reading).forEach(s -> desk.out().println(desk.terminal().wrap(s)));
      desk.out().println(desk.terminal().wrap(next(reading)));
      if (hives != null) {
        desk.out().println(desk.terminal().wrap(apiary(reading, hives)));
      }
    }
    desk.out().flush();
    return Main.OK;
  }

  /** What another wash, or a larger one, would bring. */
  private static String next(CountReading reading) {
    SamplePlan plan = SamplePlan.usual();
    double rate = Math.max(0.3, reading.asCounted().median());
    int scoop = (int) Math.round(reading.wash().beesOrAssumed());
    return "How sure is that? A wash of "
        + Digits.count(scoop)
        + " bees at this rate is right to within "
        + Digits.percent(plan.precision(rate, scoop, 0.9))
        + " nine times in ten; for 25 % it takes about "
        + Digits.two(plan.beesFor(rate, 0.25, 0.9))
        + " bees.";
  }

  /** How many hives tell the mean of the apiary. */
  private static String apiary(CountReading reading, int hives) {
    OutOfRange.check("--hives", hives, 1, 10_000, "hives");
    SamplePlan plan = SamplePlan.usual();
    double rate = Math.max(0.3, reading.asCounted().median());
    int scoop = (int) Math.round(reading.wash().beesOrAssumed());
    int needed = plan.hivesFor(rate, scoop, hives, 0.25);
    return "For the mean of "
        + Digits.count(hives)
        + " hives, give or take a quarter, wash about "
        + Digits.count(needed)
        + " of them, "
        + Digits.count(scoop)
        + " bees each; one hive says little about its neighbours.";
  }

  private static <T> T named(String option, String given, T[] all, Function<T, String> id) {
    List<T> known = Arrays.asList(all);
    return known.stream()
        .filter(k -> id.apply(k).equals(given))
        .findFirst()
        .orElseThrow(
            () ->
                new OutOfRange(
                    option,
                    given,
                    "one of " + known.stream().map(id).collect(Collectors.joining(", "))));
  }
}
