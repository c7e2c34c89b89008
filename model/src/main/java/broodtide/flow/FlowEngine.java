package broodtide.flow;

import broodtide.engine.ColonyBlock;
import broodtide.engine.Scenario;
import broodtide.engine.Schedule;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Trajectory;
import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.List;

/**
 * The flow engine: the colony as differential equations in continuous time. Every brood delay is a
 * chain of equal stages, so that a stay has the chain's mean and a spread that shrinks as the chain
 * grows. It shares every rate with the daily engine and is there to check it, and for questions in
 * which a day is too long a step.
 */
public final class FlowEngine {
  /** Tolerance that keeps whole seasons right to about eight digits. */
  public static final double USUAL_TOLERANCE = 1e-9;

  /** Absolute tolerance, in bees, cells and mites. */
  private static final double FRACTION_OF_A_MITE = 1e-7;

  private FlowEngine() {}

  /**
   * A finished run.
   *
   * @param trajectory every quantity on every day
   * @param evaluations how often the equations were evaluated
   * @param deepestNegative the most negative value that any variable took at the start of a day, 0
   *     or below; readings count it as 0. Within the tolerance it is rounding.
   */
  public record Run(Trajectory trajectory, int evaluations, double deepestNegative) {}

  /**
   * Runs one colony.
   *
   * @param scenario what is done, where and when
   * @param member the colony
   * @param stages stages per brood delay, 1 to 400
   * @param tolerance relative tolerance, 1e-13 to 1e-3
   * @return the season, with what is known of its accuracy
   * @throws OutOfRange when stages or tolerance lie outside their range
   */
  public static Run run(Scenario scenario, SimulatedColony member, int stages, double tolerance) {
    OutOfRange.check("stages", stages, 1, 400, "stages");
    OutOfRange.check("tolerance", tolerance, 1e-13, 1e-3, "1");
    Schedule schedule = Schedule.of(scenario);
    ColonyBlock start =
        StandardColony.on(scenario.model(), scenario.start()).colonies(List.of(member));
    FlowState state = FlowState.of(start, stages, scenario.model().mites().clumping());
    FlowEquations equations = new FlowEquations(state, schedule, scenario.model(), member);
    Trajectory.Recorder recorder = new Trajectory.Recorder(scenario.start(), scenario.days());
    AdaptiveFlow flow =
        new AdaptiveFlow(
            FRACTION_OF_A_MITE * tolerance / USUAL_TOLERANCE, tolerance, equations.bends());
    double[] deepest = {0};
    AdaptiveFlow.DayState each =
        (day, y) -> {
          for (double v : y) {
            deepest[0] = Math.min(deepest[0], v);
          }
          recorder.see(day, state.over(y));
        };
    double[] y = state.vector();
    each.at(0, y);
    for (int from = 0; from < schedule.days; ) {
      int to = Math.min(schedule.nextBreak(from), nextChange(member, scenario.start(), from));
      disturb(state.over(y), schedule, from);
      equations.enter(from);
      flow.run(equations, from, to, y, each);
      from = to;
    }
    return new Run(recorder.trajectory(), flow.evaluations(), deepest[0]);
  }

  /** The first day after a day on which the season changes the colony; far away if none does. */
  private static int nextChange(SimulatedColony member, LocalDate start, int day) {
    return member.changes().stream()
        .mapToLong(change -> change.from().toEpochDay() - start.toEpochDay())
        .filter(d -> d > day)
        .mapToInt(Math::toIntExact)
        .min()
        .orElse(Integer.MAX_VALUE);
  }

  private static void disturb(FlowState s, Schedule schedule, int day) {
    double bees = schedule.beesLeaving[day];
    double brood = schedule.broodLeaving[day];
    double cut = schedule.droneCut[day];
    double[] y = s.vector();
    double inCells = s.mitesInWorkerCells(0) + s.mitesInDroneCells(0);
    y[FlowState.MOVED_AWAY] += s.mitesOnBees(0) * bees + inCells * brood;
    s.scaleBees(1 - bees);
    for (int chain :
        new int[] {
          s.openWorker, s.openDrone, s.cappedWorker, s.cappedDrone, s.workerMothers, s.droneMothers
        }) {
      s.scale(chain, 1 - brood);
    }
    y[FlowState.CUT_OUT] += s.mitesInDroneCells(0) * cut;
    for (int chain : new int[] {s.openDrone, s.cappedDrone, s.droneMothers}) {
      s.scale(chain, 1 - cut);
    }
  }
}
