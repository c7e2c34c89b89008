package broodtide.assessment;

import broodtide.catalog.Surroundings;
import broodtide.control.Plan;
import broodtide.engine.Quantity;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.season.Climate;
import broodtide.wash.BoardCount;
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
 * @param alone the colony left alone, from the count to the day ahead
 */
public record CountOutlook(
    ColonyCase colony, Decision decision, Optional<Ahead> ahead, PlanRun alone) {
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
    return of(
        wash.colony(),
        wash.date(),
        wash.date(),
        List.of(wash),
        List.of(),
        climate,
        thresholds,
        workers);
  }

  /**
   * {@return the outlook from mites on a board, read as a table with that board alone is}
   *
   * @param board the board
   * @param climate the year of the place
   * @param thresholds the thresholds the colony is held to
   * @param workers threads; their number does not change the result
   */
  public static CountOutlook of(
      BoardCount board, Climate climate, ThresholdSet thresholds, Workers workers) {
    return of(
        board.colony(),
        board.from(),
        board.date(),
        List.of(),
        List.of(board),
        climate,
        thresholds,
        workers);
  }

  private static CountOutlook of(
      String colony,
      LocalDate first,
      LocalDate last,
      List<Wash> washes,
      List<BoardCount> boards,
      Climate climate,
      ThresholdSet thresholds,
      Workers workers) {
    LocalDate now = last.plusDays(1);
    YearStages stages = new YearStages(climate);
    LocalDate day = stages.winterBeesRaised(now);
    ColonyCase c =
        new ColonyCase(
                colony,
                Place.of(climate, climate.southern(), Surroundings.SPARSE, thresholds).model(),
                first,
                now,
                day,
                washes,
                List.of(),
                thresholds,
                Priors.defaults())
            .withBoards(boards);
    SeasonPosterior.SamplerSettings effort =
        new SeasonPosterior.SamplerSettings(
            COLONIES, SeasonPosterior.SamplerSettings.usual(SEED).moves(), SEED);
    Assessment assessment = Assessment.of(c, effort, workers);
    Comparison waiting = assessment.compare(List.of(Plan.waiting(UsualPlans.WAIT)));
    Optional<Ahead> ahead =
        stages.raisedAlready(now)
            ? Optional.empty()
            : Optional.of(new Ahead(day, waiting.runs().get(0).on(Quantity.INFESTATION, day)));
    return new CountOutlook(c, assessment.waiting(), ahead, waiting.runs().get(0));
  }

  /** {@return mites per 100 adult bees on the decision date, of simulated colonies that live} */
  public QuantileSummary today() {
    return alone.on(Quantity.INFESTATION, colony.now());
  }
}
