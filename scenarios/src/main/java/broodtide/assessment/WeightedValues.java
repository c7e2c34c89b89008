package broodtide.assessment;

import java.util.Arrays;

/**
 * Values from which quantiles by weight are taken, without sorting them all: they are counted into
 * cells by their size, and only the cells about a quantile are put in order.
 *
 * <p>A value stands at the weight of all smaller ones and half of its own; quantiles lie straight
 * between neighbours. Values are kept in single precision anyway, and are ordered in it; equal ones
 * keep their order.
 */
final class WeightedValues {
  /** Most cells, a power of two; their width is a power of two, in steps of single precision. */
  private static final int CELLS = 1024;

  private final double[] values;
  private final double[] weights;

  /** Numbers of the values, cell by cell. */
  private final int[] members;

  /** Where each cell begins among the members; the last is where all end. */
  private final int[] starts;

  /** The weight of all cells before each. */
  private final double[] before;

  private final double first;
  private final double last;

  private WeightedValues(double[] values, double[] weights, int[] chosen, int count) {
    this.values = values;
    this.weights = weights;
    int[] keys = new int[count];
    int least = Integer.MAX_VALUE;
    int most = Integer.MIN_VALUE;
    for (int k = 0; k < count; k++) {
      int key = ordered((float) values[chosen[k]]);
      keys[k] = key;
      least = Math.min(least, key);
      most = Math.max(most, key);
    }
    long span = (long) most - least;
    int shift = Math.max(0, Long.SIZE - Long.numberOfLeadingZeros(span / CELLS));
    int cells = (int) (span >> shift) + 1;
    starts = new int[cells + 1];
    before = new double[cells + 1];
    for (int k = 0; k < count; k++) {
      keys[k] = (int) ((long) keys[k] - least >> shift);
      starts[keys[k] + 1]++;
      before[keys[k] + 1] += weights[chosen[k]];
    }
    for (int c = 0; c < cells; c++) {
      starts[c + 1] += starts[c];
      before[c + 1] += before[c];
    }
    members = new int[count];
    int[] free = Arrays.copyOf(starts, cells);
    for (int k = 0; k < count; k++) {
      members[free[keys[k]]++] = chosen[k];
    }
    first = weights[inOrder(0)[0]];
    int[] top = inOrder(cells - 1);
    last = weights[top[top.length - 1]];
  }

  /** Values that weigh nothing are left out, unless all do; then all weigh the same. */
  static WeightedValues of(double[] values, double[] weights) {
    int[] chosen = new int[values.length];
    int count = 0;
    for (int i = 0; i < values.length; i++) {
      if (weights[i] > 0) {
        chosen[count++] = i;
      }
    }
    if (count > 0) {
      return new WeightedValues(values, weights, chosen, count);
    }
    Arrays.setAll(chosen, i -> i);
    double[] equal = new double[values.length];
    Arrays.fill(equal, 1);
    return new WeightedValues(values, equal, chosen, values.length);
  }

  /** A whole number that rises with the value. */
  private static int ordered(float value) {
    int bits = Float.floatToIntBits(value);
    return bits ^ (bits >> 31 & Integer.MAX_VALUE);
  }

  /** Numbers of a cell's values, the smallest value first. */
  private int[] inOrder(int cell) {
    int[] inside = Arrays.copyOfRange(members, starts[cell], starts[cell + 1]);
    long[] keys = new long[inside.length];
    for (int k = 0; k < keys.length; k++) {
      keys[k] = (long) ordered((float) values[inside[k]]) << Integer.SIZE | inside[k];
    }
    Arrays.sort(keys);
    for (int k = 0; k < keys.length; k++) {
      inside[k] = (int) keys[k];
    }
    return inside;
  }

  /**
   * A quantile.
   *
   * @param level 0 to 1
   */
  double quantile(double level) {
    double all = before[before.length - 1];
    double sought = level * (all - (first + last) / 2) + first / 2;
    int cell = Arrays.binarySearch(before, sought);
    cell = Math.min(before.length - 2, Math.max(0, cell >= 0 ? cell : -cell - 2));
    // The last value of the cell before may be the neighbour below, the first of the next that
    // above.
    double below = Double.NaN;
    double at = Double.NaN;
    for (int c = Math.max(filled(cell - 1, -1), filled(0, 1)); c >= 0; c = filled(c + 1, 1)) {
      double sum = before[c];
      for (int i : inOrder(c)) {
        double place = sum + weights[i] / 2;
        if (place == sought || place > sought && Double.isNaN(at)) {
          return values[i];
        }
        if (place > sought) {
          return below + (sought - at) / (place - at) * (values[i] - below);
        }
        below = values[i];
        at = place;
        sum += weights[i];
      }
    }
    return below;
  }

  /** The nearest cell that holds values, from one on or back; -1 where there is none. */
  private int filled(int from, int step) {
    for (int c = from; c >= 0 && c < starts.length - 1; c += step) {
      if (starts[c + 1] > starts[c]) {
        return c;
      }
    }
    return -1;
  }
}
