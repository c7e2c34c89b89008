package broodtide.fit;

import broodtide.engine.EnsembleRun;
import java.util.Arrays;

/**
 * What the washes left unknown of one unknown.
 *
 * @param prior what was believed before
 * @param median median after
 * @param low lower end of the 90 % band
 * @param high upper end of the 90 % band
 * @param shrinkage share of the prior's variance, on the log scale, that the washes took away; near
 *     0 they said nothing, near 1 they settled it; below 0 they widened it
 */
public record UnknownSummary(
    Prior prior, double median, double low, double high, double shrinkage) {
  static UnknownSummary of(Prior prior, double[] z) {
    double mean = Arrays.stream(z).average().orElseThrow();
    double variance = Arrays.stream(z).map(v -> (v - mean) * (v - mean)).average().orElseThrow();
    double[] sorted = z.clone();
    Arrays.sort(sorted);
    return new UnknownSummary(
        prior,
        prior.at(EnsembleRun.quantile(sorted, 0.5)),
        prior.at(EnsembleRun.quantile(sorted, 0.05)),
        prior.at(EnsembleRun.quantile(sorted, 0.95)),
        1 - variance);
  }
}
