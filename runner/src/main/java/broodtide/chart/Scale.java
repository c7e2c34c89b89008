package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * Places values on an axis, linear or logarithmic.
 *
 * @param low value at the foot
 * @param high value at the top
 * @param log whether steps are ratios
 * @param foot where the lower end stands in the picture: a height, y downwards, or a left edge
 * @param top where the upper end stands
 */
record Scale(double low, double high, boolean log, double foot, double top) {
  Scale {
    if (!(low < high) || (log && !(low > 0))) {
      throw new IllegalArgumentException(
          "axis from " + low + " to " + high + (log ? ", logarithmic" : "") + " cannot be drawn");
    }
  }

  /** Where a value stands; a logarithmic axis moves values below its foot to the foot. */
  double at(double value) {
    double share =
        log
            ? Math.log(Math.max(value, low) / low) / Math.log(high / low)
            : (value - low) / (high - low);
    return foot + share * (top - foot);
  }

  /** The same, kept within foot and top. */
  double within(double value) {
    double place = at(value);
    return Math.max(Math.min(foot, top), Math.min(Math.max(foot, top), place));
  }

  /** A value moved to the nearer end when it lies beyond the axis. */
  double inside(double value) {
    return Math.max(low, Math.min(high, value));
  }

  /** Round values with about this many steps between them. */
  List<Double> ticks(int about) {
    return log ? decades() : even(step(high - low, about));
  }

  /** The smallest of 1, 2, 2.5 and 5 times a power of ten with no more than these whole steps. */
  static double step(double length, int about) {
    double power = Math.pow(10, Math.floor(Math.log10(length / about)));
    for (double lead : new double[] {1, 2, 2.5, 5}) {
      if (Math.floor(length / (lead * power) + 1e-9) <= about) {
        return lead * power;
      }
    }
    return 10 * power;
  }

  private List<Double> even(double step) {
    List<Double> ticks = new ArrayList<>();
    long last = (long) Math.floor(high / step + 1e-9);
    for (long i = (long) Math.ceil(low / step - 1e-9); i <= last; i++) {
      ticks.add(i * step);
    }
    return ticks;
  }

  private List<Double> decades() {
    boolean wide = high / low > 2000;
    List<Double> ticks = new ArrayList<>();
    for (int e = (int) Math.floor(Math.log10(low)); e <= Math.ceil(Math.log10(high)); e++) {
      for (double lead : wide ? new double[] {1} : new double[] {1, 2, 5}) {
        double v = lead * Math.pow(10, e);
        if (v >= low * (1 - 1e-9) && v <= high * (1 + 1e-9)) {
          ticks.add(v);
        }
      }
    }
    return ticks;
  }
}
