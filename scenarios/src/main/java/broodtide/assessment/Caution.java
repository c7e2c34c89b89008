package broodtide.assessment;

/** What is said below every answer, in one wording each. */
public final class Caution {
  /** Below every answer. */
  public static final String ANSWER =
      "Estimates, not instructions: the label, local law and your bee inspector or veterinarian"
          + " decide about treatments.";

  /** Below what is said of a wash with alcohol. */
  public static final String ALCOHOL = "Alcohol burns: never near a lit smoker.";

  private Caution() {}
}
