package broodtide.assessment;

import java.util.Arrays;

/**
 * One figure less another, colony by colony.
 *
 * @param mean mean difference; below 0 where the first is smaller
 * @param band the middle and the bands of the differences
 * @param chanceSmaller share of colonies in which the first is smaller, ties counting half
 */
public record Difference(double mean, QuantileSummary band, double chanceSmaller) {
  /**
   * {@return the first less the second; both by member}
   *
   * @param first figures by member
   * @param second figures of the same members, taken away from the first
   */
  public static Difference of(double[] first, double[] second) {
    double[] d = Comparison.differences(first, second);
    return new Difference(
        Arrays.stream(d).average().orElse(Double.NaN),
        QuantileSummary.of(d),
        Comparison.chanceSmaller(first, second));
  }
}
