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
  /** Shrinkage below which the washes said little, and from which they said much; choice. */
  private static final double LITTLE = 0.15;

  private static final double MUCH = 0.5;

  /** How much the washes said. */
  public enum Learned {
    /** They left less sure of it than before. */
    LESS_SURE,
    /** Little: what is believed is nearly what was believed before. */
    LITTLE,
    /** Something. */
    SOMETHING,
    /** Much. */
    MUCH
  }

  /** {@return how much the washes said of it} */
  public Learned learned() {
    if (shrinkage < -LITTLE) {
      return Learned.LESS_SURE;
    }
    if (shrinkage < LITTLE) {
      return Learned.LITTLE;
    }
    return shrinkage < MUCH ? Learned.SOMETHING : Learned.MUCH;
  }

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
