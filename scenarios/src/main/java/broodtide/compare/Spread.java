package broodtide.compare;

import broodtide.engine.EnsembleRun;
import java.util.Arrays;

/**
 * The middle of an uncertain figure and its 50 and 90 % bands.
 *
 * @param q05 5 % lie below
 * @param q25 25 % lie below
 * @param median half lie below
 * @param q75 75 % lie below
 * @param q95 95 % lie below
 */
public record Spread(double q05, double q25, double median, double q75, double q95) {
  /**
   * {@return of equally likely values, at least one}
   *
   * @param values at least one, in any order
   */
  public static Spread of(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return new Spread(
        EnsembleRun.quantile(sorted, 0.05),
        EnsembleRun.quantile(sorted, 0.25),
        EnsembleRun.quantile(sorted, 0.5),
        EnsembleRun.quantile(sorted, 0.75),
        EnsembleRun.quantile(sorted, 0.95));
  }
}
