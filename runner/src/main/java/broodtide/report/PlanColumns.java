package broodtide.report;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.CourseEfficacy;
import broodtide.assessment.PlanRun;
import broodtide.assessment.QuantileSummary;
import broodtide.engine.Quantity;
import broodtide.engine.SpringLow;
import broodtide.files.Csv;
import broodtide.words.Answer;
import broodtide.words.Digits;
import broodtide.words.EfficacyWords;
import broodtide.words.Plain;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The outcomes of plans that tables show, in their order. */
final class PlanColumns {
  private final Answer answer;
  private final ColonyCase colony;

  private PlanColumns(Comparison comparison) {
    answer = new Answer(comparison);
    colony = comparison.colony();
  }

  /**
   * {@return the columns for a comparison}
   *
   * @param comparison the plans that were played
   */
  static List<PlanColumn> of(Comparison comparison) {
    PlanColumns c = new PlanColumns(comparison);
    return List.of(
        c.infestation(),
        c.peak(),
        c.overThreshold(),
        c.winterBrood(),
        c.better(),
        comparison.runs().get(0).springLow().map(c::wintering).orElseGet(c::lost),
        c.work(),
        efficacy());
  }

  private PlanColumn infestation() {
    LocalDate day = answer.day();
    return new PlanColumn(
        Plain.shortDay(day),
        "Mites per 100 bees on " + Plain.shortDay(day),
        "Mites per 100 adult bees on " + Plain.day(day) + ", " + occasion(day) + ".",
        true,
        run -> {
          QuantileSummary s = answer.on(run);
          return new PlanColumn.Cell(Plain.level(s.median()), Plain.levels(s.q05(), s.q95()));
        },
        Stream.of(
                band(
                    "mites_per_100",
                    answer::on,
                    new PlanColumn.Figure("day", run -> day.toString())),
                band("mites_when_raised", PlanRun::mitesWhenRaised))
            .flatMap(List::stream)
            .toList());
  }

  private String occasion(LocalDate day) {
    boolean winterBees = colony.stages().endOfWinterBees(day).equals(day);
    return winterBees ? "when the winter bees have been raised" : "the last day of the forecast";
  }

  private PlanColumn peak() {
    return new PlanColumn(
        "peak",
        "Peak",
        "Highest infestation from now on, in mites per 100 bees, and the day on which the median is"
            + " highest.",
        false,
        run -> {
          double peak = run.peaks().median();
          return new PlanColumn.Cell(Plain.level(peak), "near " + Plain.shortDay(run.peakDay()));
        },
        band(
            "peak",
            PlanRun::peaks,
            new PlanColumn.Figure("peak_day", run -> run.peakDay().toString())));
  }

  private PlanColumn overThreshold() {
    return new PlanColumn(
        "over threshold",
        "Over the treatment threshold",
        "Chance of being over the treatment threshold of the day at some time from now on. Below"
            + " it: the day by which half of the simulated colonies have been.",
        false,
        run -> {
          if (!colony.hasThreshold()) {
            return PlanColumn.Cell.NONE;
          }
          Optional<LocalDate> half = run.crossing().medianDay();
          return new PlanColumn.Cell(
              Digits.chance(run.crossing().share()),
              half.map(d -> d.equals(colony.now()) ? "already" : "by " + Plain.shortDay(d))
                  .orElse(""));
        },
        List.of(
            new PlanColumn.Figure(
                "chance_over_threshold",
                run -> colony.hasThreshold() ? Csv.number(run.crossing().share()) : ""),
            new PlanColumn.Figure(
                "median_day_over_threshold",
                run -> run.crossing().medianDay().map(LocalDate::toString).orElse(""))));
  }

  private PlanColumn winterBrood() {
    return new PlanColumn(
        "brood",
        "Winter-bee brood with mites",
        "Share of capped worker cells with a mite while the winter bees are raised; bees raised"
            + " with mites live shorter lives.",
        true,
        run -> {
          if (noWinterBrood(run)) {
            return PlanColumn.Cell.NONE;
          }
          QuantileSummary s = run.winterBrood();
          return new PlanColumn.Cell(Digits.percent(s.median()), Digits.percents(s.q05(), s.q95()));
        },
        band("winter_brood_infested", PlanRun::winterBrood));
  }

  private PlanColumn better() {
    String name = answer.first().plan().name();
    return new PlanColumn(
        "better",
        "Better than " + name,
        "Chance that the winter-bee brood has fewer mites than with "
            + name
            + ", and in how many of 100 cells fewer, season by season.",
        false,
        run -> {
          if (run == answer.first() || noWinterBrood(run)) {
            return PlanColumn.Cell.NONE;
          }
          return sameAsFirst(run)
              ? new PlanColumn.Cell("same", "")
              : new PlanColumn.Cell(Digits.chance(chanceBetter(run)), "by " + fewer(run));
        },
        band(
            "winter_brood_less_first",
            this::lessThanFirst,
            new PlanColumn.Figure(
                "chance_better_than_first",
                run -> noWinterBrood(run) ? "" : Csv.number(chanceBetter(run)))));
  }

  private PlanColumn wintering(SpringLow low) {
    return new PlanColumn(
        "loss",
        "Lost over winter",
        "Winter loss, the chance that the colony is dead or too weak by "
            + Plain.day(low.day())
            + ", from any cause. Its range is that of 90 % of yards and winters; all colonies of a"
            + " yard share its luck.",
        true,
        run -> new PlanColumn.Cell(Digits.chance(loss(run, low)), byYard(run, low)),
        Stream.concat(
                Stream.of(
                    new PlanColumn.Figure("chance_lost_over_winter", r -> Csv.number(loss(r, low))),
                    new PlanColumn.Figure(
                        "chance_lost_over_winter_by_yard_q05",
                        r -> Csv.number(r.lossByYard(low.day()).q05())),
                    new PlanColumn.Figure(
                        "chance_lost_over_winter_by_yard_q95",
                        r -> Csv.number(r.lossByYard(low.day()).q95())),
                    new PlanColumn.Figure("spring_low", r -> low.day().toString()),
                    new PlanColumn.Figure(
                        "sound_winter_bees_median",
                        r -> Csv.number(r.on(Quantity.WINTER_BEES, low.day()).median()))),
                lost().figures().stream())
            .toList());
  }

  private static double loss(PlanRun run, SpringLow low) {
    return run.shareLost(low.day());
  }

  private static String byYard(PlanRun run, SpringLow low) {
    QuantileSummary losses = run.lossByYard(low.day());
    return Digits.chance(losses.q05()) + " to " + Digits.chance(losses.q95());
  }

  private PlanColumn lost() {
    return new PlanColumn(
        "lost",
        "Lost by " + Plain.shortDay(colony.until()),
        "Chance that the colony is dead or too weak by "
            + Plain.day(colony.until())
            + ", from any cause"
            + ".",
        false,
        run -> new PlanColumn.Cell(Digits.chance(run.shareLost(colony.until())), ""),
        List.of(
            new PlanColumn.Figure(
                "chance_died_out", run -> Csv.number(run.shareLost(colony.until()))),
            new PlanColumn.Figure("until", run -> colony.until().toString())));
  }

  private PlanColumn work() {
    return new PlanColumn(
        "treatments",
        "Treatments",
        "Miticide applications, and the days on which one acts while supers are usually on.",
        false,
        run -> {
          int days = run.daysTreatedWithSupers();
          return new PlanColumn.Cell(
              Integer.toString(run.treatments()),
              days == 0 ? "" : days + (days == 1 ? " day" : " days") + " with supers");
        },
        List.of(
            new PlanColumn.Figure("treatments", run -> Integer.toString(run.treatments())),
            new PlanColumn.Figure(
                "days_treated_with_supers", run -> Integer.toString(run.daysTreatedWithSupers()))));
  }

  private static PlanColumn efficacy() {
    return new PlanColumn(
        "takes",
        "Efficacy",
        "Share of all mites that its miticides took where they were tried, with its 90 % interval.",
        false,
        run -> {
          List<CourseEfficacy> all = EfficacyWords.of(run);
          return all.isEmpty()
              ? PlanColumn.Cell.NONE
              : new PlanColumn.Cell(
                  all.stream().map(EfficacyWords::middle).collect(Collectors.joining(", ")),
                  all.stream().map(EfficacyWords::range).collect(Collectors.joining(", ")));
        },
        List.of(
            new PlanColumn.Figure("efficacy", run -> least(run, CourseEfficacy::share)),
            new PlanColumn.Figure("efficacy_q05", run -> least(run, CourseEfficacy::low)),
            new PlanColumn.Figure("efficacy_q95", run -> least(run, CourseEfficacy::high))));
  }

  /** A figure of the miticide of a plan that takes least; blank when there is none. */
  private static String least(PlanRun run, ToDoubleFunction<CourseEfficacy> figure) {
    return EfficacyWords.of(run).stream()
        .min(Comparator.comparingDouble(CourseEfficacy::share))
        .map(e -> Csv.number(figure.applyAsDouble(e)))
        .orElse("");
  }

  private QuantileSummary lessThanFirst(PlanRun run) {
    return QuantileSummary.of(
        Comparison.differences(run.winterBroodInfested(), answer.first().winterBroodInfested()));
  }

  private String fewer(PlanRun run) {
    QuantileSummary less = lessThanFirst(run);
    return Plain.levels(-100 * less.q95(), -100 * less.q05());
  }

  private static boolean noWinterBrood(PlanRun run) {
    return Double.isNaN(run.winterBroodInfested()[0]);
  }

  private double chanceBetter(PlanRun run) {
    return Comparison.chanceSmaller(
        run.winterBroodInfested(), answer.first().winterBroodInfested());
  }

  /** Plans that act only after the winter bees have been raised give the very same brood. */
  private boolean sameAsFirst(PlanRun run) {
    return Arrays.equals(run.winterBroodInfested(), answer.first().winterBroodInfested());
  }

  private static List<PlanColumn.Figure> band(
      String name, Function<PlanRun, QuantileSummary> spread, PlanColumn.Figure... further) {
    List<PlanColumn.Figure> figures =
        new ArrayList<>(
            List.of(
                new PlanColumn.Figure(name + "_q05", r -> Csv.number(spread.apply(r).q05())),
                new PlanColumn.Figure(name + "_q25", r -> Csv.number(spread.apply(r).q25())),
                new PlanColumn.Figure(name + "_median", r -> Csv.number(spread.apply(r).median())),
                new PlanColumn.Figure(name + "_q75", r -> Csv.number(spread.apply(r).q75())),
                new PlanColumn.Figure(name + "_q95", r -> Csv.number(spread.apply(r).q95()))));
    figures.addAll(Arrays.asList(further));
    return figures;
  }
}
