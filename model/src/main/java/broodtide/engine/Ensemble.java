package broodtide.engine;

import java.util.List;

/** Many colonies of one scenario, run in blocks of lanes on all workers. */
public final class Ensemble {
  /** Colonies to a block, about: wide enough for vectors, near enough in memory; measured. */
  public static final int BLOCK = 126;

  private Ensemble() {}

  /** Makes the observer of one block. */
  @FunctionalInterface
  public interface BlockObserver {
    /**
     * {@return the observer of a block}
     *
     * @param first index of the member in lane 0
     * @param count members in the block
     */
    DayObserver of(int first, int count);
  }

  /**
   * Runs every member through the scenario.
   *
   * @param scenario what is done, where and when
   * @param start the standard year's state on the start day
   * @param members the colonies
   * @param observers sees each block; blocks run side by side, so each writes to its own place
   * @param workers threads
   * @param progress is told of every block done
   */
  public static void run(
      Scenario scenario,
      StandardColony start,
      List<SimulatedColony> members,
      BlockObserver observers,
      Workers workers,
      Progress progress) {
    run(scenario, 0, members, (first, part) -> start.colonies(part), observers, workers, progress);
  }

  /**
   * Runs every member through the scenario, from a state that has been worked out before.
   *
   * @param scenario what is done, where and when
   * @param started the members on the start day, in their order
   * @param members the colonies
   * @param observers sees each block; blocks run side by side, so each writes to its own place
   * @param workers threads
   * @param progress is told of every block done
   */
  public static void run(
      Scenario scenario,
      StartedColonies started,
      List<SimulatedColony> members,
      BlockObserver observers,
      Workers workers,
      Progress progress) {
    if (started.size() != members.size()) {
      throw new IllegalArgumentException(started.size() + " states of " + members.size());
    }
    run(
        scenario,
        0,
        members,
        (first, part) -> started.block(first, first + part.size()),
        observers,
        workers,
        progress);
  }

  /** Runs every member on from days that have been played before; observers see those after. */
  static void run(
      Scenario scenario,
      SharedPast past,
      List<SimulatedColony> members,
      BlockObserver observers,
      Workers workers,
      Progress progress) {
    run(
        scenario,
        past.days(),
        members,
        (first, part) -> past.block(first, first + part.size()),
        observers,
        workers,
        progress);
  }

  /** Makes a block of members on the day from which they run. */
  @FunctionalInterface
  private interface Begin {
    ColonyBlock block(int first, List<SimulatedColony> part);
  }

  private static void run(
      Scenario scenario,
      int from,
      List<SimulatedColony> members,
      Begin begin,
      BlockObserver observers,
      Workers workers,
      Progress progress) {
    Schedule schedule = Schedule.of(scenario);
    int width = width(members.size());
    int blocks = (members.size() + width - 1) / width;
    workers.run(
        blocks,
        block -> {
          int first = block * width;
          // copied, for a list may make its colonies anew whenever they are asked for
          List<SimulatedColony> part =
              List.copyOf(members.subList(first, Math.min(members.size(), first + width)));
          DailyEngine engine = DailyEngine.from(begin.block(first, part), scenario, schedule, part);
          DayObserver observer = observers.of(first, part.size());
          if (from == 0) {
            engine.run(observer);
          } else {
            engine.resume(from, observer);
          }
        },
        progress);
  }

  /** Near {@link #BLOCK} and alike: a block of few costs as much as one of many. Two can share. */
  static int width(int members) {
    int blocks = Math.max(members > BLOCK ? 2 : 1, (members + BLOCK / 2) / BLOCK);
    return Math.max(1, (members + blocks - 1) / blocks);
  }
}
