package broodtide.cluster;

import java.io.Serializable;
import java.util.Comparator;

/**
 * Tells yards apart. Colonies without a yard stand together where region and climate are the same.
 *
 * @param name name of the yard; empty for colonies without one
 * @param region set only where there is no name
 * @param climate set only where there is no name
 */
record YardKey(String name, String region, String climate)
    implements Serializable, Comparable<YardKey> {
  private static final Comparator<YardKey> ORDER =
      Comparator.comparing(YardKey::name)
          .thenComparing(YardKey::region)
          .thenComparing(YardKey::climate);

  static YardKey of(Hive hive) {
    return hive.yard().isEmpty()
        ? new YardKey("", hive.region(), hive.climate())
        : new YardKey(hive.yard(), "", "");
  }

  @Override
  public int compareTo(YardKey other) {
    return ORDER.compare(this, other);
  }
}
