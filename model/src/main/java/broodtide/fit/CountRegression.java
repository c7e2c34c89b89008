package broodtide.fit;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.special.Gamma;

/**
 * Maximum likelihood of counts with log link: negative binomial with variance mu + alpha mu^2 (NB2,
 * Hilbe 2011), alpha = 0 being Poisson. For a given alpha the likelihood is concave in the
 * coefficients, so Newton with halved steps finds its one maximum; alpha is searched over a grid
 * and refined.
 */
final class CountRegression {
  /** Largest over-dispersion considered. */
  static final double MOST_ALPHA = 50;

  /** Over-dispersion that no count can tell from none. */
  private static final double LEAST_ALPHA = 1e-6;

  private static final int GRID = 12;
  private static final int MOST_STEPS = 200;

  /**
   * A maximum.
   *
   * @param beta coefficients
   * @param alpha over-dispersion
   * @param logLik log likelihood, all constants in
   */
  record Fit(double[] beta, double alpha, double logLik) {}

  private final int[] y;
  private final double[] offset;
  private final double[][] x;
  private final boolean scatter;
  private final double constant;

  /**
   * @param y counts
   * @param offset log exposures
   * @param x one row of covariates per count, of full column rank
   * @param scatter whether the over-dispersion is free, else it is 0
   */
  CountRegression(int[] y, double[] offset, double[][] x, boolean scatter) {
    this.y = y;
    this.offset = offset;
    this.x = x;
    this.scatter = scatter;
    double sum = 0;
    for (int count : y) {
      sum -= Gamma.logGamma(count + 1.0);
    }
    constant = sum;
  }

  /** The same model with one coefficient held, its column moved into the offset. */
  CountRegression held(int column, double value) {
    double[] moved = offset.clone();
    double[][] rest = new double[x.length][];
    for (int i = 0; i < x.length; i++) {
      moved[i] += x[i][column] * value;
      rest[i] = new double[x[i].length - 1];
      System.arraycopy(x[i], 0, rest[i], 0, column);
      System.arraycopy(x[i], column + 1, rest[i], column, rest[i].length - column);
    }
    return new CountRegression(y, moved, rest, scatter);
  }

  /** The maximum over coefficients and over-dispersion, all of the latter's range searched. */
  Fit fit() {
    Fit best = fit(0, start());
    if (!scatter) {
      return best;
    }
    double step = Math.log(MOST_ALPHA / LEAST_ALPHA) / GRID;
    Fit before = fit(LEAST_ALPHA, best.beta);
    for (int i = 1; i <= GRID; i++) {
      Fit next = fit(LEAST_ALPHA * Math.exp(i * step), before.beta);
      if (slope(before) > 0 && slope(next) <= 0) {
        best = better(best, between(before, next));
      }
      before = next;
    }
    return better(best, before);
  }

  /** The maximum over coefficients and over-dispersion, the latter sought uphill from a hint. */
  Fit fitNear(double hint) {
    Fit poisson = fit(0, start());
    if (!scatter) {
      return poisson;
    }
    Fit at = fit(Math.min(MOST_ALPHA, Math.max(LEAST_ALPHA, hint)), poisson.beta);
    boolean up = slope(at) > 0;
    while (up ? at.alpha < MOST_ALPHA : at.alpha > LEAST_ALPHA) {
      double alpha = up ? Math.min(MOST_ALPHA, 3 * at.alpha) : Math.max(LEAST_ALPHA, at.alpha / 3);
      Fit next = fit(alpha, at.beta);
      if (slope(next) > 0 != up) {
        return better(poisson, up ? between(at, next) : between(next, at));
      }
      at = next;
    }
    return better(poisson, at);
  }

  /**
   * Log likelihood of an over-dispersion, allowing for the counts that the coefficients use up: at
   * the best coefficients, less half the log determinant of their information (Cox & Reid 1987, J.
   * R. Stat. Soc. B 49:1). Maximum likelihood alone takes too little scatter from few counts.
   */
  double adjusted(Fit fit) {
    double[][] h = information(fit.alpha, fit.beta);
    solve(h, new double[fit.beta.length]);
    double half = 0;
    for (int i = 0; i < h.length; i++) {
      half += Math.log(h[i][i]) / 2;
    }
    return fit.logLik - half;
  }

  /** The maximum over the coefficients for a given over-dispersion. */
  Fit fitAt(double alpha) {
    return fit(alpha, start());
  }

  private Fit between(Fit low, Fit high) {
    UnivariateFunction slope = a -> slope(fit(Math.exp(a), low.beta));
    double a = Math.log(low.alpha);
    double b = Math.log(high.alpha);
    // At a flat top rounding may give both ends one sign; then either end is as good.
    boolean bracketed = slope.value(a) > 0 && slope.value(b) < 0;
    return bracketed
        ? fit(Math.exp(new BrentSolver(1e-12, 1e-12).solve(200, slope, a, b)), low.beta)
        : high;
  }

  private static Fit better(Fit simple, Fit other) {
    return other.logLik > simple.logLik + 1e-10 ? other : simple;
  }

  /**
   * Slope of the log likelihood in alpha, which at the best coefficients is that of its profile.
   */
  private double slope(Fit fit) {
    double alpha = fit.alpha;
    double sum = 0;
    for (int i = 0; i < y.length; i++) {
      double mu = Math.exp(eta(fit.beta, i));
      sum += Math.log1p(alpha * mu) / (alpha * alpha);
      sum -= (y[i] + 1 / alpha) * mu / (1 + alpha * mu);
      for (int k = 1; k < y[i]; k++) {
        sum += k / (1 + alpha * k);
      }
    }
    return sum;
  }

  /** The maximum over the coefficients for a given over-dispersion. */
  private Fit fit(double alpha, double[] from) {
    double[] beta = from;
    double value = logLik(alpha, beta);
    for (int i = 0; i < MOST_STEPS; i++) {
      double[] move = solve(information(alpha, beta), gradient(alpha, beta));
      double rounding = 1e-13 * (1 + Math.abs(value));
      double scale = 1;
      double[] next = plus(beta, move, scale);
      double found = logLik(alpha, next);
      while (!(found >= value - rounding) && scale > 1e-10) {
        scale /= 2;
        next = plus(beta, move, scale);
        found = logLik(alpha, next);
      }
      if (!(found >= value - rounding)) {
        break;
      }
      beta = next;
      value = found;
      if (largest(move) < 1e-11) {
        break;
      }
    }
    return new Fit(beta, alpha, value);
  }

  private static double largest(double[] move) {
    double most = 0;
    for (double each : move) {
      most = Math.max(most, Math.abs(each));
    }
    return most;
  }

  /** Standard error of one coefficient at a maximum, over-dispersion taken as known. */
  double standardError(Fit fit, int column) {
    double[] unit = new double[fit.beta.length];
    unit[column] = 1;
    return Math.sqrt(Math.max(0, solve(information(fit.alpha, fit.beta), unit)[column]));
  }

  /** Weighted least squares of the logarithms of the counts above 0, a little shrunk. */
  private double[] start() {
    int p = x[0].length;
    double[][] a = new double[p][p];
    double[] b = new double[p];
    for (int i = 0; i < y.length; i++) {
      double z = y[i] > 0 ? Math.log(y[i]) - offset[i] : 0;
      for (int j = 0; j < p; j++) {
        b[j] += y[i] * x[i][j] * z;
        for (int k = 0; k < p; k++) {
          a[j][k] += y[i] * x[i][j] * x[i][k];
        }
      }
    }
    for (int j = 0; j < p; j++) {
      a[j][j] += 1e-3;
    }
    return solve(a, b);
  }

  private double logLik(double alpha, double[] beta) {
    double sum = constant;
    for (int i = 0; i < y.length; i++) {
      double eta = eta(beta, i);
      double mu = Math.exp(eta);
      if (y[i] > 0) {
        sum += y[i] * eta;
      }
      if (alpha == 0) {
        sum -= mu;
      } else {
        sum -= (y[i] + 1 / alpha) * Math.log1p(alpha * mu);
        for (int k = 1; k < y[i]; k++) {
          sum += Math.log1p(alpha * k);
        }
      }
    }
    return sum;
  }

  private double[] gradient(double alpha, double[] beta) {
    double[] g = new double[beta.length];
    for (int i = 0; i < y.length; i++) {
      double mu = Math.exp(eta(beta, i));
      double d = (y[i] - mu) / (1 + alpha * mu);
      for (int j = 0; j < g.length; j++) {
        g[j] += d * x[i][j];
      }
    }
    return g;
  }

  private double[][] information(double alpha, double[] beta) {
    double[][] h = new double[beta.length][beta.length];
    for (int i = 0; i < y.length; i++) {
      double mu = Math.exp(eta(beta, i));
      double d = 1 + alpha * mu;
      double w = mu * (1 + alpha * y[i]) / (d * d);
      for (int j = 0; j < h.length; j++) {
        for (int k = 0; k < h.length; k++) {
          h[j][k] += w * x[i][j] * x[i][k];
        }
      }
    }
    return h;
  }

  private double eta(double[] beta, int i) {
    double eta = offset[i];
    for (int j = 0; j < beta.length; j++) {
      eta += beta[j] * x[i][j];
    }
    return eta;
  }

  private static double[] plus(double[] a, double[] b, double scale) {
    double[] sum = new double[a.length];
    for (int i = 0; i < a.length; i++) {
      sum[i] = a[i] + scale * b[i];
    }
    return sum;
  }

  /** Solves a positive definite system in place. */
  private static double[] solve(double[][] a, double[] b) {
    int p = b.length;
    double most = 0;
    for (int i = 0; i < p; i++) {
      most = Math.max(most, a[i][i]);
    }
    for (int i = 0; i < p; i++) {
      // a ridge at the figures' own rounding keeps flat directions solvable
      a[i][i] += 1e-15 * most + 1e-280;
    }
    for (int i = 0; i < p; i++) {
      for (int j = i + 1; j < p; j++) {
        double factor = a[j][i] / a[i][i];
        for (int k = i; k < p; k++) {
          a[j][k] -= factor * a[i][k];
        }
        b[j] -= factor * b[i];
      }
    }
    for (int i = p - 1; i >= 0; i--) {
      for (int k = i + 1; k < p; k++) {
        b[i] -= a[i][k] * b[k];
      }
      b[i] /= a[i][i];
    }
    return b;
  }
}
