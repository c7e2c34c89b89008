package broodtide.assessment;

import java.io.Serializable;
import java.util.Comparator;

/**
 * How urgent a hive is among those of an apiary; the most urgent comes first. Those that are
 * probably over the treatment threshold today come first. Within both groups the higher winter loss
 * if one waits comes first; where winter losses are not known, the higher infestation on the day
 * that is judged. Equal hives stand by name.
 *
 * @param probablyOver whether it is more likely than not over the treatment threshold today
 * @param winterLoss winter loss if one waits, 0 to 1; 0 where it is not known
 * @param judged mites per 100 adult bees on the day that is judged, the median
 * @param hive its name
 * @since 0.2.0
 */
public record HiveUrgency(boolean probablyOver, double winterLoss, double judged, String hive)
    implements Comparable<HiveUrgency>, Serializable {
  private static final Comparator<HiveUrgency> ORDER =
      Comparator.comparing(HiveUrgency::probablyOver)
          .thenComparingDouble(HiveUrgency::winterLoss)
          .thenComparingDouble(HiveUrgency::judged)
          .reversed()
          .thenComparing(HiveUrgency::hive);

  @Override
  public int compareTo(HiveUrgency other) {
    return ORDER.compare(this, other);
  }
}
