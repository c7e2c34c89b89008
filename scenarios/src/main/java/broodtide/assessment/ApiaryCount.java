package broodtide.assessment;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.function.Function;

/**
 * How many colonies of an apiary are counted, over their treatment threshold or lost, when the
 * colonies of a yard share a part of their season. Each colony keeps the chance that its own washes
 * give it; what is shared only says how far several go together, and makes the count less sure than
 * if each stood alone. Colonies of different yards share the bias of one's own forecasts alone,
 * where it is known.
 *
 * <p>The part that is shared is a Gaussian copula. Each simulated colony's growth to come, growth
 * so far, late reinvasion and treatments to come are turned into normal scores q. At {@value
 * #POINTS} fixed points u, the same for all colonies of the yard, a simulated colony weighs
 *
 * <pre>
 * k = prod exp(q^2 / 2 - (q - sqrt(rho) u)^2 / (2 (1 - rho)))
 * </pre>
 *
 * <p>with rho the share of the variance that is shared. Given u the colonies are independent, so
 * their chances are convolved, and the result is the mean over u. How many bees the yard's winter
 * asks for, and how many colonies other causes take in it, are further coordinates of u. Where all
 * yards share a bias, it makes up a part of the u of growth: points are put into groups by it, and
 * yards together within each group.
 *
 * <p>On field counts of yards that had no say in these spreads, 90 % intervals held about 80 % of
 * the counts; that is what should be promised.
 *
 * <p>Immutable, and safe to share between threads. The result hangs neither on the order of the
 * colonies nor, for what is said of one yard, on others.
 *
 * @since 0.2.0
 */
public final class ApiaryCount {
  /** Points of the shared part. */
  static final int POINTS = YardPoints.POINTS;

  /** Chance of a count that is as good as none. */
  static final double NOTHING = 1e-25;

  private final List<HiveChance> hives;
  private final double[] distribution;

  private ApiaryCount(List<HiveChance> hives, double[] distribution) {
    this.hives = hives;
    this.distribution = distribution;
  }

  /**
   * {@return how many of these colonies are counted}
   *
   * @param hives one for each colony, in any order; none gives a count of 0
   */
  public static ApiaryCount of(List<HiveChance> hives) {
    double[] all = ofYards(hives, hive -> hive, ApiaryCount::ofYard);
    return new ApiaryCount(List.copyOf(hives), all);
  }

  /** What the colonies of one yard come to, by group of points. */
  @FunctionalInterface
  interface Yard<T> {
    double[][] of(List<T> hives, int groups);
  }

  /**
   * The distribution over all yards, put together within each group of points.
   *
   * @param hives colonies in any order
   * @param chance tells what is known of one
   */
  static <T> double[] ofYards(Collection<T> hives, Function<T, HiveChance> chance, Yard<T> yardly) {
    List<List<T>> yards = YardPoints.yards(hives, chance);
    int groups = YardPoints.groups(yards, chance);
    double[][] all = new double[groups][];
    Arrays.fill(all, new double[] {1});
    for (List<T> yard : yards) {
      double[][] of = yardly.of(yard, groups);
      for (int g = 0; g < groups; g++) {
        all[g] = together(all[g], of[g]);
      }
    }
    return mean(all);
  }

  /** {@return number of colonies} */
  public int hives() {
    return hives.size();
  }

  /** {@return how many colonies are counted on average: the sum of their own chances} */
  public double mean() {
    return hives.stream().mapToDouble(HiveChance::chance).sorted().sum();
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
    return quantile(distribution, level);
  }

  static int quantile(double[] distribution, double level) {
    double sum = 0;
    for (int k = 0; k < distribution.length - 1; k++) {
      sum += distribution[k];
      if (sum >= level - 1e-12) {
        return k;
      }
    }
    return distribution.length - 1;
  }

  /** {@return lower end of the 90 % interval} */
  public int low() {
    return quantile(0.05);
  }

  /** {@return median count} */
  public int median() {
    return quantile(0.5);
  }

  /** {@return upper end of the 90 % interval} */
  public int high() {
    return quantile(0.95);
  }

  /** By group of points. */
  private static double[][] ofYard(List<HiveChance> yard, int groups) {
    if (yard.size() == 1 && groups == 1) {
      double own = yard.get(0).chance();
      return new double[][] {{1 - own, own}};
    }
    YardPoints points = new YardPoints(yard, groups);
    double[][] chances = yard.stream().map(points::fitted).toArray(double[][]::new);
    double[][] sum = new double[groups][yard.size() + 1];
    for (int p = 0; p < POINTS; p++) {
      addCount(chances, p, POINTS / groups, sum[points.group(p)]);
    }
    return sum;
  }

  /** The mean of distributions that weigh alike. */
  private static double[] mean(double[][] distributions) {
    double[] out = new double[distributions[0].length];
    Arrays.setAll(out, k -> Arrays.stream(distributions).mapToDouble(d -> d[k]).sum());
    return Arrays.stream(out).map(sum -> sum / distributions.length).toArray();
  }

  /**
   * Adds the distribution of the count at one point. Ends of it that hold next to nothing are let
   * go, so that the work grows less than with the square of the colonies.
   */
  private static void addCount(double[][] chances, int point, int points, double[] sum) {
    double[] count = new double[sum.length];
    count[0] = 1;
    int first = 0;
    int last = 0;
    for (double[] hive : chances) {
      double in = hive[point];
      double out = 1 - in;
      last++;
      for (int k = last; k > first; k--) {
        count[k] = count[k] * out + count[k - 1] * in;
      }
      count[first] *= out;
      while (count[first] < NOTHING && first < last) {
        count[first++] = 0;
      }
      while (count[last] < NOTHING && last > first) {
        count[last--] = 0;
      }
    }
    for (int k = first; k <= last; k++) {
      sum[k] += count[k] / points;
    }
  }

  static double[] together(double[] a, double[] b) {
    double[] out = new double[a.length + b.length - 1];
    for (int i = 0; i < a.length; i++) {
      for (int j = 0; j < b.length; j++) {
        out[i + j] += a[i] * b[j];
      }
    }
    return out;
  }
}
