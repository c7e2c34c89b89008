package broodtide.engine;

import java.time.LocalDate;
import java.util.List;

/**
 * The first days of runs that begin alike, played once. Plans differ from the day of the decision
 * on; who compares them plays the days before it a single time and goes on from there. The figures
 * are the same to the last bit. It keeps about a kilobyte for each colony beside the run itself.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @since 0.2.0
 */
public final class SharedPast {
  private final Scenario scenario;
  private final Schedule schedule;
  private final List<SimulatedColony> members;
  private final Watched watched;
  private final EnsembleRun run;

  /** Everything that a colony hands on to the next day, by colony. */
  private final double[][] states;

  private SharedPast(
      Scenario scenario, List<SimulatedColony> members, Watched watched, EnsembleRun run) {
    this.scenario = scenario;
    schedule = Schedule.of(scenario);
    this.members = List.copyOf(members);
    this.watched = watched;
    this.run = run;
    states = new double[members.size()][];
  }

  /**
   * {@return colonies at the end of a scenario, from which others go on}
   *
   * @param scenario the days that are shared; controls of its plan may act beyond them
   * @param started the members on the start day, in their order
   * @param members the colonies, at least one
   * @param watched what runs keep of these days, at most
   * @param workers threads; their number does not change the result
   */
  public static SharedPast of(
      Scenario scenario,
      StartedColonies started,
      List<SimulatedColony> members,
      Watched watched,
      Workers workers) {
    EnsembleRun run = EnsembleRun.empty(scenario, members.size(), watched);
    SharedPast past = new SharedPast(scenario, members, watched, run);
    Ensemble.run(scenario, started, members, past::keeper, workers, Progress.NONE);
    return past;
  }

  /**
   * {@return the same for more days}
   *
   * @param longer the days that are shared then, which begin with these
   * @param of its members
   * @param workers threads; their number does not change the result
   */
  public SharedPast upTo(Scenario longer, List<SimulatedColony> of, Workers workers) {
    SharedPast past = new SharedPast(longer, of, watched, EnsembleRun.after(run, longer, watched));
    Ensemble.run(longer, this, of, past::keeper, workers, Progress.NONE);
    return past;
  }

  private DayObserver keeper(int first, int count) {
    DayObserver keeper = run.keeper(first, count);
    return (day, view) -> {
      keeper.see(day, view);
      if (day == scenario.days() && view instanceof ColonyBlock block) {
        System.arraycopy(block.memory(), 0, states, first, count);
      }
    };
  }

  /** {@return the days that are shared} */
  public int days() {
    return scenario.days();
  }

  /**
   * {@return whether a run begins with these days: the same start, the same colonies, and nothing
   * done otherwise before they are over}
   *
   * @param season a scenario that goes on for longer
   * @param of its members
   * @param wanted what it keeps
   */
  public boolean begins(Scenario season, List<SimulatedColony> of, Watched wanted) {
    return season.days() > days()
        && of.size() == members.size()
        && watched.holds(wanted)
        && season.model().equals(scenario.model())
        && Schedule.of(season).beginsLike(schedule)
        && sameMembers(of);
  }

  private boolean sameMembers(List<SimulatedColony> of) {
    LocalDate end = scenario.start().plusDays(days());
    int courses = schedule.courses.size();
    for (int m = 0; m < members.size(); m++) {
      SimulatedColony ours = members.get(m);
      SimulatedColony theirs = of.get(m);
      if (ours == theirs) {
        continue;
      }
      if (ours.strength() != theirs.strength()
          || ours.startSize() != theirs.startSize()
          || ours.infestation() != theirs.infestation()
          || ours.vigour() != theirs.vigour()
          || ours.immigration() != theirs.immigration()
          || ours.infectivity() != theirs.infectivity()
          || !first(courses, ours.success()).equals(first(courses, theirs.success()))
          || !before(end, ours.changes()).equals(before(end, theirs.changes()))) {
        return false;
      }
    }
    return true;
  }

  private static List<SeasonChange> before(LocalDate end, List<SeasonChange> changes) {
    int some = changes.size();
    while (some > 0 && !changes.get(some - 1).from().isBefore(end)) {
      some--;
    }
    return changes.subList(0, some);
  }

  private static List<Double> first(int courses, List<Double> success) {
    return success.subList(0, Math.min(courses, success.size()));
  }

  /** {@return how many colonies there are} */
  public int members() {
    return members.size();
  }

  /** {@return what is kept of the shared days} */
  public Watched watched() {
    return watched;
  }

  /** What was kept of the shared days. */
  EnsembleRun run() {
    return run;
  }

  /** A block of the colonies from one number to before another, at the end of the shared days. */
  ColonyBlock block(int from, int end) {
    ColonyBlock block = new ColonyBlock(end - from, scenario.model().mites().clumping());
    ColonyBlock.fill(block::memoryRows, states, from, end);
    return block;
  }
}
