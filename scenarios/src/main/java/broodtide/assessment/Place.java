package broodtide.assessment;

import broodtide.catalog.Assumptions;
import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.engine.ColonyModel;
import broodtide.mite.Immigration;
import broodtide.season.Climate;
import broodtide.season.DailyHighs;
import broodtide.season.YearSpan;
import broodtide.study.Study;
import broodtide.wash.ThresholdSet;
import java.util.Optional;

/**
 * Where colonies stand: the year of the place with the mites that fly in, and the treatment
 * thresholds that hold there.
 *
 * @param model rates, climate and arrivals, by the calendar of the place
 * @param thresholds treatment thresholds that colonies are held to
 */
public record Place(ColonyModel model, ThresholdSet thresholds) {
  /**
   * {@return a place with the usual rates of bees and mites}
   *
   * @param climate the year, as it runs in the north
   * @param southern whether the place lies south of the equator, where the year is half a year
   *     later
   * @param around colonies around, which bring mites
   * @param thresholds treatment thresholds
   */
  public static Place of(
      Climate climate, boolean southern, Surroundings around, ThresholdSet thresholds) {
    Immigration arrivals = around.immigration(Assumptions.usual());
    ColonyModel model =
        ColonyModel.in(southern ? climate.inSouth() : climate)
            .with(southern ? arrivals.inSouth() : arrivals);
    return new Place(model, thresholds);
  }

  /**
   * {@return a place in the north with the usual rates of bees and mites and the usual treatment
   * thresholds}
   *
   * @param climate the year
   * @param around colonies around, which bring mites
   */
  public static Place of(Climate climate, Surroundings around) {
    return of(climate, false, around, Catalog.threshold(Catalog.USUAL_THRESHOLD));
  }

  /**
   * {@return the place of a study, with the rates and the stock that it gives}
   *
   * @param study the study
   */
  public static Place of(Study study) {
    return new Place(study.model(), study.thresholds().value());
  }

  /**
   * {@return the same place with a beekeeper's own dates, by the calendar of the place}
   *
   * @param supers when honey supers stand; empty for the climate's
   * @param winterBees when winter bees are reared; empty for the climate's
   */
  public Place dated(Optional<YearSpan> supers, Optional<YearSpan> winterBees) {
    if (supers.isEmpty() && winterBees.isEmpty()) {
      return this;
    }
    Climate usual = model.climate();
    Climate own = usual.with(supers.orElse(usual.supers()), winterBees.orElse(usual.winterBees()));
    return new Place(model.with(own), thresholds);
  }

  /**
   * {@return the same place with a beekeeper's own daily highs}
   *
   * @param highs recorded or forecast; on all other days the climate's hold
   */
  public Place with(DailyHighs highs) {
    return new Place(model.with(model.climate().with(highs)), thresholds);
  }

  /**
   * {@return the same place with other treatment thresholds}
   *
   * @param other the thresholds
   */
  public Place with(ThresholdSet other) {
    return new Place(model, other);
  }
}
