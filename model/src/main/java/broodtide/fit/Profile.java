package broodtide.fit;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Profile likelihood of one coefficient: for each value of it, the likelihood at its largest over
 * everything else, over-dispersion included.
 */
final class Profile {
  /** Depth at which looking further makes no difference. */
  private static final double DEEP = 1e4;

  private static final int MOST_STEPS = 30;
  private static final int MOST_NODES = 200;
  private static final double REACH = 4;

  private final CountRegression model;
  private final int column;
  private final CountRegression.Fit best;

  /**
   * @param model the regression
   * @param column the coefficient
   * @param best where the likelihood is largest, or its limit
   */
  Profile(CountRegression model, int column, CountRegression.Fit best) {
    this.model = model;
    this.column = column;
    this.best = best;
  }

  /** Twice the fall of the log likelihood below its largest, cut at a large number. */
  double depth(double value) {
    double depth = 2 * (best.logLik() - model.held(column, value).fitNear(best.alpha()).logLik());
    return depth < DEEP ? Math.max(0, depth) : DEEP;
  }

  /** The depth that a level allows. */
  static double allowed(double level) {
    return new ChiSquaredDistribution(null, 1).inverseCumulativeProbability(level);
  }

  /** Where the depth allowed is reached on the way from a shallower value; infinite if nowhere. */
  double end(double from, double step, double allowed) {
    double inner = from;
    double outer = from + step;
    for (int i = 2; depth(outer) < allowed; i++) {
      if (i > MOST_STEPS) {
        return Math.copySign(Double.POSITIVE_INFINITY, step);
      }
      inner = outer;
      outer = from + step * i * i;
    }
    return between(inner, outer, allowed);
  }

  /** Where the depth allowed is reached between two values on either side of it. */
  double between(double a, double b, double allowed) {
    return new BrentSolver(1e-12, 1e-12)
        .solve(500, v -> depth(v) - allowed, Math.min(a, b), Math.max(a, b));
  }

  /**
   * What is believed of a coefficient at a given over-dispersion, if the signed root of the depth
   * is taken as normal.
   *
   * @param model the regression
   * @param column the coefficient
   * @param best the maximum at that over-dispersion
   * @param step distance between nodes, a small part of the coefficient's standard error
   * @return nodes, and weights that add up to 1
   */
  static double[][] belief(
      CountRegression model, int column, CountRegression.Fit best, double step) {
    double[] value = new double[2 * MOST_NODES + 1];
    double[] root = new double[value.length];
    int low = MOST_NODES;
    int high = MOST_NODES;
    value[MOST_NODES] = best.beta()[column];
    while (high < 2 * MOST_NODES && root[high] < REACH) {
      value[high + 1] = value[high] + step;
      high++;
      root[high] = rootAt(model, column, best, value[high]);
    }
    while (low > 0 && root[low] > -REACH) {
      value[low - 1] = value[low] - step;
      low--;
      root[low] = -rootAt(model, column, best, value[low]);
    }
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double[][] nodes = new double[2][high - low + 1];
    double below = 0;
    for (int at = low; at <= high; at++) {
      double upTo = at == high ? 1 : normal.cumulativeProbability((root[at] + root[at + 1]) / 2);
      nodes[0][at - low] = value[at];
      nodes[1][at - low] = Math.max(0, upTo - below);
      below = Math.max(below, upTo);
    }
    return nodes;
  }

  private static double rootAt(
      CountRegression model, int column, CountRegression.Fit best, double value) {
    double held = model.held(column, value).fitAt(best.alpha()).logLik();
    return Math.sqrt(Math.max(0, 2 * (best.logLik() - held)));
  }
}
