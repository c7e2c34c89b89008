package broodtide.assessment;

import broodtide.engine.ColonyModel;
import broodtide.engine.StandardColony;
import broodtide.season.Climate;
import broodtide.wash.Infestation;
import broodtide.wash.Interval;
import broodtide.wash.RatePosterior;
import broodtide.wash.Stage;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * One count read in its season.
 *
 * @param wash the wash
 * @param stage the stage of the year
 * @param thresholds the thresholds it is held against
 * @param threshold the treatment threshold of the day, mites per 100 bees as an alcohol wash shows
 *     them; empty when the set names none
 * @param adults adult bees of the climate's standard year on that day
 * @param mitesPerMiteOnBees all mites for each mite on bees in that season
 */
public record CountReading(
    Wash wash,
    Stage stage,
    ThresholdSet thresholds,
    OptionalDouble threshold,
    double adults,
    double mitesPerMiteOnBees) {
  private static final double LEVEL = 0.9;

  /**
   * Reads a count.
   *
   * @param wash the count
   * @param climate the year of the place
   * @param thresholds the set of thresholds
   * @return the reading
   */
  public static CountReading of(Wash wash, Climate climate, ThresholdSet thresholds) {
    YearStages stages = new YearStages(climate);
    StandardColony usual = StandardColony.on(ColonyModel.in(climate), wash.date());
    Optional<Double> threshold = stages.thresholdOn(thresholds, wash.date());
    return new CountReading(
        wash,
        stages.on(wash.date()),
        thresholds,
        threshold.isPresent() ? OptionalDouble.of(threshold.get()) : OptionalDouble.empty(),
        usual.adults(),
        usual.mitesPerMiteOnBees());
  }

  /** {@return the count's own 90 % interval, mites per 100 bees, corrected for nothing} */
  public Interval exact() {
    return Infestation.of(wash).exact(LEVEL);
  }

  /** {@return what would be found in all bees by the method used} */
  public RatePosterior asCounted() {
    return Infestation.of(wash).asCounted();
  }

  /** {@return mites per 100 adult bees of the colony, corrected for method and frame} */
  public RatePosterior inColony() {
    return Infestation.of(wash).inColony();
  }

  /**
   * {@return chance that the colony stands above the threshold}
   *
   * @throws java.util.NoSuchElementException when there is no threshold
   */
  public double chanceAbove() {
    return Infestation.of(wash).asAlcoholWash().chanceAbove(threshold.orElseThrow());
  }

  /** {@return all mites of a colony of the usual size} */
  public MitesInAll mitesInAll() {
    return new MitesInAll(inColony(), adults / 100 * mitesPerMiteOnBees);
  }

  /**
   * All mites of a colony.
   *
   * @param perHundred mites per 100 bees
   * @param factor all mites for each of these
   */
  public record MitesInAll(RatePosterior perHundred, double factor) {
    /** {@return the middle} */
    public double median() {
      return perHundred.median() * factor;
    }

    /**
     * {@return the central interval of a level}
     *
     * @param level share of the belief that the interval holds, for example 0.9
     */
    public Interval interval(double level) {
      return perHundred.interval(level).times(factor);
    }
  }
}
