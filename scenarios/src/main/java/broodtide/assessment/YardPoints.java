package broodtide.assessment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.apache.commons.math3.util.FastMath;

/**
 * What the colonies of one yard share, at fixed points that are the same for all of them: see
 * {@link ApiaryCount}.
 */
final class YardPoints {
  /** How many points. */
  static final int POINTS = 256;

  /** Groups of points that are alike in what all yards share, where they share anything. */
  private static final int GROUPS = 16;

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** Farthest that a chance is from 0 and 1 while it is fitted to the colony's own. */
  private static final double LEAST = 1e-9;

  private final int groups;
  private final double[] common;
  private final int[] group;
  private final double[] bees;
  private final double[] others;
  private final Map<String, double[]> coordinates = new HashMap<>();
  private final Map<Factor, float[][]> tables = new HashMap<>();

  /**
   * What a table of weights hangs on.
   *
   * @param what what is shared, and how much of it
   * @param members simulated colonies of a colony
   */
  private record Factor(HiveChance.Share what, int members) {}

  /**
   * Lays the points of a yard that shares nothing with others.
   *
   * @param yard the colonies, or all that they share
   */
  YardPoints(Collection<HiveChance> yard) {
    this(yard, 1);
  }

  /**
   * Lays the points.
   *
   * @param yard the colonies, or all that they share
   * @param groups as {@link #groups} says of all colonies of the apiary
   */
  YardPoints(Collection<HiveChance> yard, int groups) {
    this.groups = groups;
    TreeSet<String> shared = new TreeSet<>();
    yard.forEach(hive -> hive.shared().forEach(s -> shared.add(s.what())));
    double[][] u = points((groups > 1 ? 3 : 2) + shared.size());
    bees = u[0];
    others = u[1];
    for (String what : shared) {
      coordinates.put(what, u[2 + coordinates.size()]);
    }
    common = groups > 1 ? u[u.length - 1] : new double[POINTS];
    group =
        Arrays.stream(common)
            .mapToInt(c -> (int) (groups * NORMAL.cumulativeProbability(c)))
            .toArray();
  }

  /**
   * {@return groups of points, each of as many; yards are put together group by group, since what
   * all of them share is about the same in one. One yard needs none}
   *
   * @param yards all colonies of the apiary
   * @param chance tells what is known of one
   */
  static <T> int groups(List<List<T>> yards, Function<T, HiveChance> chance) {
    boolean share =
        yards.stream()
            .flatMap(yard -> yard.stream())
            .flatMap(hive -> chance.apply(hive).shared().stream())
            .anyMatch(s -> s.common() > 0);
    return yards.size() > 1 && share ? GROUPS : 1;
  }

  /** The group of a point, from 0. */
  int group(int point) {
    return groups > 1 ? group[point] : 0;
  }

  /**
   * {@return colonies by yard, and in each by name}
   *
   * @param hives in any order
   * @param chance tells yard and name
   */
  static <T> List<List<T>> yards(Collection<T> hives, Function<T, HiveChance> chance) {
    SortedMap<String, List<T>> yards = new TreeMap<>();
    for (T hive : hives) {
      yards.computeIfAbsent(chance.apply(hive).yard(), y -> new ArrayList<>()).add(hive);
    }
    yards.values().forEach(yard -> yard.sort(Comparator.comparing(h -> chance.apply(h).colony())));
    return List.copyOf(yards.values());
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

  /** The colony's chance of being counted at every point; their mean is its own chance. */
  double[] fitted(HiveChance hive) {
    HiveChance.Seasons seasons = hive.seasons();
    return fitted(at(hive, seasons, seasons.counted()), hive.chance());
  }

  /**
   * {@return a chance at every point}
   *
   * @param hive a colony of the yard
   * @param seasons its simulated colonies
   * @param chance the chance where they weigh differently
   */
  double[] at(HiveChance hive, HiveChance.Seasons seasons, Counted chance) {
    List<short[]> ranked = seasons.ranks();
    int members = ranked.isEmpty() ? 1 : ranked.get(0).length;
    List<float[][]> of = new ArrayList<>();
    for (HiveChance.Share s : hive.shared()) {
      of.add(tables.computeIfAbsent(new Factor(s, members), this::table));
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
      out[p] = chance.at(weights, bees[p], others[p]);
    }
    return out;
  }

  /** Weights by point and rank, the largest of each point 1. */
  private float[][] table(Factor f) {
    double[] u = together(f.what());
    double[] q = new double[f.members()];
    Arrays.setAll(q, r -> NORMAL.inverseCumulativeProbability((r + 0.5) / q.length));
    double root = Math.sqrt(f.what().share());
    double rest = 2 * (1 - f.what().share());
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

  /** What is shared in the yard at every point: its own part, and the part of all yards. */
  private double[] together(HiveChance.Share what) {
    double[] own = coordinates.getOrDefault(what.what(), new double[POINTS]);
    if (groups == 1 || what.common() == 0) {
      return own;
    }
    double all = what.common() / what.share();
    double[] out = new double[POINTS];
    Arrays.setAll(out, p -> Math.sqrt(all) * common[p] + Math.sqrt(1 - all) * own[p]);
    return out;
  }

  /**
   * Chances at all points, shifted on the logit so that their mean is the colony's own, which is
   * known from more simulated colonies.
   */
  static double[] fitted(double[] chances, double own) {
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
}
