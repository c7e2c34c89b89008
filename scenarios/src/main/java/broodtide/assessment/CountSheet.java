package broodtide.assessment;

import broodtide.season.Climate;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Counts of several hives on one day, each read by itself: nothing is simulated, and nothing is
 * taken from earlier counts.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param rows one for each count, of one day: the likelier over the treatment threshold first, then
 *     the more mites per 100 bees counted; equal ones by name
 */
public record CountSheet(List<CountReading> rows) {
  private static final Comparator<CountReading> BY_URGENCY =
      Comparator.comparingDouble(CountSheet::chance)
          .thenComparingDouble(r -> r.wash().perHundred())
          .reversed()
          .thenComparing(r -> r.wash().colony());

  /** Copies the list. */
  public CountSheet {
    rows = List.copyOf(rows);
    if (rows.isEmpty()) {
      throw new IllegalArgumentException("a sheet has no counts; give it at least one");
    }
  }

  /**
   * {@return the counts of a day, read in their season}
   *
   * @param washes at least one, all of one day
   * @param climate the year of the place
   * @param thresholds the thresholds they are held against
   */
  public static CountSheet of(Collection<Wash> washes, Climate climate, ThresholdSet thresholds) {
    return new CountSheet(
        washes.stream()
            .map(w -> CountReading.of(w, climate, thresholds))
            .sorted(BY_URGENCY)
            .toList());
  }

  /** {@return the day of the counts} */
  public LocalDate date() {
    return rows.get(0).wash().date();
  }

  /** {@return the treatment threshold of the day; empty when there is none} */
  public OptionalDouble threshold() {
    return rows.get(0).threshold();
  }

  /** {@return the set that the counts are held against} */
  public ThresholdSet thresholds() {
    return rows.get(0).thresholds();
  }

  /**
   * {@return hives over the treatment threshold to be expected: the sum of the chances of all
   * counts; empty without a threshold}
   */
  public OptionalDouble expectedOver() {
    return threshold().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(rows.stream().mapToDouble(CountSheet::chance).sum());
  }

  private static double chance(CountReading r) {
    return r.threshold().isEmpty() ? 0 : r.chanceAbove();
  }
}
