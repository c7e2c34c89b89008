package broodtide.fit;

import broodtide.engine.EnsembleRun;
import java.util.Arrays;

/**
 * What the washes left unknown of one unknown.
 *
 * @param unknown the unknown
 * @param course number of the miticide course that it belongs to from 0 in the order of the plan,
 *     or -1 when it is the colony's
 * @param season number of the season of the bees that it belongs to, from 0, the one in which the
 *     record begins; 0 as well when it is the same in all
 * @param prior what was believed before
 * @param median median after
 * @param low lower end of the 90 % band
 * @param high upper end of the 90 % band
 * @param shrinkage share of the prior's variance, on the log scale, that the washes took away; near
 *     0 they said nothing, near 1 they settled it; below 0 they widened it
 */
public record UnknownSummary(
    Unknown unknown,
    int course,
    int season,
    Prior prior,
    double median,
    double low,
    double high,
    double shrinkage) {
  static UnknownSummary of(ParticleLayout.Place place, Prior prior, double[] z) {
    double mean = Arrays.stream(z).average().orElseThrow();
    double variance = Arrays.stream(z).map(v -> (v - mean) * (v - mean)).average().orElseThrow();
    double[] sorted = z.clone();
    Arrays.sort(sorted);
    return new UnknownSummary(
        place.unknown(),
        place.course(),
        place.season(),
        prior,
        prior.at(EnsembleRun.quantile(sorted, 0.5)),
        prior.at(EnsembleRun.quantile(sorted, 0.05)),
        prior.at(EnsembleRun.quantile(sorted, 0.95)),
        1 - variance);
  }
}
