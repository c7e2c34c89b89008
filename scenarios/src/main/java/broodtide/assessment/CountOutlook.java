package broodtide.assessment;

import broodtide.catalog.Assumptions;
import broodtide.catalog.Surroundings;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.season.Climate;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Where a colony of which one count alone is known would stand when the winter bees have been
 * raised, if it is left alone among few neighbours.
 *
 * @param day the day
 * @param infestation mites per 100 adult bees on it
 */
public record CountOutlook(LocalDate day, QuantileSummary infestation) {
  /** Enough for a middle and a range of one figure. */
  private static final int COLONIES = 1024;

  private static final long SEED = 1;

  /**
   * Looks ahead from a count.
   *
   * @param wash the count
   * @param climate the year of the place
   * @param thresholds the thresholds the colony is held to
   * @param workers threads; their number does not change the result
   * @return empty when the winter bees are as good as raised on its day
   */
  public static Optional<CountOutlook> of(
      Wash wash, Climate climate, ThresholdSet thresholds, Workers workers) {
    LocalDate now = wash.date().plusDays(1);
    YearStages stages = new YearStages(climate);
    if (stages.raisedAlready(now)) {
      return Optional.empty();
    }
    LocalDate day = stages.raised(now);
    ColonyCase c =
        new ColonyCase(
            wash.colony(),
            ColonyModel.in(climate).with(Surroundings.SPARSE.immigration(Assumptions.usual())),
            wash.date(),
            now,
            day,
            List.of(wash),
            List.of(),
            thresholds,
            Priors.defaults());
    SeasonPosterior.SamplerSettings effort =
        new SeasonPosterior.SamplerSettings(
            COLONIES, SeasonPosterior.SamplerSettings.usual(SEED).moves(), SEED);
    SeasonPosterior posterior = c.posterior(effort, workers, Progress.NONE);
    Plan wait = Plan.waiting(UsualPlans.WAIT);
    PlanRun run =
        new PlanRun(
            c,
            wait,
            posterior.run(c.season(wait), PlanRun.KEPT, workers, Progress.NONE),
            List.of());
    return Optional.of(new CountOutlook(day, run.on(Quantity.INFESTATION, day)));
  }
}
