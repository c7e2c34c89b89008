package broodtide.engine;

import broodtide.measure.OutOfRange;
import java.util.Arrays;

/**
 * The fewest adult bees that each colony of a block has had at the start of any day since a given
 * one: the running minimum on which it hangs whether the colony lives.
 */
public final class LeastAdults implements DayObserver {
  private final int since;
  private final double[] least;

  /**
   * Nothing seen yet.
   *
   * @param lanes colonies of the block, 1 or more
   * @param since first day that counts, in days since the start, 0 or more
   */
  public LeastAdults(int lanes, int since) {
    OutOfRange.check("lanes", lanes, 1, Integer.MAX_VALUE, "colonies");
    OutOfRange.check("since", since, 0, Integer.MAX_VALUE, "days");
    this.since = since;
    least = new double[lanes];
    Arrays.fill(least, Double.POSITIVE_INFINITY);
  }

  @Override
  public void see(int day, ColonyView view) {
    for (int l = 0; day >= since && l < least.length; l++) {
      least[l] = Math.min(least[l], view.adults(l));
    }
  }

  /**
   * {@return the fewest adults so far; infinity before the first day that counts}
   *
   * @param lane the colony, from 0
   */
  public double of(int lane) {
    return least[lane];
  }
}
