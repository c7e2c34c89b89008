package broodtide.engine;

import java.util.Arrays;
import java.util.List;

/**
 * Simulated colonies as they stand on the start day. To seek the mites with which a colony leaves
 * the standard year takes about two runs of the lead; who plays the same colonies through several
 * plans does it once and keeps what it led to, some 700 bytes for each colony.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @since 0.2.0
 */
public final class StartedColonies {
  private final double clumping;

  /** Bees, brood and mites, by colony. */
  private final double[][] states;

  private StartedColonies(double clumping, double[][] states) {
    this.clumping = clumping;
    this.states = states;
  }

  /**
   * {@return colonies on the start day}
   *
   * @param start what colonies start from on that day
   * @param members the colonies, at least one; what they do from that day on plays no part
   * @param workers threads; their number does not change the result
   */
  public static StartedColonies of(
      StandardColony start, List<SimulatedColony> members, Workers workers) {
    double[][] states = new double[members.size()][];
    int width = Ensemble.width(states.length);
    workers.run(
        (states.length + width - 1) / width,
        block -> {
          int first = block * width;
          int end = Math.min(states.length, first + width);
          ColonyBlock begun = start.colonies(List.copyOf(members.subList(first, end)));
          System.arraycopy(begun.states(), 0, states, first, end - first);
        },
        Progress.NONE);
    return new StartedColonies(start.clumping(), states);
  }

  /**
   * {@return some of the colonies}
   *
   * @param which numbers of the colonies, from 0; one may come several times
   */
  public StartedColonies some(int[] which) {
    return new StartedColonies(
        clumping, Arrays.stream(which).mapToObj(i -> states[i]).toArray(double[][]::new));
  }

  /**
   * {@return the first few of the colonies}
   *
   * @param most how many, no more than there are
   */
  public StartedColonies first(int most) {
    return new StartedColonies(clumping, Arrays.copyOf(states, most));
  }

  /** {@return how many colonies there are} */
  public int size() {
    return states.length;
  }

  /** A block of the colonies from one number to before another. */
  ColonyBlock block(int from, int end) {
    ColonyBlock block = new ColonyBlock(end - from, clumping);
    ColonyBlock.fill(block::stateRows, states, from, end);
    block.begin();
    return block;
  }
}
