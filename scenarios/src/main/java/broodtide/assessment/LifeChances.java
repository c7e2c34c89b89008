package broodtide.assessment;

import broodtide.engine.EnsembleRun;
import broodtide.engine.Quantity;
import broodtide.engine.Survival;
import java.time.LocalDate;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * By day and simulated colony, the chance of being alive that nothing was known of on the day on
 * which the colony was last known to be. A day is worked out when it is first asked for; days that
 * are asked for in their order cost least. Safe to share between threads.
 */
final class LifeChances {
  private final Survival survival;
  private final EnsembleRun run;
  private final LocalDate from;
  private final int first;
  private final float[] @Nullable [] known;

  /** Fewest adults since {@link #from} up to the day that was reached. */
  private double[] least = {};

  /** The fewest for which {@link #enough} stands. */
  private double[] counted = {};

  private double[] enough = {};
  private int reached = -1;

  /**
   * Chances of a run.
   *
   * @param from the day on which the colony was last known to be alive
   */
  LifeChances(Survival survival, EnsembleRun run, LocalDate from) {
    this.survival = survival;
    this.run = run;
    this.from = from;
    first = run.index(from);
    known = new float[run.scenario().days() + 1][];
  }

  /** By simulated colony on a day, in days since the start; not to be changed. */
  synchronized float[] on(int day) {
    int asked = Math.max(first, day);
    float[] row = known[asked];
    if (row == null) {
      row = workOut(asked);
      known[asked] = row;
    }
    return row;
  }

  private float[] workOut(int day) {
    if (reached < 0 || day < reached) {
      least = run.values(Quantity.ADULTS, from);
      counted = least.clone();
      enough = Arrays.stream(least).map(survival::enough).toArray();
      reached = first;
    }
    while (reached < day) {
      run.lower(Quantity.ADULTS, ++reached, least);
    }
    double spared = day == first ? 1 : survival.spared(from, from.plusDays(day - first));
    float[] out = new float[least.length];
    for (int m = 0; m < out.length; m++) {
      if (least[m] < counted[m]) {
        counted[m] = least[m];
        enough[m] = survival.enough(least[m]);
      }
      out[m] = (float) (enough[m] * spared);
    }
    return out;
  }
}
