package broodtide.engine;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Chosen quantities of many colonies on the days of one scenario. Colonies weigh the same. Values
 * are kept in single precision, seven digits, so that thousands of colonies and several plans fit
 * into half a gigabyte.
 */
public final class EnsembleRun {
  /** Stands for the values of a day on which a quantity is not kept. */
  private static final float[] NOT_KEPT = {};

  private final Scenario scenario;
  private final int members;
  private final Map<Quantity, float[][]> kept = new EnumMap<>(Quantity.class);

  private EnsembleRun(Scenario scenario, int members) {
    this.scenario = scenario;
    this.members = members;
  }

  /** A run that its {@link #keeper} fills. */
  static EnsembleRun empty(Scenario scenario, int members, Watched watched) {
    EnsembleRun run = new EnsembleRun(scenario, members);
    for (Quantity q : watched.quantities()) {
      run.kept.put(q, run.room(q, watched, new float[scenario.days() + 1][], 0));
    }
    return run;
  }

  /** Makes room for a quantity from a day on; a day on which it is not kept has none. */
  private float[][] room(Quantity quantity, Watched watched, float[][] days, int from) {
    for (int day = from; day < days.length; day++) {
      boolean kept = watched.keeps(quantity, scenario.start().plusDays(day));
      days[day] = kept ? new float[members] : NOT_KEPT;
    }
    return days;
  }

  /** A run whose first days are those of another, kept once for both. */
  static EnsembleRun after(EnsembleRun past, Scenario scenario, Watched watched) {
    EnsembleRun run = new EnsembleRun(scenario, past.members);
    int from = past.scenario.days() + 1;
    for (Quantity q : watched.quantities()) {
      float[][] days = Arrays.copyOf(past.kept(q), scenario.days() + 1);
      run.kept.put(q, run.room(q, watched, days, from));
    }
    return run;
  }

  /**
   * Runs colonies and keeps quantities.
   *
   * @param scenario what is done, where and when
   * @param start the standard year's state on the start day
   * @param members the colonies, at least one
   * @param watched what to keep
   * @param workers threads
   * @param progress is told of every block done
   * @return the finished run
   */
  public static EnsembleRun of(
      Scenario scenario,
      StandardColony start,
      List<SimulatedColony> members,
      Watched watched,
      Workers workers,
      Progress progress) {
    EnsembleRun run = empty(scenario, members.size(), watched);
    Ensemble.run(scenario, start, members, run::keeper, workers, progress);
    return run;
  }

  /**
   * Runs colonies from a state that has been worked out before, and keeps quantities.
   *
   * @param scenario what is done, where and when
   * @param started the members on the start day, in their order
   * @param members the colonies, at least one
   * @param watched what to keep
   * @param workers threads
   * @param progress is told of every block done
   * @return the finished run
   */
  public static EnsembleRun of(
      Scenario scenario,
      StartedColonies started,
      List<SimulatedColony> members,
      Watched watched,
      Workers workers,
      Progress progress) {
    EnsembleRun run = empty(scenario, members.size(), watched);
    Ensemble.run(scenario, started, members, run::keeper, workers, progress);
    return run;
  }

  /**
   * Runs colonies on from days that have been played before, and keeps quantities.
   *
   * @param scenario what is done, where and when
   * @param past the days before, which {@link SharedPast#begins begin} the scenario
   * @param members the colonies, at least one
   * @param watched what to keep
   * @param workers threads
   * @param progress is told of every block done
   * @return the finished run
   */
  public static EnsembleRun of(
      Scenario scenario,
      SharedPast past,
      List<SimulatedColony> members,
      Watched watched,
      Workers workers,
      Progress progress) {
    EnsembleRun run = after(past.run(), scenario, watched);
    Ensemble.run(scenario, past, members, run::keeper, workers, progress);
    return run;
  }

  /**
   * {@return the same run as far as a shorter one goes}
   *
   * @param shorter a scenario that differs from the run's in nothing up to its own end
   */
  public EnsembleRun upTo(Scenario shorter) {
    if (!shorter.start().equals(scenario.start()) || shorter.days() > scenario.days()) {
      throw new IllegalArgumentException(
          "a run from "
              + scenario.start()
              + " over "
              + scenario.days()
              + " days holds none from "
              + shorter.start()
              + " over "
              + shorter.days());
    }
    EnsembleRun part = new EnsembleRun(shorter, members);
    kept.forEach((q, values) -> part.kept.put(q, Arrays.copyOf(values, shorter.days() + 1)));
    return part;
  }

  /** Keeps the quantities of a block. */
  DayObserver keeper(int first, int count) {
    BlockRow row = new BlockRow(count);
    return (day, view) ->
        kept.forEach(
            (quantity, values) -> {
              if (values[day] != NOT_KEPT) {
                row.read(quantity, day, view, values[day], first);
              }
            });
  }

  /** {@return what was run} */
  public Scenario scenario() {
    return scenario;
  }

  /** {@return number of colonies} */
  public int members() {
    return members;
  }

  /**
   * {@return a copy of a quantity's values at the start of a day, by member}
   *
   * @param quantity one of those that were kept
   * @param day a day of the run, its end included
   */
  public double[] values(Quantity quantity, LocalDate day) {
    return widened(values(quantity, index(day)));
  }

  /**
   * {@return the least of a quantity's values from one day to another, both counted, by member}
   * Adults since the last wash, for one, say whether a colony lives.
   *
   * @param quantity one of those that were kept
   * @param from a day of the run
   * @param to a day of the run, not before {@code from}
   */
  public double[] least(Quantity quantity, LocalDate from, LocalDate to) {
    double[] least = values(quantity, from);
    for (int day = index(from) + 1; day <= index(to); day++) {
      lower(quantity, day, least);
    }
    return least;
  }

  /**
   * Takes in what a quantity was on a day where it was less.
   *
   * @param quantity one of those that were kept
   * @param day days since the start
   * @param least the least so far, by member; is lowered
   */
  public void lower(Quantity quantity, int day, double[] least) {
    float[] row = values(quantity, day);
    for (int m = 0; m < least.length; m++) {
      least[m] = Math.min(least[m], row[m]);
    }
  }

  /**
   * {@return one member's value at the start of a day, by days since the start}
   *
   * @param quantity one of those that were kept
   * @param day days since the start
   * @param member number of the colony, from 0
   */
  public double value(Quantity quantity, int day, int member) {
    return values(quantity, day)[member];
  }

  /**
   * {@return quantiles of a quantity on a day}
   *
   * @param levels each 0 to 1; 0 gives the smallest value and 1 the largest
   * @param quantity one of those that were kept
   * @param day days since the start
   */
  public double[] quantiles(Quantity quantity, int day, double... levels) {
    double[] sorted = widened(values(quantity, day));
    Arrays.sort(sorted);
    double[] out = new double[levels.length];
    for (int i = 0; i < levels.length; i++) {
      out[i] = quantile(sorted, levels[i]);
    }
    return out;
  }

  /**
   * {@return a quantile of sorted values, straight between neighbours}
   *
   * @param sorted at least one value, rising
   * @param level 0 to 1
   */
  public static double quantile(double[] sorted, double level) {
    double at = level * (sorted.length - 1);
    int below = (int) Math.floor(at);
    int above = Math.min(sorted.length - 1, below + 1);
    return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
  }

  /**
   * {@return days since the start}
   *
   * @param day a day of the run, its end included
   */
  public int index(LocalDate day) {
    long i = day.toEpochDay() - scenario.start().toEpochDay();
    if (i < 0 || i > scenario.days()) {
      throw new IllegalArgumentException(
          day
              + " lies outside "
              + scenario.start()
              + " to "
              + scenario.start().plusDays(scenario.days()));
    }
    return Math.toIntExact(i);
  }

  private static double[] widened(float[] row) {
    double[] out = new double[row.length];
    for (int m = 0; m < out.length; m++) {
      out[m] = row[m];
    }
    return out;
  }

  /**
   * {@return one member's values, day by day}
   *
   * @param quantity one of those kept
   * @param member number of the member, from 0
   */
  public float[] series(Quantity quantity, int member) {
    float[] out = new float[scenario.days() + 1];
    for (int day = 0; day < out.length; day++) {
      out[day] = values(quantity, day)[member];
    }
    return out;
  }

  private float[] values(Quantity quantity, int day) {
    float[] values = kept(quantity)[day];
    if (values == NOT_KEPT) {
      throw new IllegalArgumentException(
          quantity + " was not kept on " + scenario.start().plusDays(day));
    }
    return values;
  }

  private float[][] kept(Quantity quantity) {
    float[][] values = kept.get(quantity);
    if (values == null) {
      throw new IllegalArgumentException(quantity + " was not kept in this run");
    }
    return values;
  }
}
