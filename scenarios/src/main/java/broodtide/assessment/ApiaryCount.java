package broodtide.assessment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.apache.commons.math3.util.FastMath;

/**
 * How many colonies of an apiary are counted, over their treatment threshold or lost, when the
 * colonies of a yard share a part of their season. Each colony keeps the chance that its own washes
 * give it; what is shared only says how far several go together, and makes the count less sure than
 * if each stood alone. Colonies of different yards stand alone.
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
 * asks for, and how many colonies other causes take in it, are further coordinates of u.
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
  static final int POINTS = 256;

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** Farthest that a chance is from 0 and 1 while it is fitted to the colony's own. */
  private static final double LEAST = 1e-9;

  /** Chance of a count that is as good as none. */
  private static final double NOTHING = 1e-25;

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
    SortedMap<String, List<HiveChance>> yards = new TreeMap<>();
    for (HiveChance hive : hives) {
      yards.computeIfAbsent(hive.yard(), y -> new ArrayList<>()).add(hive);
    }
    double[] all = {1};
    for (List<HiveChance> yard : yards.values()) {
      yard.sort(Comparator.comparing(HiveChance::colony));
      all = together(all, ofYard(yard));
    }
    return new ApiaryCount(List.copyOf(hives), all);
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

  private static double[] ofYard(List<HiveChance> yard) {
    if (yard.size() == 1) {
      double own = yard.get(0).chance();
      return new double[] {1 - own, own};
    }
    double[][] chances = chances(yard);
    double[] sum = new double[yard.size() + 1];
    for (int p = 0; p < POINTS; p++) {
      addCount(chances, p, sum);
    }
    return sum;
  }

  /**
   * Adds the distribution of the count at one point. Ends of it that hold next to nothing are let
   * go, so that the work grows less than with the square of the colonies.
   */
  private static void addCount(double[][] chances, int point, double[] sum) {
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
      sum[k] += count[k] / POINTS;
    }
  }

  /** The chance of each colony of a yard at every point, in their order. */
  private static double[][] chances(List<HiveChance> yard) {
    TreeSet<String> shared = new TreeSet<>();
    yard.forEach(hive -> hive.shared().forEach(s -> shared.add(s.what())));
    double[][] u = points(2 + shared.size());
    Map<String, double[]> coordinates = new HashMap<>();
    for (String what : shared) {
      coordinates.put(what, u[2 + coordinates.size()]);
    }
    Map<Factor, float[][]> tables = new HashMap<>();
    double[][] out = new double[yard.size()][];
    for (int h = 0; h < out.length; h++) {
      out[h] = fitted(chances(yard.get(h), u[0], u[1], coordinates, tables), yard.get(h).chance());
    }
    return out;
  }

  /** Low-discrepancy points, standard normal, by coordinate and point. */
  private static double[][] points(int coordinates) {
    SobolSequenceGenerator sobol = new SobolSequenceGenerator(coordinates);
    double[][] out = new double[coordinates][POINTS];
    for (int p = 0; p < POINTS; p++) {
      double[] x = sobol.nextVector();
      for (int c = 0; c < coordinates; c++) {
        out[c][p] = NORMAL.inverseCumulativeProbability(x[c] + 0.5 / POINTS);
      }
    }
    return out;
  }

  /**
   * What a table of weights hangs on.
   *
   * @param what what is shared
   * @param share how much of it is
   * @param members simulated colonies of a colony
   */
  private record Factor(String what, double share, int members) {}

  private static double[] chances(
      HiveChance hive,
      double[] bees,
      double[] others,
      Map<String, double[]> coordinates,
      Map<Factor, float[][]> tables) {
    HiveChance.Seasons seasons = hive.seasons();
    List<short[]> ranked = seasons.ranks();
    int members = ranked.isEmpty() ? 1 : ranked.get(0).length;
    List<float[][]> of = new ArrayList<>();
    for (HiveChance.Share s : hive.shared()) {
      Factor factor = new Factor(s.what(), s.share(), members);
      of.add(
          tables.computeIfAbsent(
              factor, f -> table(f, coordinates.getOrDefault(f.what(), new double[POINTS]))));
    }
    double[] weights = new double[members];
    double[] out = new double[POINTS];
    for (int p = 0; p < POINTS; p++) {
      Arrays.fill(weights, 1);
      for (int j = 0; j < of.size(); j++) {
        float[] row = of.get(j)[p];
        short[] ranks = ranked.get(j);
        for (int i = 0; i < members; i++) {
          weights[i] *= row[ranks[i]];
        }
      }
      out[p] = seasons.counted().at(weights, bees[p], others[p]);
    }
    return out;
  }

  /** Weights by point and rank, the largest of each point 1. */
  private static float[][] table(Factor f, double[] u) {
    double[] q = new double[f.members()];
    Arrays.setAll(q, r -> NORMAL.inverseCumulativeProbability((r + 0.5) / q.length));
    double root = Math.sqrt(f.share());
    double rest = 2 * (1 - f.share());
    float[][] out = new float[POINTS][q.length];
    for (int p = 0; p < POINTS; p++) {
      double[] log = new double[q.length];
      double most = Double.NEGATIVE_INFINITY;
      for (int r = 0; r < q.length; r++) {
        double away = q[r] - root * u[p];
        log[r] = 0.5 * q[r] * q[r] - away * away / rest;
        most = Math.max(most, log[r]);
      }
      for (int r = 0; r < q.length; r++) {
        out[p][r] = (float) FastMath.exp(log[r] - most);
      }
    }
    return out;
  }

  /**
   * Chances at all points, shifted on the logit so that their mean is the colony's own, which is
   * known from more simulated colonies.
   */
  private static double[] fitted(double[] chances, double own) {
    double[] out = new double[chances.length];
    if (own <= LEAST || own >= 1 - LEAST) {
      Arrays.fill(out, own);
      return out;
    }
    double[] logits = new double[chances.length];
    for (int p = 0; p < logits.length; p++) {
      double c = Math.min(1 - LEAST, Math.max(LEAST, chances[p]));
      logits[p] = FastMath.log(c / (1 - c));
    }
    double far = 2 - 2 * FastMath.log(LEAST);
    double shift =
        new BrentSolver(1e-12, 1e-12)
            .solve(
                200, by -> Arrays.stream(shifted(logits, by)).average().orElse(0) - own, -far, far);
    return shifted(logits, shift);
  }

  private static double[] shifted(double[] logits, double by) {
    return Arrays.stream(logits).map(x -> 1 / (1 + FastMath.exp(-x - by))).toArray();
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
