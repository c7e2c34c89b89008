package broodtide.cli;

import broodtide.compare.ColonyCase;
import broodtide.compare.PlanFigures;
import broodtide.compare.PlanRun;
import broodtide.compare.Spread;
import broodtide.report.Digits;
import broodtide.report.Odds;
import broodtide.wash.Stage;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/** Results in plain sentences. */
final class Plain {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
  private static final DateTimeFormatter SHORT =
      DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);

  private Plain() {}

  static String day(LocalDate day) {
    return DAY.format(day);
  }

  static String shortDay(LocalDate day) {
    return SHORT.format(day);
  }

  /** Where a plan leads, against the limit of its last day. */
  static String outlook(PlanRun run) {
    ColonyCase c = run.colony();
    Spread end = Spread.of(run.infestation(c.until()));
    StringBuilder s = new StringBuilder();
    double lost = run.shareLost(c.until());
    if (end.median() >= PlanRun.FULL) {
      s.append("the colony is more likely than not lost by ").append(day(c.until())).append('.');
    } else {
      s.append("about ")
          .append(Digits.two(end.median()))
          .append(" mites per 100 bees on ")
          .append(day(c.until()))
          .append(" (nine in ten seasons like yours: ")
          .append(Digits.two(end.q05()))
          .append(" to ")
          .append(end.q95() >= PlanRun.FULL ? "over 100" : Digits.two(end.q95()))
          .append(").");
    }
    if (lost > 0.005) {
      s.append(" It is lost by then ").append(Odds.seasons(lost)).append('.');
    }
    Optional<Double> limit = c.stages().limitOn(c.limits(), c.until());
    if (limit.isPresent()) {
      double[] values = run.infestation(c.until());
      double above = 0;
      for (double v : values) {
        above += v > limit.get() ? 1.0 / values.length : 0;
      }
      Stage stage = c.stages().on(c.until());
      s.append(" The limit for the ")
          .append(stage.title())
          .append(" is ")
          .append(Digits.two(limit.get()))
          .append("; the colony stands above it ")
          .append(Odds.seasons(Math.min(1, above)))
          .append('.');
    }
    return s.toString();
  }

  /** When the limit is first passed. */
  static String crossing(PlanRun run) {
    ColonyCase c = run.colony();
    int[] days = run.daysToLimit();
    double share = PlanFigures.share(days);
    if (PlanFigures.shareWithin(days, 0) > 0.5) {
      return "It stands above the limit of the season already ("
          + Odds.words(PlanFigures.shareWithin(days, 0))
          + ").";
    }
    Optional<LocalDate> middle = PlanFigures.medianDay(days, c.now());
    if (middle.isPresent()) {
      return "It passes the limit of the season by "
          + day(middle.get())
          + " as often as not ("
          + Odds.words(share)
          + " by the end).";
    }
    return "It passes the limit of the season at some time " + Odds.seasons(share) + ".";
  }
}
