package broodtide.engine;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * What a run keeps of every colony: some quantities on all days, others on the days that are asked
 * about later, since each figure takes memory and a few also take time to read. Immutable.
 *
 * @param daily quantities that are kept on every day
 * @param some days of other quantities
 * @since 0.2.0
 */
public record Watched(Set<Quantity> daily, Map<Quantity, Set<LocalDate>> some) {
  /** Copies what it is given; a quantity with days of its own is not daily. */
  public Watched {
    daily = Set.copyOf(daily);
    Map<Quantity, Set<LocalDate>> copy = new EnumMap<>(Quantity.class);
    for (Map.Entry<Quantity, Set<LocalDate>> each : some.entrySet()) {
      if (!daily.contains(each.getKey())) {
        copy.put(each.getKey(), Set.copyOf(each.getValue()));
      }
    }
    some = Map.copyOf(copy);
  }

  /**
   * {@return quantities on every day}
   *
   * @param quantities what to keep
   */
  public static Watched daily(Set<Quantity> quantities) {
    return new Watched(quantities, Map.of());
  }

  /**
   * {@return the same with a quantity on some days}
   *
   * @param quantity what else to keep
   * @param days when
   */
  public Watched and(Quantity quantity, Set<LocalDate> days) {
    Map<Quantity, Set<LocalDate>> more = new EnumMap<>(Quantity.class);
    more.putAll(some);
    more.put(quantity, days);
    return new Watched(daily, more);
  }

  /** {@return all quantities that are kept on any day} */
  public Set<Quantity> quantities() {
    Set<Quantity> all = EnumSet.noneOf(Quantity.class);
    all.addAll(daily);
    all.addAll(some.keySet());
    return all;
  }

  /**
   * {@return whether a quantity is kept on a day}
   *
   * @param quantity the quantity
   * @param day the day
   */
  public boolean keeps(Quantity quantity, LocalDate day) {
    return daily.contains(quantity) || some.getOrDefault(quantity, Set.of()).contains(day);
  }

  /** Whether all that another keeps is kept here, too. */
  boolean holds(Watched other) {
    return daily.containsAll(other.daily)
        && other.some.entrySet().stream()
            .allMatch(
                each ->
                    daily.contains(each.getKey())
                        || some.getOrDefault(each.getKey(), Set.of()).containsAll(each.getValue()));
  }

  /**
   * {@return what either keeps}
   *
   * @param other what else to keep
   */
  public Watched with(Watched other) {
    Set<Quantity> all = EnumSet.noneOf(Quantity.class);
    all.addAll(daily);
    all.addAll(other.daily);
    Watched out = new Watched(all, some);
    for (Map.Entry<Quantity, Set<LocalDate>> each : other.some.entrySet()) {
      Set<LocalDate> days = new HashSet<>(each.getValue());
      days.addAll(some.getOrDefault(each.getKey(), Set.of()));
      out = out.and(each.getKey(), days);
    }
    return out;
  }
}
