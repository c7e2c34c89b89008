package broodtide.assessment;

/**
 * What one more wash of a hive on the decision date is worth, before it is made.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param gain by how much it lowers the expected winter loss of the hive together with the trouble
 *     of treating it, in lost hives, 0 or more
 * @param changes chance that its count changes the plan, 0 to 1
 * @since 0.2.0
 */
public record WashGain(double gain, double changes) {
  /** Least gain that is worth the bees and the work of a wash: two lost hives in 1,000. Choice. */
  public static final double WORTH = 0.002;

  /** {@return whether the wash is worth its trouble} */
  public boolean worthIt() {
    return gain >= WORTH;
  }
}
