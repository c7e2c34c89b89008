package broodtide.assessment;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;

/**
 * How many losses of an apiary a plan prevents, less those that it brings about. Each simulated
 * colony is played with the plan and without it, in the same season, with the same luck of yard and
 * winter, and needs as many bees either way: so this is no difference of two intervals, which would
 * be far too wide. What hives of a yard share enters as in {@link ApiaryCount}.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @since 0.2.0
 */
public final class ApiarySaving {
  private final double mean;
  private final int hives;

  /** By losses prevented, from as many brought about as there are hives. */
  private final double[] distribution;

  private ApiarySaving(double mean, int hives, double[] distribution) {
    this.mean = mean;
    this.hives = hives;
    this.distribution = distribution;
  }

  /**
   * One hive that is given a plan.
   *
   * @param waiting its loss if it waits
   * @param with its loss with the plan, of the same simulated colonies
   */
  record Hive(HiveChance waiting, HiveChance with) {
    double mean() {
      return waiting.chance() - with.chance();
    }
  }

  static ApiarySaving of(Collection<Hive> treated) {
    double[] all = ApiaryCount.ofYards(treated, Hive::with, ApiarySaving::ofYard);
    double mean = treated.stream().mapToDouble(Hive::mean).sorted().sum();
    return new ApiarySaving(mean, treated.size(), all);
  }

  /** By group of points. */
  private static double[][] ofYard(List<Hive> yard, int groups) {
    YardPoints points = new YardPoints(yard.stream().map(Hive::with).toList(), groups);
    double[][] prevented = new double[yard.size()][];
    double[][] brought = new double[yard.size()][];
    for (int h = 0; h < prevented.length; h++) {
      Hive hive = yard.get(h);
      HiveChance.Seasons with = hive.with().seasons();
      Counted lost = hive.waiting().seasons().counted();
      double[] less = points.at(hive.with(), with, (w, b, o) -> lost.only(with.counted(), w, b, o));
      double[] more = points.at(hive.with(), with, (w, b, o) -> with.counted().only(lost, w, b, o));
      // What all simulated colonies say of the hive stands; fewer of them say how it is shared.
      double lacks = hive.mean() - (mean(less) - mean(more));
      prevented[h] = YardPoints.fitted(less, mean(less) + Math.max(0, lacks));
      brought[h] = YardPoints.fitted(more, mean(more) + Math.max(0, -lacks));
    }
    double[][] sum = new double[groups][2 * yard.size() + 1];
    for (int p = 0; p < YardPoints.POINTS; p++) {
      add(prevented, brought, p, YardPoints.POINTS / groups, sum[points.group(p)]);
    }
    return sum;
  }

  /** Adds the distribution at one point, without ends that hold next to nothing. */
  private static void add(
      double[][] prevented, double[][] brought, int point, int points, double[] sum) {
    double[] count = new double[sum.length];
    count[0] = 1;
    int first = 0;
    int last = 0;
    for (int h = 0; h < prevented.length; h++) {
      double less = prevented[h][point];
      double more = Math.min(brought[h][point], 1 - less);
      last += 2;
      for (int k = last; k >= first; k--) {
        double same = k > 0 ? count[k - 1] * (1 - less - more) : 0;
        double one = k > 1 ? count[k - 2] * less : 0;
        count[k] = count[k] * more + same + one;
      }
      while (count[first] < ApiaryCount.NOTHING && first < last) {
        count[first++] = 0;
      }
      while (count[last] < ApiaryCount.NOTHING && last > first) {
        count[last--] = 0;
      }
    }
    for (int k = first; k <= last; k++) {
      sum[k] += count[k] / points;
    }
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElse(0);
  }

  /** {@return losses prevented on average: those if all wait less those with the plan} */
  public double mean() {
    return mean;
  }

  /**
   * {@return the fewest losses prevented with at least a share of the chance at or below it; below
   * 0 where the plan brings losses about}
   *
   * @param level 0 to 1
   */
  public int quantile(double level) {
    return ApiaryCount.quantile(distribution, level) - hives;
  }

  /** {@return lower end of the 90 % interval} */
  public int low() {
    return quantile(0.05);
  }

  /** {@return median} */
  public int median() {
    return quantile(0.5);
  }

  /** {@return upper end of the 90 % interval} */
  public int high() {
    return quantile(0.95);
  }
}
