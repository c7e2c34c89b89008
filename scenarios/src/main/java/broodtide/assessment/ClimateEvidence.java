package broodtide.assessment;

import broodtide.catalog.Catalog;
import broodtide.engine.ColonyModel;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.SeasonBanks;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.Unknown;
import broodtide.measure.Unworkable;
import broodtide.season.Climate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How well a climate explains the washes of an apiary. Immutable.
 *
 * <p>Hives of a place share much of their growth, so that many hives tell less than their number: n
 * of them count as n / (1 + 0.64 (n - 1)), 0.64 being the shared part of the variance of growth
 * (SCIENCE.md, "Apiaries"). Washes tell little of a climate; only a large difference is worth a
 * word.
 *
 * @param climate name of a shipped climate
 * @param logEvidence log of the mean likelihood of a hive's washes under the prior, summed over
 *     what the hives count for
 */
public record ClimateEvidence(String climate, double logEvidence) {
  /** Washes from which on a hive says something of growth, and so of its climate. Choice. */
  private static final int ENOUGH = 3;

  /** As many times likelier is far better. Choice. */
  private static final double FAR = Math.log(20);

  /**
   * {@return the shipped climates, best first; empty when no hive has three washes}
   *
   * @param hives hives of one place
   * @param settings how hard to work; a quarter of the usual is enough
   * @param workers threads; their number does not change the result
   */
  public static List<ClimateEvidence> of(
      List<ColonyCase> hives, SeasonPosterior.SamplerSettings settings, Workers workers) {
    List<ColonyCase> telling = hives.stream().filter(h -> h.washes().size() >= ENOUGH).toList();
    if (telling.isEmpty()) {
      return List.of();
    }
    double weight = 1 / (1 + Unknown.REPRODUCTION_FACTOR.shared() * (telling.size() - 1));
    List<ClimateEvidence> out = new ArrayList<>();
    for (String name : Catalog.CLIMATES.names()) {
      double sum = 0;
      SeasonBanks banks = SeasonBanks.inHeap(settings.particles());
      for (ColonyCase hive : telling) {
        sum += evidence(hive, Catalog.climate(name), settings, banks, workers);
      }
      out.add(new ClimateEvidence(name, sum * weight));
    }
    out.sort(Comparator.comparingDouble(ClimateEvidence::logEvidence).reversed());
    return List.copyOf(out);
  }

  /**
   * {@return the climate that explains the washes far better than the one that was chosen, that is,
   * makes them at least 20 times likelier}
   *
   * @param ranked as {@link #of} gives them
   * @param chosen name of the climate that was chosen; of one's own climates nothing is said
   */
  public static Optional<ClimateEvidence> farBetter(List<ClimateEvidence> ranked, String chosen) {
    return ranked.stream()
        .filter(e -> e.climate().equals(chosen))
        .findFirst()
        .flatMap(
            own ->
                Optional.of(ranked.get(0))
                    .filter(best -> best.logEvidence() - own.logEvidence() >= FAR));
  }

  private static double evidence(
      ColonyCase hive,
      Climate climate,
      SeasonPosterior.SamplerSettings settings,
      SeasonBanks banks,
      Workers workers) {
    ColonyModel model = hive.model();
    Climate here = model.climate().southern() ? climate.inSouth() : climate;
    ColonyCase there =
        new ColonyCase(
            hive.colony(),
            model.with(here),
            hive.start(),
            hive.now(),
            hive.until(),
            hive.washes(),
            hive.given(),
            hive.thresholds(),
            hive.priors());
    try {
      return there.posterior(settings, banks, workers, Progress.NONE).sample().logEvidence();
    } catch (Unworkable e) {
      return Double.NEGATIVE_INFINITY;
    }
  }
}
