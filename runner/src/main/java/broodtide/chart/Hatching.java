package broodtide.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Slanting lines inside an outline, each cut at the edge by arithmetic: an SVG needs no pattern.
 */
final class Hatching {
  private static final double APART = 8;

  /** Shorter lines, as where an outline has no width, would be specks. */
  private static final double LEAST = 0.5;

  private Hatching() {}

  /** Draws the lines inside a closed trace. */
  static void inside(Canvas canvas, Trace edge, Pen pen) {
    double first = Double.POSITIVE_INFINITY;
    double last = Double.NEGATIVE_INFINITY;
    double left = edge.x(0);
    double top = edge.y(0);
    for (int i = 0; i < edge.size(); i++) {
      first = Math.min(first, edge.x(i) + edge.y(i));
      last = Math.max(last, edge.x(i) + edge.y(i));
      left = Math.min(left, edge.x(i));
      top = Math.min(top, edge.y(i));
    }
    List<Trace> lines = new ArrayList<>();
    double begin = left + top + APART;
    for (double d = begin + APART * Math.ceil((first - begin) / APART); d < last; d += APART) {
      double[] crossings = crossings(edge, d);
      for (int k = 0; k + 1 < crossings.length; k += 2) {
        double x1 = crossings[k];
        double x2 = crossings[k + 1];
        if (x2 - x1 > LEAST) {
          lines.add(Trace.of(x1, d - x1, x2, d - x2));
        }
      }
    }
    if (!lines.isEmpty()) {
      canvas.draw(lines, pen);
    }
  }

  /** Where the line x + y = d crosses the edge, from left to right. */
  private static double[] crossings(Trace edge, double d) {
    List<Double> xs = new ArrayList<>();
    for (int i = 1; i < edge.size(); i++) {
      double a = edge.x(i - 1) + edge.y(i - 1) - d;
      double b = edge.x(i) + edge.y(i) - d;
      if (a < 0 != b < 0) {
        xs.add(edge.x(i - 1) + (edge.x(i) - edge.x(i - 1)) * a / (a - b));
      }
    }
    double[] sorted = xs.stream().mapToDouble(Double::doubleValue).toArray();
    Arrays.sort(sorted);
    return sorted;
  }
}
