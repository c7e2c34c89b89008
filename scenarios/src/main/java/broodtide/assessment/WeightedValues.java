package broodtide.assessment;

import java.util.Arrays;

/** Values in rising order, each with its place from 0 to 1 by the weights. */
final class WeightedValues {
  /** Bits of a digit of the radix sort: three make a single-precision number. */
  private static final int DIGIT = 11;

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
    keys = sorted(Arrays.copyOf(keys, n));
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

  /** By the upper half of each key, equal ones in their order: a radix sort, three digits long. */
  private static long[] sorted(long[] keys) {
    long[] from = keys;
    long[] to = new long[keys.length];
    for (int shift = Integer.SIZE; shift < Long.SIZE; shift += DIGIT) {
      int[] places = new int[(1 << DIGIT) + 1];
      for (long key : from) {
        places[digit(key, shift) + 1]++;
      }
      for (int d = 0; d < 1 << DIGIT; d++) {
        places[d + 1] += places[d];
      }
      for (long key : from) {
        to[places[digit(key, shift)]++] = key;
      }
      long[] done = to;
      to = from;
      from = done;
    }
    return from;
  }

  private static int digit(long key, int shift) {
    return (int) ((key ^ Long.MIN_VALUE) >>> shift) & (1 << DIGIT) - 1;
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
