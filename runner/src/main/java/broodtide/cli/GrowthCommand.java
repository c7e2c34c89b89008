package broodtide.cli;

import broodtide.assessment.Caution;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.Horizon;
import broodtide.assessment.TreatmentDays;
import broodtide.engine.Workers;
import broodtide.files.Outputs;
import broodtide.fit.Growth;
import broodtide.fit.GrowthFit;
import broodtide.fit.PooledGrowth;
import broodtide.report.AnswerSheet;
import broodtide.report.HiveGrowth;
import broodtide.results.ResultsFile;
import broodtide.terminal.Table;
import broodtide.words.Digits;
import broodtide.words.GrowthTogetherWords;
import broodtide.words.GrowthWords;
import broodtide.words.Plain;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How fast do my mites grow? */
@Command(
    name = "growth",
    mixinStandardHelpOptions = true,
    header = "How fast the mites grow.",
    description = {
      "How fast the mites grow, from the washes alone: per day, per month and as"
          + " doubling time, each with its interval. Where the washes cannot tell yet, it says"
          + " so."
    },
    footer = {
      "  broodtide growth washes.csv --climate temperate",
      "  broodtide growth washes.csv --climate temperate --given treatments.csv",
      "  broodtide growth washes.csv --climate temperate --treated 2026-08-05"
    })
final class GrowthCommand implements Callable<Integer> {
  private static final int SAMPLE = 300;

  private static final String STEADY =
      "Mites per bee, as if growth were steady. In autumn they rise faster, because colonies shrink"
          + " and mites leave the brood; 'broodtide forecast' takes that into account.";

  /** Hives that are told one by one; of more, only the fastest. Choice. */
  private static final int MOST_SHOWN = 30;

  /** Hives that are named in a sentence; of more, only their number. Choice. */
  private static final int MOST_NAMED = 8;

  private final CommandContext desk;
  @Mixin private ColonyOptions colony = new ColonyOptions();

  @Option(
      names = "--treated",
      paramLabel = "DATE",
      description =
          "First day of a treatment of every colony, as if it were in the table of"
              + " --given. Washes before and after it have a level of their own. May be repeated.")
  private List<LocalDate> treated = List.of();

  @Mixin private FolderOption folder = new FolderOption();
  @Mixin private JsonOption as = new JsonOption();

  GrowthCommand(CommandContext desk) {
    this.desk = desk;
  }

  @Override
  public Integer call() {
    CaseReader.Cases cases =
        new CaseReader(desk, colony).lookingBack("growth", Horizon::winterBees);
    Optional<Outputs> outputs = folder.open(RunOptions.read(cases));
    Map<String, List<LocalDate>> treatments = new LinkedHashMap<>();
    cases.cases().forEach(c -> treatments.put(c.colony(), TreatmentDays.of(c.given(), treated)));
    Map<String, GrowthFit> fits = fits(cases.cases(), treatments);
    Optional<PooledGrowth> together =
        PooledGrowth.of(fits.values().stream().map(GrowthFit::growth).toList());
    Map<String, GrowthFit> shown = shown(fits);
    List<HiveGrowth> hives = new ArrayList<>();
    for (ColonyCase c : cases.cases()) {
      GrowthFit fit = shown.get(c.colony());
      if (fit != null && !c.washes().isEmpty()) {
        List<LocalDate> days = treatments.getOrDefault(c.colony(), List.of());
        hives.add(new HiveGrowth(c.colony(), c.washes(), fit, days));
      }
    }
    String json = json(cases, fits, treatments, together);
    AnswerSheet sheet = AnswerSheet.about(fits.size() == 1 ? fits.keySet().iterator().next() : "");
    List<String> first = first(fits, shown, together);
    first.forEach(sheet::say);
    sheet.show(
        table(shown), "Growth of mites per bee, with the 90 % interval of the factor of a month.");
    List<String> last = last(shown, treatments);
    last.forEach(sheet::say);
    if (as.json) {
      desk.out().print(json);
    } else {
      first.forEach(this::wrapped);
      desk.out().println();
      desk.out().println(desk.terminal().table(table(shown)).stripTrailing());
      wrapped(Caution.ANSWER);
      last.forEach(this::wrapped);
      cases.news(false).forEach(this::wrapped);
    }
    desk.deliver();
    if (outputs.isPresent() && !hives.isEmpty()) {
      folder.write(
          outputs.get(),
          desk,
          sheet,
          cases.notes(),
          HiveGrowth.picture(hives, colony.until == null ? LocalDate.MIN : colony.until),
          "Dots: washes with 90 % intervals, corrected for method and frame. Line: the fitted"
              + " growth, with the interval of the line; dashed where it goes on as it was.",
          json,
          !as.json);
    }
    return Main.OK;
  }

  /** Fits every colony; many take a while. */
  private Map<String, GrowthFit> fits(
      List<ColonyCase> cases, Map<String, List<LocalDate>> treatments) {
    GrowthFit[] fits = new GrowthFit[cases.size()];
    try (Workers workers = Workers.all();
        ProgressLine line = new ProgressLine(desk, new RunOptions(), "fitting growth")) {
      workers.run(
          fits.length,
          i -> {
            ColonyCase c = cases.get(i);
            List<LocalDate> days = treatments.getOrDefault(c.colony(), List.of());
            fits[i] = GrowthFit.of(c.washes(), days, GrowthFit.USUAL_LEVEL);
          },
          line);
    }
    Map<String, GrowthFit> out = new LinkedHashMap<>();
    for (int i = 0; i < fits.length; i++) {
      out.put(cases.get(i).colony(), fits[i]);
    }
    return out;
  }

  /** The hives that are told one by one: all of them, or of many those that grow fastest. */
  private static Map<String, GrowthFit> shown(Map<String, GrowthFit> fits) {
    if (fits.size() <= MOST_SHOWN) {
      return fits;
    }
    Map<String, GrowthFit> out = new LinkedHashMap<>();
    fits.entrySet().stream()
        .sorted(Comparator.comparingDouble(e -> -e.getValue().growth().perDayInterval().low()))
        .limit(MOST_SHOWN)
        .forEach(e -> out.put(e.getKey(), e.getValue()));
    return out;
  }

  /** What stands above the table. */
  private static List<String> first(
      Map<String, GrowthFit> fits, Map<String, GrowthFit> shown, Optional<PooledGrowth> together) {
    List<String> out = new ArrayList<>();
    together.ifPresent(p -> out.add(GrowthTogetherWords.of(p, fits.size())));
    if (shown.size() < fits.size()) {
      out.add(
          "Below are the "
              + shown.size()
              + " hives that most surely grow fast; --json gives all of them.");
    } else {
      shown.forEach((name, fit) -> out.add(name + ": " + GrowthWords.sentence(fit)));
    }
    return out;
  }

  /** What stands below it. */
  private List<String> last(Map<String, GrowthFit> shown, Map<String, List<LocalDate>> treatments) {
    List<String> out = new ArrayList<>();
    if (colony.until != null) {
      shown.forEach((name, fit) -> out.add(ahead(name, fit, colony.until)));
    }
    out.add(STEADY);
    Map<List<LocalDate>, List<String>> alike = new LinkedHashMap<>();
    treatments.forEach(
        (name, days) -> alike.computeIfAbsent(days, d -> new ArrayList<>()).add(name));
    alike.forEach(
        (days, names) ->
            out.add(
                cut(
                    names.size() <= MOST_NAMED
                        ? String.join(", ", names)
                        : Digits.count(names.size()) + " hives",
                    days)));
    return out;
  }

  private void wrapped(String sentences) {
    desk.out().println(desk.terminal().wrap(sentences));
  }

  /** Where the washes of a colony are parted. */
  private static String cut(String name, List<LocalDate> days) {
    return days.isEmpty()
        ? name
            + ": no treatment between the washes is assumed; name treatments with --given or"
            + " --treated."
        : name
            + ": treated on "
            + String.join(", ", days.stream().map(Plain::day).toList())
            + "; washes before and after a treatment have a level each.";
  }

  /** The wash that this growth alone would lead to. */
  private static String ahead(String name, GrowthFit fit, LocalDate day) {
    return fit.forecast(day, SAMPLE)
        .map(
            f ->
                name
                    + ": if it goes on like this, a wash of "
                    + SAMPLE
                    + " bees on "
                    + Plain.day(day)
                    + " finds about "
                    + f.median()
                    + " mites ("
                    + Digits.range(f.interval(0.9).low(), f.interval(0.9).high())
                    + ", 90 % interval). The season is not taken into account; 'forecast' does"
                    + " that.")
        .orElseGet(
            () ->
                name
                    + ": "
                    + fit.whyNoForecast(day)
                        .map(w -> GrowthWords.whyNoForecast(fit, w))
                        .orElse("no forecast"));
  }

  private static Table table(Map<String, GrowthFit> fits) {
    Table table =
        Table.of(
            Table.Column.words("Colony"),
            Table.Column.numbers("a day"),
            Table.Column.numbers("a month"),
            Table.Column.numbers("90 %"),
            Table.Column.numbers("doubles in"));
    for (Map.Entry<String, GrowthFit> e : fits.entrySet()) {
      Growth g = e.getValue().growth();
      table =
          table.row(
              e.getKey(),
              g.perDay().isPresent()
                  ? Digits.two(100 * Math.expm1(g.perDay().getAsDouble())) + " %"
                  : "-",
              g.monthFactor().isPresent() ? "x " + Digits.two(g.monthFactor().getAsDouble()) : "-",
              "x " + Digits.range(g.monthFactorInterval().low(), g.monthFactorInterval().high()),
              g.differsFromZero() && g.doublingDays().isPresent()
                  ? Digits.two(g.doublingDays().getAsDouble()) + " days"
                  : "-");
    }
    return table;
  }

  private String json(
      CaseReader.Cases cases,
      Map<String, GrowthFit> fits,
      Map<String, List<LocalDate>> treatments,
      Optional<PooledGrowth> together) {
    ResultsFile file = new ResultsFile("growth", Version.number(), cases.notes());
    together.ifPresent(file::add);
    for (ColonyCase c : cases.cases()) {
      file.addGrowth(
          c,
          Objects.requireNonNull(fits.get(c.colony())),
          treatments.getOrDefault(c.colony(), List.of()),
          Optional.ofNullable(colony.until),
          SAMPLE);
    }
    return file.text();
  }
}
