package broodtide.cluster;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.Comparator;

/**
 * The order in which yards are parted and worked on: those whose hives can share seasons stand
 * together.
 *
 * @param climate the yard's climate
 * @param first the first day of the hive that was seen or treated first
 * @param key the yard
 */
record YardOrder(String climate, LocalDate first, YardKey key)
    implements Serializable, Comparable<YardOrder> {
  private static final Comparator<YardOrder> ORDER =
      Comparator.comparing(YardOrder::climate)
          .thenComparing(YardOrder::first)
          .thenComparing(YardOrder::key);

  static YardOrder of(Yard yard) {
    return new YardOrder(
        yard.climate(),
        yard.hives().stream().map(Hive::first).min(Comparator.naturalOrder()).orElseThrow(),
        yard.key());
  }

  @Override
  public int compareTo(YardOrder other) {
    return ORDER.compare(this, other);
  }
}
