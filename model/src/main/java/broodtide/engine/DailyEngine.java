package broodtide.engine;

import java.util.List;

/**
 * The daily cohort engine: a block of colonies in lockstep, one day at a time, every brood delay
 * exact. A single colony is a block of one. What a colony does depends on its own member alone,
 * never on the width of the block or its neighbours.
 *
 * <p>A day runs: splits and cut comb in the morning; laying and capping; mites in cells killed;
 * cells due open, mites enter, die or are killed; bees emerge and age.
 */
public final class DailyEngine {
  private final Schedule schedule;
  private final ColonyBlock block;
  private final Disturbances disturbances;
  private final BroodStep brood;
  private final MiteStep mites;
  private final BeeStep bees;
  private final double[] adults;
  private final double[] carried;

  private DailyEngine(ColonyBlock block, Scenario scenario, List<Member> members) {
    schedule = Schedule.of(scenario);
    this.block = block;
    Lanes lanes = new Lanes(members, schedule.courses.size());
    ColonyModel model = scenario.model();
    disturbances = new Disturbances(block, lanes, schedule);
    brood = new BroodStep(block, lanes, model.bees());
    mites = new MiteStep(block, lanes, model.mites(), model.bees());
    bees = new BeeStep(block, model.bees());
    adults = new double[block.width];
    carried = new double[block.width];
  }

  /**
   * Colonies ready to run from a start state.
   *
   * @param scenario what is done, where and when
   * @param start the standard year's state on the scenario's start day
   * @param members one per colony, at least one
   */
  public static DailyEngine of(Scenario scenario, StartState start, List<Member> members) {
    if (members.isEmpty()) {
      throw new IllegalArgumentException("an engine needs at least one member");
    }
    return new DailyEngine(start.colonies(members), scenario, members);
  }

  static DailyEngine from(ColonyBlock block, Scenario scenario, List<Member> members) {
    return new DailyEngine(block, scenario, members);
  }

  /** Runs one colony and keeps every quantity. */
  public static Trajectory run(Scenario scenario, Member member) {
    StartState start = StartState.on(scenario.model(), scenario.start());
    Trajectory.Recorder recorder = new Trajectory.Recorder(scenario.start(), scenario.days());
    of(scenario, start, List.of(member)).run(recorder);
    return recorder.trajectory();
  }

  /** Runs the scenario to its end. The engine cannot be used again. */
  public void run(DayObserver observer) {
    observer.see(0, block);
    for (int day = 0; day < schedule.days; day++) {
      step(day);
      observer.see(day + 1, block);
    }
  }

  private void step(int day) {
    disturbances.morning(day);
    census();
    brood.run(day, adults, schedule.laying[day], schedule.droneShare[day], schedule.broodCost[day]);
    disturbances.miticides(day, mites.kill);
    mites.run(
        day,
        adults,
        brood.workerCapped,
        brood.droneCapped,
        schedule.fertility[day],
        schedule.immigration[day]);
    bees.run(
        adults,
        carried,
        mites.sound,
        mites.harmed,
        schedule.winterShare[day],
        schedule.springRelease[day],
        schedule.beeCost[day]);
  }

  /** Counts adults and the mites they carry this morning, before either changes. */
  private void census() {
    sum(adults, block.hiveSound, block.hiveHarmed, block.foragerSound);
    add(adults, block.foragerHarmed, block.winterSound, block.winterHarmed);
    System.arraycopy(block.phoretic, 0, carried, 0, carried.length);
  }

  private static void sum(double[] out, double[] a, double[] b, double[] c) {
    for (int l = 0; l < out.length; l++) {
      out[l] = a[l] + b[l] + c[l];
    }
  }

  private static void add(double[] out, double[] a, double[] b, double[] c) {
    for (int l = 0; l < out.length; l++) {
      out[l] += a[l] + b[l] + c[l];
    }
  }
}
