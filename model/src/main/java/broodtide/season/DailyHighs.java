package broodtide.season;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.Collections;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Daily highs of single days, as a thermometer or a forecast gave them. Immutable.
 *
 * @param byDay degrees Celsius, -60 to 60, by day; days that are missing are not known
 */
public record DailyHighs(SortedMap<LocalDate, Double> byDay) {
  /** No day is known. */
  public static final DailyHighs NONE = new DailyHighs(Collections.emptySortedMap());

  /** Copies the days and checks every value. */
  public DailyHighs {
    for (Map.Entry<LocalDate, Double> day : byDay.entrySet()) {
      OutOfRange.check("daily high of " + day.getKey(), day.getValue(), -60, 60, "degrees Celsius");
    }
    byDay = Collections.unmodifiableSortedMap(new TreeMap<>(byDay));
  }

  /**
   * {@return the high of a day, degrees Celsius; empty when it is not known}
   *
   * @param day the day
   */
  public OptionalDouble on(LocalDate day) {
    Double high = byDay.get(day);
    return high == null ? OptionalDouble.empty() : OptionalDouble.of(high);
  }
}
