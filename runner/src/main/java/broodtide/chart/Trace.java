package broodtide.chart;

import java.util.Arrays;

/** A chain of points in picture units. */
final class Trace {
  /** Half of what a tenth of a unit can show. */
  static final double FINENESS = 0.12;

  private final double[] xs;
  private final double[] ys;

  private Trace(double[] xs, double[] ys) {
    this.xs = xs;
    this.ys = ys;
  }

  /** Points given as x, y, x, y and so on. */
  static Trace of(double... xy) {
    double[] xs = new double[xy.length / 2];
    double[] ys = new double[xy.length / 2];
    for (int i = 0; i < xs.length; i++) {
      xs[i] = xy[2 * i];
      ys[i] = xy[2 * i + 1];
    }
    return new Trace(xs, ys);
  }

  static Trace of(double[] xs, double[] ys) {
    return new Trace(xs.clone(), ys.clone());
  }

  static Trace around(Box b) {
    return of(
        b.x(), b.y(), b.right(), b.y(), b.right(), b.bottom(), b.x(), b.bottom(), b.x(), b.y());
  }

  /** A diamond around a place, as wide as it is high. */
  static Trace diamond(double x, double y, double half) {
    return of(x, y - half, x + half, y, x, y + half, x - half, y, x, y - half);
  }

  int size() {
    return xs.length;
  }

  double x(int i) {
    return xs[i];
  }

  double y(int i) {
    return ys[i];
  }

  boolean closed() {
    int last = size() - 1;
    return last > 1 && xs[0] == xs[last] && ys[0] == ys[last];
  }

  /**
   * The same line with fewer points (Ramer 1972, Douglas and Peucker 1973): no point left out lies
   * further from the line than the tolerance. A season of days needs a fifth of its points.
   */
  Trace thinned(double tolerance) {
    if (size() < 3) {
      return this;
    }
    boolean[] keep = new boolean[size()];
    keep[0] = true;
    keep[size() - 1] = true;
    mark(0, size() - 1, tolerance, keep);
    double[] x = new double[size()];
    double[] y = new double[size()];
    int n = 0;
    for (int i = 0; i < size(); i++) {
      if (keep[i]) {
        x[n] = xs[i];
        y[n++] = ys[i];
      }
    }
    return new Trace(Arrays.copyOf(x, n), Arrays.copyOf(y, n));
  }

  private void mark(int from, int to, double tolerance, boolean[] keep) {
    int worst = -1;
    double most = tolerance;
    for (int i = from + 1; i < to; i++) {
      double d = distance(i, from, to);
      if (d > most) {
        most = d;
        worst = i;
      }
    }
    if (worst > 0) {
      keep[worst] = true;
      mark(from, worst, tolerance, keep);
      mark(worst, to, tolerance, keep);
    }
  }

  private double distance(int i, int a, int b) {
    double dx = xs[b] - xs[a];
    double dy = ys[b] - ys[a];
    double length = Math.hypot(dx, dy);
    if (length == 0) {
      return Math.hypot(xs[i] - xs[a], ys[i] - ys[a]);
    }
    return Math.abs(dx * (ys[i] - ys[a]) - dy * (xs[i] - xs[a])) / length;
  }
}
