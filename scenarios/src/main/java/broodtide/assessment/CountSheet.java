package broodtide.assessment;

import broodtide.season.Climate;
import broodtide.wash.Infestation;
import broodtide.wash.RatePosterior;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Counts of several hives on one day, each read by itself: nothing is simulated, and nothing is
 * taken from earlier counts. A hive that was counted several times on the day has a row for each
 * count, and is one hive where hives are counted: its counts are read as one.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param rows one for each count, of one day: the likelier over the treatment threshold first, then
 *     the more mites per 100 bees counted; equal ones by name
 */
public record CountSheet(List<CountReading> rows) {
  /** Parts into which the doubt about method and half cup is cut. */
  private static final int SHARES = 200;

  /**
   * Share of that doubt, as variance, which all counts of one day and method have in common.
   * Choice.
   */
  private static final double SHARED = 0.8;

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

  /** {@return how many hives were counted, each once however often it was counted} */
  public int hives() {
    return byHive().size();
  }

  /** {@return hives with several counts on the day, in the order of the rows} */
  public List<String> countedOften() {
    return byHive().entrySet().stream()
        .filter(hive -> hive.getValue().size() > 1)
        .map(Map.Entry::getKey)
        .toList();
  }

  private Map<String, List<CountReading>> byHive() {
    return rows.stream()
        .collect(
            Collectors.groupingBy(r -> r.wash().colony(), LinkedHashMap::new, Collectors.toList()));
  }

  /**
   * {@return hives over the treatment threshold to be expected: the sum of the chances of all
   * hives; empty without a threshold}
   */
  public OptionalDouble expectedOver() {
    return threshold().isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(chances().mapToDouble(HiveChance::chance).sum());
  }

  /**
   * {@return how many hives are over the treatment threshold by these counts alone; empty without a
   * threshold} What the counts share is the hand and the cup: where a method finds fewer mites than
   * is usual, or a half cup holds more bees, it does so in all hives.
   */
  public Optional<ApiaryCount> over() {
    return threshold().isEmpty()
        ? Optional.empty()
        : Optional.of(ApiaryCount.of(chances().toList()));
  }

  private Stream<HiveChance> chances() {
    double threshold = threshold().orElseThrow();
    return byHive().values().stream().map(counts -> over(counts, threshold));
  }

  private static HiveChance over(List<CountReading> counts, double threshold) {
    CountReading r = counts.get(0);
    double[] over =
        RatePosterior.chancesAbove(
            counts.stream().map(c -> Infestation.of(c.wash()).asAlcoholWash()).toList(),
            threshold,
            SHARES);
    short[] ranks = new short[SHARES];
    for (int i = 0; i < SHARES; i++) {
      ranks[i] = (short) i;
    }
    return new HiveChance(
        r.wash().colony(),
        ColonyCase.NO_YARD,
        counts.size() == 1 ? r.chanceAbove() : Arrays.stream(over).average().orElseThrow(),
        List.of(new HiveChance.Ranked("counts by " + r.wash().method().id(), SHARED, ranks)),
        (weights, bees, others) -> {
          double all = 0;
          double sum = 0;
          for (int i = 0; i < SHARES; i++) {
            all += weights[i];
            sum += weights[i] * over[i];
          }
          return sum / all;
        });
  }

  private static double chance(CountReading r) {
    return r.threshold().isEmpty() ? 0 : r.chanceAbove();
  }
}
