package broodtide.words;

import broodtide.wash.SamplePlan;

/** How much one wash can tell, in a sentence. */
public final class PrecisionWords {
  /** From this half-width on, as a share of the rate, an interval reaches nothing at all. */
  private static final double NO_USE = 1;

  private PrecisionWords() {}

  /**
   * {@return how wide the interval of a wash is, and how many bees narrow it to a quarter}
   *
   * @param perHundred mites per 100 bees that the method would find in all bees, above 0, below 100
   * @param bees bees in the wash, 1 or more
   */
  public static String sentence(double perHundred, int bees) {
    SamplePlan plan = SamplePlan.usual();
    double precision = plan.precision(perHundred, bees, 0.9);
    String needed = Digits.two(plan.beesFor(perHundred, 0.25, 0.9));
    return precision < NO_USE
        ? "With "
            + Digits.count(bees)
            + " bees the 90 % interval reaches about "
            + Digits.percent(precision)
            + " either way; about "
            + needed
            + " bees narrow that to 25 %."
        : "With "
            + Digits.count(bees)
            + " bees there are too few mites for a useful estimate; about "
            + needed
            + " bees narrow the 90 % interval to 25 % either way.";
  }
}
