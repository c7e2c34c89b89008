package broodtide.assessment;

/** What is said below every answer, in one wording each. */
public final class Caution {
  /** Below every answer. */
  public static final String ANSWER =
      "Estimates, not instructions: the label, local law and your bee inspector or veterinarian"
          + " decide about treatments.";

  /** Below what is said of a wash with alcohol. */
  public static final String ALCOHOL =
      "Alcohol is flammable: keep it away from a lit smoker, and work outdoors.";

  /** Before bees are taken for a wash. */
  public static final String WASH = "Look for the queen first: a wash kills the bees in it.";

  /** Below an answer with a plan that uses an acid. */
  public static final String ACID =
      "Acids burn skin, eyes and lungs: wear acid-proof gloves and goggles, and a respirator for"
          + " acid vapour as the label says.";

  /**
   * {@return what is said below an answer about plans}
   *
   * @param acid whether one of them uses an acid
   */
  public static String answer(boolean acid) {
    return acid ? ANSWER + " " + ACID : ANSWER;
  }

  private Caution() {}
}
