package broodtide.assessment;

import broodtide.catalog.Assumptions;
import broodtide.catalog.Surroundings;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
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
 * A colony of which one count alone is known, left alone among few neighbours: where it would
 * stand.
 *
 * @param colony the colony as a case, decided on the day after the count
 * @param decision what waiting leads to, as beside plans
 * @param ahead where it would stand when the winter bees have been raised; empty when they are as
 *     good as raised on the day of the count
 */
public record CountOutlook(ColonyCase colony, Decision decision, Optional<Ahead> ahead) {
  /** Simulated colonies: enough for a middle and a range of one figure. */
  public static final int COLONIES = 1024;

  /** Seed of the random numbers. */
  public static final long SEED = 1;

  /**
   * Where the colony would stand on a day.
   *
   * @param day the day
   * @param infestation mites per 100 adult bees on it
   */
  public record Ahead(LocalDate day, QuantileSummary infestation) {}

  /**
   * {@return the outlook from a count}
   *
   * @param wash the count
   * @param climate the year of the place
   * @param thresholds the thresholds the colony is held to
   * @param workers threads; their number does not change the result
   */
  public static CountOutlook of(
      Wash wash, Climate climate, ThresholdSet thresholds, Workers workers) {
    LocalDate now = wash.date().plusDays(1);
    YearStages stages = new YearStages(climate);
    LocalDate day = stages.winterBeesRaised(now);
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
    Assessment assessment = Assessment.of(c, effort, workers);
    Comparison waiting = assessment.compare(List.of(Plan.waiting(UsualPlans.WAIT)));
    Optional<Ahead> ahead =
        stages.raisedAlready(now)
            ? Optional.empty()
            : Optional.of(new Ahead(day, waiting.runs().get(0).on(Quantity.INFESTATION, day)));
    return new CountOutlook(c, assessment.waiting(), ahead);
  }
}
