package broodtide.classroom;

import broodtide.compare.YearStages;
import broodtide.season.Climate;
import broodtide.study.ThresholdLibrary;
import broodtide.wash.ThresholdSet;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A climate with what its year means for a beekeeper, over the year that the explorer plays.
 *
 * @param climate the climate
 * @param thresholds the threshold on mites per 100 bees, as steps
 * @param supers when honey supers usually stand
 * @param winterBees when winter bees are raised
 */
record Place(
    Climate climate, List<Step> thresholds, List<Stretch> supers, List<Stretch> winterBees) {
  /** The set of thresholds that the explorer draws. */
  static final String THRESHOLDS = "common-practice";

  /**
   * A threshold from a day on.
   *
   * @param from first day
   * @param value mites per 100 bees
   */
  record Step(LocalDate from, double value) {}

  /** Days from the first to the last, both included. */
  record Stretch(LocalDate from, LocalDate to) {}

  /** A climate's year. */
  static Place of(Climate climate, LocalDate first, LocalDate last) {
    YearStages stages = new YearStages(climate);
    ThresholdSet set = ThresholdLibrary.shipped(THRESHOLDS);
    List<Step> steps = new ArrayList<>();
    for (LocalDate d = first; !d.isAfter(last); d = d.plusDays(1)) {
      Optional<Double> threshold = stages.thresholdOn(set, d);
      if (threshold.isPresent()
          && (steps.isEmpty() || steps.get(steps.size() - 1).value() != threshold.get())) {
        steps.add(new Step(d, threshold.get()));
      }
    }
    return new Place(
        climate,
        List.copyOf(steps),
        stretches(stages.supers(first, last)),
        stretches(stages.winterBees(first, last)));
  }

  /** The threshold on a day, when there is one. */
  Optional<Double> thresholdOn(LocalDate day) {
    Optional<Double> found = Optional.empty();
    for (Step step : thresholds) {
      found = step.from().isAfter(day) ? found : Optional.of(step.value());
    }
    return found;
  }

  private static List<Stretch> stretches(List<LocalDate[]> pairs) {
    return pairs.stream().map(p -> new Stretch(p[0], p[1])).toList();
  }
}
