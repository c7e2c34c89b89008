package broodtide.assessment;

import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;

/**
 * The middle of an uncertain figure and its 50 and 90 % bands: straight between neighbouring values
 * (type 7 of Hyndman &amp; Fan 1996, Am. Stat. 50:361).
 *
 * @param q05 5 % lie below
 * @param q25 25 % lie below
 * @param median half lie below
 * @param q75 75 % lie below
 * @param q95 95 % lie below
 */
public record QuantileSummary(double q05, double q25, double median, double q75, double q95) {
  /**
   * {@return of equally likely values, at least one}
   *
   * @param values at least one, in any order
   */
  public static QuantileSummary of(double[] values) {
    Percentile p = new Percentile().withEstimationType(EstimationType.R_7);
    p.setData(values);
    return new QuantileSummary(
        p.evaluate(5), p.evaluate(25), p.evaluate(50), p.evaluate(75), p.evaluate(95));
  }

  /**
   * {@return of values of unequal weight; equal weights give what {@link #of(double[])} gives}
   *
   * @param values at least one, in any order
   * @param weights one each, 0 or more; when all are 0 they count as equal
   */
  public static QuantileSummary of(double[] values, double[] weights) {
    WeightedValues v = WeightedValues.of(values, weights);
    return new QuantileSummary(
        v.quantile(0.05), v.quantile(0.25), v.quantile(0.5), v.quantile(0.75), v.quantile(0.95));
  }
}
