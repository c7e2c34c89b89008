package broodtide.engine;

import java.util.List;

/**
 * The daily cohort engine: a block of colonies in lockstep, one day at a time, every brood delay
 * exact. A single colony is a block of one. What a colony does depends on its own member alone,
 * never on the width of the block or its neighbours.
 *
 * <p>A day runs: splits and cut comb in the morning; mites in cells killed; cells due open; mites
 * that come out infect adults; bees emerge and age; mites enter, die with their bees or are killed,
 * and cells are closed over them; eggs are laid; mites from outside arrive last. What counts per
 * bee counts the adults of the morning, after splits.
 */
public final class DailyEngine {
  private final Schedule schedule;
  private final ColonyBlock block;
  private final Lanes lanes;
  private final Disturbances disturbances;
  private final BroodStep brood;
  private final Emergence emergence;
  private final MiteStep mites;
  private final BeeStep bees;

  private DailyEngine(ColonyBlock block, ColonyModel model, Schedule schedule, Lanes lanes) {
    this.schedule = schedule;
    this.block = block;
    this.lanes = lanes;
    disturbances = new Disturbances(block, lanes, schedule);
    brood = new BroodStep(block, lanes, model.bees());
    mites = new MiteStep(block, lanes, model.mites(), model.bees());
    bees = new BeeStep(block, lanes, model);
    emergence = new Emergence(block, lanes, model.mites(), model.bees());
  }

  /**
   * {@return colonies ready to run from a start state}
   *
   * @param scenario what is done, where and when
   * @param start the standard year's state on the scenario's start day
   * @param members one per colony, at least one
   */
  public static DailyEngine of(
      Scenario scenario, StandardColony start, List<SimulatedColony> members) {
    if (members.isEmpty()) {
      throw new IllegalArgumentException("an engine needs at least one member");
    }
    return from(start.colonies(members), scenario, Schedule.of(scenario), members);
  }

  /** Colonies that stand on the start day, with the days already written out for many blocks. */
  static DailyEngine from(
      ColonyBlock block, Scenario scenario, Schedule schedule, List<SimulatedColony> members) {
    Lanes lanes = new Lanes(members, schedule.start, block.rows, schedule.courses.size());
    return new DailyEngine(block, scenario.model(), schedule, lanes);
  }

  static DailyEngine from(ColonyBlock block, Scenario scenario, List<SimulatedColony> members) {
    return from(block, scenario, Schedule.of(scenario), members);
  }

  static DailyEngine of(ColonyBlock block, ColonyModel model, Schedule schedule, Lanes lanes) {
    return new DailyEngine(block, model, schedule, lanes);
  }

  /**
   * Runs one colony and keeps every quantity.
   *
   * @param scenario what is done, where and when
   * @param member what sets the colony apart
   * @return the season
   */
  public static Trajectory run(Scenario scenario, SimulatedColony member) {
    StandardColony start = StandardColony.on(scenario.model(), scenario.start());
    Trajectory.Recorder recorder = new Trajectory.Recorder(scenario.start(), scenario.days());
    of(scenario, start, List.of(member)).run(recorder);
    return recorder.trajectory();
  }

  /**
   * Runs the scenario to its end. The engine cannot be used again.
   *
   * @param observer is shown the state at the start of every day and at the end
   */
  public void run(DayObserver observer) {
    observer.see(0, block);
    runFrom(0, observer);
  }

  /** Goes on from a day whose state the block holds, and which the observer has seen. */
  void resume(int from, DayObserver observer) {
    for (int day = 0; day < from; day++) {
      lanes.enter(day);
    }
    runFrom(from, observer);
  }

  private void runFrom(int first, DayObserver observer) {
    for (int day = first; day < schedule.days; day++) {
      step(day);
      observer.see(day + 1, block);
    }
  }

  private void step(int day) {
    lanes.enter(day);
    disturbances.morning(day);
    boolean treated = disturbances.miticides(day, mites.kill);
    brood.count();
    emergence.run(day, schedule.fertility[day]);
    bees.run(
        brood.perAdult,
        emergence,
        schedule.springRelease[day],
        schedule.beeCost[day],
        schedule.winterShare[day]);
    mites.run(
        day,
        emergence.mites,
        brood.someAdults,
        bees.dead,
        1 - schedule.broodCost[day],
        treated,
        schedule.immigration[day]);
    brood.lay(day, schedule.laying[day], schedule.droneShare[day]);
    block.dayDone(day);
  }
}
