package broodtide.cli;

import broodtide.assessment.Caution;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.Horizon;
import broodtide.assessment.TreatmentDays;
import broodtide.files.Outputs;
import broodtide.fit.Growth;
import broodtide.fit.GrowthFit;
import broodtide.report.AnswerSheet;
import broodtide.report.HiveGrowth;
import broodtide.results.ResultsFile;
import broodtide.terminal.Table;
import broodtide.words.Digits;
import broodtide.words.Plain;
import java.time.LocalDate;
import java.util.ArrayList;
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
      "How fast the mites grow, from the washes alone: per day and per month, doubling"
          + " time, with intervals, or plainly that the washes cannot tell yet."
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

  private final CommandContext desk;
  @Mixin private ColonyOptions colony = new ColonyOptions();

  @Option(
      names = "--treated",
      paramLabel = "DATE",
      description =
          "First day of a treatment of every colony, as if it stood in the table of --given; washes"
              + " before and after it get a level each. May be repeated.")
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
    Map<String, GrowthFit> fits = new LinkedHashMap<>();
    Map<String, List<LocalDate>> treatments = new LinkedHashMap<>();
    List<HiveGrowth> hives = new ArrayList<>();
    for (ColonyCase c : cases.cases()) {
      List<LocalDate> days = TreatmentDays.of(c.given(), treated);
      treatments.put(c.colony(), days);
      GrowthFit fit = GrowthFit.of(c.washes(), days, GrowthFit.USUAL_LEVEL);
      fits.put(c.colony(), fit);
      if (!c.washes().isEmpty()) {
        hives.add(new HiveGrowth(c.colony(), c.washes(), fit, days));
      }
    }
    String json = json(cases, fits, treatments);
    AnswerSheet sheet = AnswerSheet.about(fits.size() == 1 ? fits.keySet().iterator().next() : "");
    fits.forEach((name, fit) -> sheet.say(name + ": " + fit.sentence()));
    sheet.show(
        table(fits), "Growth of mites per bee, with the 90 % interval of the factor of a month.");
    if (colony.until != null) {
      fits.forEach((name, fit) -> sheet.say(ahead(name, fit, colony.until)));
    }
    sheet.say(STEADY);
    treatments.forEach((name, days) -> sheet.say(cut(name, days)));
    if (as.json) {
      desk.out().print(json);
    } else {
      print(fits, treatments, cases.notes());
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

  private void print(
      Map<String, GrowthFit> fits, Map<String, List<LocalDate>> treatments, List<String> notes) {
    fits.forEach((name, fit) -> wrapped(name + ": " + fit.sentence()));
    desk.out().println();
    desk.out().println(desk.terminal().table(table(fits)).stripTrailing());
    if (colony.until != null) {
      fits.forEach((name, fit) -> wrapped(ahead(name, fit, colony.until)));
    }
    wrapped(Caution.ANSWER);
    wrapped(STEADY);
    treatments.forEach((name, days) -> wrapped(cut(name, days)));
    notes.forEach(this::wrapped);
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
        .orElseGet(() -> name + ": " + fit.whyNoForecast(day).orElse("no forecast"));
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
      Map<String, List<LocalDate>> treatments) {
    ResultsFile file = new ResultsFile("growth", Version.number(), cases.notes());
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
