package broodtide.fit;

import java.util.SplittableRandom;

/**
 * Random numbers in streams: one per purpose, split again per member, so that what one part of a
 * computation draws never depends on how many others drew before it or on which thread.
 */
public final class Streams {
  private Streams() {}

  /** What numbers are for. The order is part of the results. */
  public enum Purpose {
    /** Where particles start. */
    START,
    /** Which particles go on. */
    RESAMPLE,
    /** How particles move. */
    MOVE,
    /** What is to come. */
    PREDICT,
    /** Invented data. */
    SIMULATE,
    /** The luck of the washes that a rule asks for. */
    RULE_WASHES,
    /** Data drawn again from themselves, to see how far a figure rests on chance. */
    BOOTSTRAP,
    /** Colonies as believed before any wash, to see which unknown matters. */
    SENSITIVITY
  }

  /**
   * {@return the stream of a purpose}
   *
   * @param seed seed of the random numbers
   * @param purpose what the numbers are for
   */
  public static SplittableRandom of(long seed, Purpose purpose) {
    SplittableRandom root = new SplittableRandom(seed);
    SplittableRandom stream = root.split();
    for (int i = 0; i < purpose.ordinal(); i++) {
      stream = root.split();
    }
    return stream;
  }

  /**
   * {@return one stream per member}
   *
   * @param seed seed of the random numbers
   * @param purpose what the numbers are for
   * @param members how many streams, one per member
   */
  public static SplittableRandom[] of(long seed, Purpose purpose, int members) {
    SplittableRandom stream = of(seed, purpose);
    SplittableRandom[] out = new SplittableRandom[members];
    for (int i = 0; i < members; i++) {
      out[i] = stream.split();
    }
    return out;
  }
}
