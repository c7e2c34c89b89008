package broodtide.report;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.Decision;
import broodtide.assessment.PlanDay;
import broodtide.assessment.PlanRun;
import broodtide.assessment.QuantileSummary;
import broodtide.assessment.YearStages;
import broodtide.chart.Almanac;
import broodtide.chart.Estimate;
import broodtide.chart.Figure;
import broodtide.chart.Heading;
import broodtide.chart.Line;
import broodtide.chart.Marker;
import broodtide.chart.SeasonChart;
import broodtide.chart.Span;
import broodtide.chart.ThresholdSteps;
import broodtide.control.Control;
import broodtide.results.ColonyResult;
import broodtide.words.Answer;
import broodtide.words.Digits;
import broodtide.words.Plain;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Pictures of plans: what the washes showed, and where each plan leads. */
final class PlanPictures {
  /** Days after the winter-bee weeks that are still drawn, so that late treatments show. */
  private static final int AFTER_WINTER_BEES = 65;

  private static final String AXIS = "mites per 100 adult bees";

  private PlanPictures() {}

  /** All plans in one picture; bands for the first one alone, or they would hide one another. */
  public static SeasonChart plans(ColonyResult result) {
    return plans(result.comparison(), result::days);
  }

  /**
   * {@return all plans in one picture}
   *
   * @param comparison the plans that were played
   * @param days the days of each
   */
  static SeasonChart plans(Comparison comparison, Function<PlanRun, List<PlanDay>> days) {
    ColonyCase c = comparison.colony();
    List<Line> lines = new ArrayList<>();
    LocalDate end = end(comparison);
    Almanac almanac = almanac(c, end);
    for (PlanRun run : comparison.runs()) {
      boolean first = lines.isEmpty();
      lines.add(line(run, days.apply(run), first, first ? c.start() : c.now(), end));
      for (Control control : run.plan().controls()) {
        Marker marker = new Marker(brief(control), control.from());
        boolean shown = !control.from().isAfter(end) && !almanac.markers().contains(marker);
        almanac = shown ? almanac.with(marker) : almanac;
      }
    }
    boolean waits = comparison.runs().get(0).plan().controls().isEmpty();
    String subtitle =
        "Colony "
            + c.colony()
            + ". "
            + points(c)
            + "Line: the middle of "
            + Digits.count(comparison.posterior().members().size())
            + " simulated colonies that fit them; bands: 50 % and 90 % intervals"
            + (waits ? ", if you wait." : ", " + comparison.runs().get(0).plan().name() + ".");
    List<String> tied = comparison.decision().tied();
    if (!tied.isEmpty()) {
      subtitle += " Tied with the best by winter loss: " + String.join(", ", tied) + ".";
    }
    ThresholdSteps threshold = threshold(c, end);
    if (threshold == null) {
      subtitle += " No treatment threshold on these days " + c.thresholds().where() + ".";
    }
    String title = new Answer(comparison).title();
    return SeasonChart.of(new Heading(title, subtitle), AXIS, lines)
        .washes(WashPoints.of(c))
        .threshold(threshold)
        .almanac(almanac.today(c.now()))
        .logarithmic();
  }

  /** What stands for what was counted. */
  private static String points(ColonyCase c) {
    return (c.washes().isEmpty() && !c.boards().isEmpty()
            ? ""
            : "Dots: washes with 90 % intervals. ")
        + (c.boards().isEmpty()
            ? ""
            : "Hollow diamonds: mites on a board, each board by itself, with 90 % intervals. ");
  }

  /**
   * Winter months in which nothing changes but the loss of colonies are left out of the picture.
   */
  private static LocalDate end(Comparison comparison) {
    LocalDate end = new Answer(comparison).day().plusDays(AFTER_WINTER_BEES);
    return end.isAfter(comparison.colony().until()) ? comparison.colony().until() : end;
  }

  /** The name without what follows its first comma, for flags have little room. */
  private static String brief(Control control) {
    return control.name().split(",", 2)[0];
  }

  private static Line line(
      PlanRun run, List<PlanDay> days, boolean bands, LocalDate from, LocalDate end) {
    List<Estimate> estimates = new ArrayList<>();
    // A middle says little once half of the colonies are lost.
    LocalDate ends = run.halfLost(end);
    for (PlanDay day : days) {
      QuantileSummary s = day.infestation();
      if (!day.date().isBefore(from) && !day.date().isAfter(ends)) {
        estimates.add(
            bands
                ? Estimate.of(day.date(), s.q05(), s.q25(), s.median(), s.q75(), s.q95())
                : Estimate.of(day.date(), s.median()));
      }
    }
    double last = estimates.get(estimates.size() - 1).median();
    String name = run.plan().name();
    return ends.isBefore(end)
        ? new Line(name, "", estimates, "half are lost by " + Plain.shortDay(ends))
        : new Line(name, Plain.level(last) + " per 100", estimates);
  }

  /** The season of the first plan, seen from inside the hive. */
  public static Figure inside(ColonyResult result) {
    String plan = result.comparison().runs().get(0).plan().name();
    String whose = "Colony " + result.comparison().colony().colony();
    return InsidePicture.of(
        result.inside(),
        whose + ", \u201c" + plan + "\u201d: the mean of simulated colonies that fit its washes.");
  }

  /**
   * The treatment threshold as steps; null when there is none on any day shown. Lines and dots are
   * infestations of the colony, of which a wash misses a part, so it is drawn where a wash shows
   * it.
   */
  private static @Nullable ThresholdSteps threshold(ColonyCase c, LocalDate end) {
    List<YearStages.Step> steps = c.stages().thresholdSteps(c.thresholds(), c.start(), end);
    if (steps.isEmpty()) {
      return null;
    }
    boolean same = steps.stream().mapToDouble(YearStages.Step::perHundred).distinct().count() == 1;
    return new ThresholdSteps(
        same
            ? "threshold: " + Plain.inWash(steps.get(0).perHundred())
            : "threshold in a wash: " + c.thresholds().name(),
        steps.stream()
            .map(
                s ->
                    new ThresholdSteps.Level(
                        s.from(), s.to(), Decision.infestationAt(s.perHundred())))
            .toList());
  }

  private static Almanac almanac(ColonyCase c, LocalDate end) {
    Almanac almanac = Almanac.BLANK;
    for (LocalDate[] s : c.stages().supers(c.start(), end)) {
      almanac = almanac.with(new Span("honey supers on", s[0], s[1]));
    }
    for (LocalDate[] s : c.stages().winterBees(c.start(), end)) {
      almanac = almanac.with(new Span("winter bees raised", s[0], s[1]));
    }
    for (Control given : c.given()) {
      almanac = almanac.with(new Marker(brief(given), given.from()));
    }
    return almanac;
  }
}
