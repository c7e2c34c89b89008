package broodtide.classroom;

import broodtide.assessment.YearStages;
import broodtide.catalog.Catalog;
import broodtide.engine.ColonyModel;
import broodtide.engine.SpringLow;
import broodtide.engine.Survival;
import broodtide.season.Climate;
import broodtide.wash.ThresholdSet;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * A climate with what its year means for a beekeeper, over the year that the explorer plays.
 *
 * @param climate the climate
 * @param thresholds the treatment threshold in mites per 100 bees, as steps
 * @param supers when supers are usually on
 * @param winterBees when winter bees are raised
 * @param low the day in spring on which colonies have the fewest bees; empty where no winter losses
 *     can be told
 */
record ClimateYear(
    Climate climate,
    List<YearStages.Step> thresholds,
    List<Stretch> supers,
    List<Stretch> winterBees,
    Optional<LocalDate> low) {
  /** Days from the first to the last, both included. */
  record Stretch(LocalDate from, LocalDate to) {}

  /** A climate's year. */
  static ClimateYear of(Climate climate, LocalDate first, LocalDate last) {
    YearStages stages = new YearStages(climate);
    ThresholdSet set = Catalog.threshold(Catalog.USUAL_THRESHOLD);
    return new ClimateYear(
        climate,
        stages.thresholdSteps(set, first, last),
        stretches(stages.supers(first, last)),
        stretches(stages.winterBees(first, last)),
        Survival.hasWinter(climate)
            ? Optional.of(
                    SpringLow.after(ColonyModel.in(climate), stages.endOfWinterBees(first)).day())
                .filter(day -> !day.isAfter(last))
            : Optional.empty());
  }

  /** The threshold on a day, when there is one. */
  Optional<Double> thresholdOn(LocalDate day) {
    return thresholds.stream()
        .filter(s -> !s.from().isAfter(day) && !s.to().isBefore(day))
        .map(YearStages.Step::perHundred)
        .findFirst();
  }

  private static List<Stretch> stretches(List<LocalDate[]> pairs) {
    return pairs.stream().map(p -> new Stretch(p[0], p[1])).toList();
  }
}
