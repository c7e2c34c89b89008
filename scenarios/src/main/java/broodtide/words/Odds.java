package broodtide.words;

import java.util.List;

/**
 * Chances in plain words, as natural frequencies, which readers grasp better than per cents
 * (Gigerenzer &amp; Hoffrage 1995, Psychol. Rev. 102:684; from memory).
 */
public final class Odds {
  private record Words(int of, int in) {
    double chance() {
      return (double) of / in;
    }
  }

  private static final List<Words> LADDER =
      List.of(
          new Words(1, 100),
          new Words(1, 50),
          new Words(1, 20),
          new Words(1, 10),
          new Words(1, 7),
          new Words(1, 5),
          new Words(1, 4),
          new Words(1, 3),
          new Words(2, 5),
          new Words(1, 2),
          new Words(3, 5),
          new Words(2, 3),
          new Words(3, 4),
          new Words(4, 5),
          new Words(6, 7),
          new Words(9, 10),
          new Words(19, 20));

  /** Below this a chance is called next to none: an ensemble of a few thousand cannot say less. */
  private static final double NEVER = 0.005;

  private static final double ALWAYS = 0.97;

  private Odds() {}

  /** What kind of words a chance takes. */
  private enum Kind {
    NEVER,
    SOMETIMES,
    EVEN,
    ALWAYS
  }

  private static Kind kind(double chance) {
    if (!(chance >= 0 && chance <= 1)) {
      throw new IllegalArgumentException("chance is " + chance + "; expected 0 to 1");
    }
    if (chance < NEVER) {
      return Kind.NEVER;
    }
    if (chance > ALWAYS) {
      return Kind.ALWAYS;
    }
    return nearest(chance).in() == 2 ? Kind.EVEN : Kind.SOMETIMES;
  }

  private static String counted(double chance) {
    Words best = nearest(chance);
    return "about " + best.of() + " in " + best.in();
  }

  /**
   * {@return a chance in words: {@code almost never}, {@code about 1 in 4}, {@code about even},
   * {@code about 4 in 5}, {@code almost certainly}} The nearest rung by log odds is taken.
   *
   * @param chance 0 to 1
   * @throws IllegalArgumentException outside that range
   */
  public static String words(double chance) {
    return switch (kind(chance)) {
      case NEVER -> "almost never";
      case ALWAYS -> "almost certainly";
      case EVEN -> "about even";
      case SOMETIMES -> counted(chance);
    };
  }

  /**
   * {@return whether a chance is so near to none or all that its words stand for an adverb and not
   * for odds: {@code almost never}, {@code almost certainly}}
   *
   * @param chance 0 to 1
   * @throws IllegalArgumentException outside that range
   */
  public static boolean nearlySure(double chance) {
    return kind(chance) == Kind.NEVER || kind(chance) == Kind.ALWAYS;
  }

  /**
   * {@return the same about seasons: {@code in about 1 in 4 simulated colonies}}
   *
   * @param chance 0 to 1
   * @throws IllegalArgumentException outside that range
   */
  public static String seasons(double chance) {
    return switch (kind(chance)) {
      case NEVER -> "in almost none of the simulated colonies";
      case ALWAYS -> "in nearly all simulated colonies";
      case EVEN -> "in about half of the simulated colonies";
      case SOMETIMES -> "in " + counted(chance) + " simulated colonies";
    };
  }

  private static Words nearest(double chance) {
    Words best = LADDER.get(0);
    for (Words w : LADDER) {
      if (Math.abs(logit(w.chance()) - logit(chance))
          < Math.abs(logit(best.chance()) - logit(chance))) {
        best = w;
      }
    }
    return best;
  }

  private static double logit(double p) {
    return Math.log(p / (1 - p));
  }
}
