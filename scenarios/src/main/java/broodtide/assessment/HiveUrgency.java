package broodtide.assessment;

import java.io.Serializable;
import java.util.Comparator;

/**
 * How urgent a hive is among those of an apiary; the most urgent comes first. Those that are
 * probably over the treatment threshold today come first. Within both groups the higher winter loss
 * if one waits comes first; where winter losses are not known, the higher infestation on the day
 * that is judged. Equal hives stand by name.
 *
 * @since 0.2.0
 */
public final class HiveUrgency implements Comparable<HiveUrgency>, Serializable {
  private static final long serialVersionUID = 1L;

  private static final Comparator<HiveUrgency> ORDER =
      Comparator.comparing((HiveUrgency u) -> u.probablyOver)
          .thenComparingDouble(u -> u.winterLoss)
          .thenComparingDouble(u -> u.judged)
          .reversed()
          .thenComparing(u -> u.hive);

  /** Whether it is more likely than not over the treatment threshold today. */
  private final boolean probablyOver;

  /** Winter loss if one waits, 0 to 1; 0 where it is not known. */
  private final double winterLoss;

  /** Mites per 100 adult bees on the day that is judged, the median. */
  private final double judged;

  /** Its name. */
  private final String hive;

  HiveUrgency(boolean probablyOver, double winterLoss, double judged, String hive) {
    this.probablyOver = probablyOver;
    this.winterLoss = winterLoss;
    this.judged = judged;
    this.hive = hive;
  }

  @Override
  public int compareTo(HiveUrgency other) {
    return ORDER.compare(this, other);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof HiveUrgency u && compareTo(u) == 0;
  }

  @Override
  public int hashCode() {
    return hive.hashCode();
  }
}
