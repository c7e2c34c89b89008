package broodtide.control;

import broodtide.measure.OutOfRange;

/**
 * How a miticide that evaporates hangs on the warmth of the day. Below one daily high it gives off
 * nothing, from another on it acts in full, and in between in proportion; above a third its costs
 * double with every {@value #DOUBLING} degrees. Immutable.
 *
 * @param idle daily high up to which it does nothing, degrees Celsius
 * @param full daily high from which it acts in full, above {@code idle}, degrees Celsius
 * @param harmful daily high above which it costs more bees and brood, degrees Celsius
 */
public record WarmthResponse(double idle, double full, double harmful) {
  /** Degrees over which costs double: from 29.5, where labels of formic acid end, to 33. Choice. */
  public static final double DOUBLING = 3.5;

  /** The warmth of the day does not matter. */
  public static final WarmthResponse STEADY = new WarmthResponse(-100, -99, 100);

  /** Checks ranges. */
  public WarmthResponse {
    OutOfRange.check("idle", idle, -100, 60, "degrees Celsius");
    OutOfRange.check("full", full, Math.nextUp(idle), 60, "degrees Celsius");
    OutOfRange.check("harmful", harmful, full, 100, "degrees Celsius");
  }

  /**
   * {@return share of the full hazards on a day, 0 to 1}
   *
   * @param high daily high, degrees Celsius
   */
  public double action(double high) {
    return Math.max(0, Math.min(1, (high - idle) / (full - idle)));
  }

  /**
   * {@return factor on the costs in bees and brood on a day, 1 or more where it acts in full; as
   * much less as it acts where it is cool}
   *
   * @param high daily high, degrees Celsius
   */
  public double cost(double high) {
    return high <= harmful ? action(high) : Math.pow(2, (high - harmful) / DOUBLING);
  }
}
