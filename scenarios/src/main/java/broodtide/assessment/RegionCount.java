package broodtide.assessment;

import java.io.Serializable;

/**
 * How many colonies of several yards are counted. It holds no colony, only the chance of every
 * count, so that yards can be worked on apart and put together afterwards. Colonies of different
 * yards stand alone, as in {@link ApiaryCount}: yards that are put together in the order of their
 * names give the distribution of the count of all their colonies to the last bit.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @since 0.2.0
 */
public final class RegionCount implements Serializable {
  private static final long serialVersionUID = 1L;

  /** Nothing to count. */
  public static final RegionCount NONE = new RegionCount(0, new double[] {1});

  /** How many colonies are counted on average. */
  private final double mean;

  /** The chance of every count, from 0 to all colonies. */
  private final double[] distribution;

  private RegionCount(double mean, double[] distribution) {
    this.mean = mean;
    this.distribution = distribution;
  }

  /**
   * {@return the count of an apiary without its colonies}
   *
   * @param count the count
   */
  public static RegionCount of(ApiaryCount count) {
    return new RegionCount(count.mean(), count.distribution());
  }

  /**
   * {@return the count of these and of other colonies}
   *
   * @param other colonies of other yards
   */
  public RegionCount and(RegionCount other) {
    return new RegionCount(
        mean + other.mean, ApiaryCount.together(distribution, other.distribution));
  }

  /** {@return number of colonies} */
  public int hives() {
    return distribution.length - 1;
  }

  /** {@return how many colonies are counted on average} */
  public double mean() {
    return mean;
  }

  /** {@return the chance of every count, from 0 to all colonies; they add up to 1} */
  public double[] distribution() {
    return distribution.clone();
  }

  /**
   * {@return the smallest count with at least a share of the chance at or below it}
   *
   * @param level 0 to 1
   */
  public int quantile(double level) {
    return ApiaryCount.quantile(distribution, level);
  }
}
