package broodtide.assessment;

import java.util.Arrays;

/** Values in rising order, each with its place from 0 to 1 by the weights. */
final class WeightedValues {
  private final double[] sorted;
  private final double[] places;

  private WeightedValues(double[] sorted, double[] places) {
    this.sorted = sorted;
    this.places = places;
  }

  /** Values that weigh nothing are left out, unless all do. */
  static WeightedValues of(double[] values, double[] weights) {
    boolean none = Arrays.stream(weights).noneMatch(w -> w > 0);
    long[] keys = new long[values.length];
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      if (none || weights[i] > 0) {
        keys[n++] = (long) ordered((float) values[i]) << Integer.SIZE | i;
      }
    }
    Arrays.sort(keys, 0, n);
    double[] sorted = new double[n];
    double[] places = new double[n];
    double last = 0;
    for (int k = 0; k < n; k++) {
      int i = (int) keys[k];
      double weight = none ? 1 : weights[i];
      sorted[k] = values[i];
      places[k] = k == 0 ? 0 : places[k - 1] + (last + weight) / 2;
      last = weight;
    }
    return new WeightedValues(sorted, places);
  }

  /** A whole number that rises with the value; values are kept in single precision anyway. */
  private static int ordered(float value) {
    int bits = Float.floatToIntBits(value);
    return bits ^ (bits >> 31 & Integer.MAX_VALUE);
  }

  /** Straight between neighbours. */
  double quantile(double level) {
    double at = level * places[places.length - 1];
    int found = Arrays.binarySearch(places, at);
    if (found >= 0) {
      return sorted[found];
    }
    int above = Math.min(places.length - 1, -found - 1);
    int below = Math.max(0, above - 1);
    double share = above == below ? 0 : (at - places[below]) / (places[above] - places[below]);
    return sorted[below] + share * (sorted[above] - sorted[below]);
  }
}
