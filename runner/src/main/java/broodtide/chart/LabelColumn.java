package broodtide.chart;

import java.util.Comparator;
import java.util.stream.IntStream;

/** Moves labels up and down so that none covers another, each as little as may be. */
final class LabelColumn {
  private LabelColumn() {}

  /**
   * New middles for labels in one column. Labels that touch form a block whose middle is the mean
   * of its wishes (isotonic least squares by pooling neighbours; Barlow et al. 1972), so the order
   * of the wishes is kept.
   *
   * @param wishes where each middle would like to be
   * @param heights height of each label
   * @param top upper end of the column
   * @param foot lower end of the column
   */
  static double[] apart(double[] wishes, double[] heights, double top, double foot) {
    int n = wishes.length;
    Integer[] order =
        IntStream.range(0, n)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> wishes[i]))
            .toArray(Integer[]::new);
    // Taking off the heights of the labels above turns "no overlap" into "never falling".
    double[] above = new double[n];
    double[] value = new double[n];
    int[] weight = new int[n];
    int blocks = 0;
    double stacked = 0;
    for (int k = 0; k < n; k++) {
      int i = order[k];
      above[k] = stacked + heights[i] / 2;
      stacked += heights[i];
      value[blocks] = wishes[i] - above[k];
      weight[blocks++] = 1;
      while (blocks > 1 && value[blocks - 2] > value[blocks - 1]) {
        int w = weight[blocks - 2] + weight[blocks - 1];
        value[blocks - 2] =
            (value[blocks - 2] * weight[blocks - 2] + value[blocks - 1] * weight[blocks - 1]) / w;
        weight[blocks - 2] = w;
        blocks--;
      }
    }
    double[] middles = new double[n];
    int k = 0;
    for (int b = 0; b < blocks; b++) {
      double v = Math.max(top, Math.min(foot - stacked, value[b]));
      for (int j = 0; j < weight[b]; j++, k++) {
        middles[order[k]] = v + above[k];
      }
    }
    return middles;
  }
}
