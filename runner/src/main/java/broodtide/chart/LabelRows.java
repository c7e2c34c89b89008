package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/** Puts pieces that lie beside each other into as few rows as keep them apart. */
final class LabelRows {
  private LabelRows() {}

  /**
   * A row for each piece, 0 first.
   *
   * @param from left ends
   * @param to right ends
   * @param gap least room between two pieces in a row
   */
  static int[] of(double[] from, double[] to, double gap) {
    int[] lanes = new int[from.length];
    List<List<Integer>> taken = new ArrayList<>();
    for (int i = 0; i < from.length; i++) {
      int lane = 0;
      while (lane < taken.size() && !free(taken.get(lane), from, to, i, gap)) {
        lane++;
      }
      if (lane == taken.size()) {
        taken.add(new ArrayList<>());
      }
      taken.get(lane).add(i);
      lanes[i] = lane;
    }
    return lanes;
  }

  private static boolean free(List<Integer> row, double[] from, double[] to, int i, double gap) {
    return row.stream().allMatch(j -> to[i] + gap <= from[j] || to[j] + gap <= from[i]);
  }

  /** How many rows are used. */
  static int count(int[] lanes) {
    int most = 0;
    for (int lane : lanes) {
      most = Math.max(most, lane + 1);
    }
    return most;
  }
}
