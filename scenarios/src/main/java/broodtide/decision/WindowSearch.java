package broodtide.decision;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Obstacles;
import broodtide.assessment.Outcome;
import broodtide.assessment.PlanRun;
import broodtide.assessment.UsualPlans;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.Obstacle;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.Unworkable;
import java.time.LocalDate;
import java.time.Period;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Looks for the best day to begin a control. Every cell is played by the same colonies with the
 * same luck, so that neighbouring days differ by the day alone.
 */
public final class WindowSearch {
  /** Controls that are tried when none are named, by comma. */
  public static final String USUAL =
      "drone-comb-part,formic-slow,thymol,amitraz-strips,oxalic-dribble";

  /** Simulated colonies that are enough for a map of medians. */
  public static final int ENOUGH = 1024;

  private static final int WEEK = 7;

  /** The case, looked at no further than the outcome asks for. */
  private final ColonyCase colony;

  private final SeasonPosterior posterior;
  private final Outcome outcome;
  private final Workers workers;
  private final Watched watched;

  private WindowSearch(
      ColonyCase colony, SeasonPosterior posterior, Outcome outcome, Workers workers) {
    LocalDate last = outcome.last(colony);
    this.colony = last.isAfter(colony.now()) ? colony.until(last) : colony;
    this.posterior = posterior;
    this.outcome = outcome;
    this.workers = workers;
    watched = outcome.watched(this.colony);
  }

  /**
   * Plays every control from every day.
   *
   * @param colony the case
   * @param posterior what the washes say of it
   * @param controls the rows
   * @param starts the columns, rising, none before the day of decision
   * @param outcome what cells are judged by
   * @param workers threads; their number does not change the result
   * @param progress is told of every cell done
   * @return the map of windows
   * @throws Unworkable when a start lies before the decision or after the end, or the case does not
   *     reach far enough for the outcome
   */
  public static Windows of(
      ColonyCase colony,
      SeasonPosterior posterior,
      List<ControlTemplate> controls,
      List<LocalDate> starts,
      Outcome outcome,
      Workers workers,
      Progress progress) {
    outcome.check(colony);
    for (LocalDate start : starts) {
      if (start.isBefore(colony.now()) || !start.isBefore(colony.until())) {
        throw new Unworkable(
            "start "
                + start
                + " lies outside "
                + colony.now()
                + " to "
                + colony.until().minusDays(1)
                + ", the days that can still be decided on");
      }
    }
    WindowSearch search = new WindowSearch(colony, posterior, outcome, workers);
    int all = controls.size() * starts.size();
    int done = 0;
    Windows.Played waiting = search.play(Plan.waiting(UsualPlans.WAIT));
    List<Windows.Row> rows = new ArrayList<>();
    for (ControlTemplate control : controls) {
      List<Windows.Cell> cells = new ArrayList<>();
      for (LocalDate start : starts) {
        Optional<Obstacle> obstacle = Obstacles.of(control, start, colony);
        cells.add(
            obstacle.isPresent()
                ? new Windows.Blocked(obstacle.get())
                : search.cell(control, start, waiting));
        progress.at(++done, all);
      }
      rows.add(new Windows.Row(control, cells));
    }
    return new Windows(colony, outcome, waiting, starts, rows);
  }

  /**
   * {@return the usual controls from every seventh day on, by the chance that the colony is lost,
   * or by what comes before where the forecast ends before spring}
   *
   * @param colony the case
   * @param posterior what the washes say of it
   * @param workers threads; their number does not change the result
   * @param progress is told of every cell done
   */
  public static Windows usual(
      ColonyCase colony, SeasonPosterior posterior, Workers workers, Progress progress) {
    return of(
        colony,
        posterior.thinned(ENOUGH),
        Arrays.stream(USUAL.split(",")).map(Catalog::control).toList(),
        colony.now().datesUntil(colony.until(), Period.ofDays(WEEK)).toList(),
        usualOutcome(colony),
        workers,
        progress);
  }

  private static Outcome usualOutcome(ColonyCase colony) {
    if (colony.springLow().isPresent()) {
      return Outcome.LOST;
    }
    return colony.raisesWinterBees() ? Outcome.WINTER_BROOD : Outcome.INFESTATION;
  }

  private Windows.Cell cell(ControlTemplate control, LocalDate start, Windows.Played waiting) {
    boolean tooLate = !start.isBefore(colony.until());
    return tooLate ? waiting : play(new Plan(control.name(), List.of(control.at(start))));
  }

  private Windows.Played play(Plan plan) {
    PlanRun run =
        new PlanRun(
            colony,
            plan,
            posterior.run(colony.season(plan), watched, workers, Progress.NONE),
            List.of());
    return new Windows.Played(outcome.middle(run), outcome.band(run), outcome.of(run));
  }
}
