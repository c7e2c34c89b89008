package broodtide.chart;

import java.util.Arrays;

/** A density, or another curve, through points at rising places. */
public final class DensityCurve {
  private final double[] x;
  private final double[] y;

  private DensityCurve(double[] x, double[] y) {
    this.x = x;
    this.y = y;
  }

  /**
   * {@return the curve}
   *
   * @param x two places or more, rising
   * @param y a finite height for each
   */
  public static DensityCurve of(double[] x, double[] y) {
    boolean rises = x.length > 1 && x.length == y.length;
    for (int i = 1; rises && i < x.length; i++) {
      rises = x[i - 1] < x[i];
    }
    if (!rises || !Arrays.stream(y).allMatch(Double::isFinite)) {
      throw new IllegalArgumentException(
          "a curve needs two places or more that rise, and a finite height for each; it has "
              + x.length
              + " places and "
              + y.length
              + " heights");
    }
    return new DensityCurve(x.clone(), y.clone());
  }

  double[] x() {
    return x.clone();
  }

  double[] y() {
    return y.clone();
  }

  double highest() {
    return Arrays.stream(y).max().orElse(0);
  }

  /** Height between the points; that of the nearer end outside them. */
  double at(double place) {
    int i = Arrays.binarySearch(x, place);
    if (i >= 0) {
      return y[i];
    }
    int after = -i - 1;
    if (after == 0 || after == x.length) {
      return y[after == 0 ? 0 : x.length - 1];
    }
    double share = (place - x[after - 1]) / (x[after] - x[after - 1]);
    return y[after - 1] + share * (y[after] - y[after - 1]);
  }

  /** The part from a place on, which lies before the last point. */
  DensityCurve from(double place) {
    double[] rest = Arrays.stream(x).filter(v -> v > place).toArray();
    double[] places = new double[rest.length + 1];
    places[0] = Math.max(place, x[0]);
    System.arraycopy(rest, 0, places, 1, rest.length);
    if (places[0] == places[1]) {
      places = rest;
    }
    return new DensityCurve(places, Arrays.stream(places).map(this::at).toArray());
  }

  /** The place that halves the area under the curve. */
  double middle() {
    double all = 0;
    for (int i = 1; i < x.length; i++) {
      all += (x[i] - x[i - 1]) * (y[i] + y[i - 1]) / 2;
    }
    double sum = 0;
    for (int i = 1; i < x.length; i++) {
      sum += (x[i] - x[i - 1]) * (y[i] + y[i - 1]) / 2;
      if (sum >= all / 2) {
        return x[i];
      }
    }
    return x[x.length - 1];
  }
}
