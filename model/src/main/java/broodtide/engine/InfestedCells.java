package broodtide.engine;

import java.util.Arrays;

/**
 * Capped cells that hold a mite, one row per day of capping. Few ask for them, so a row is counted
 * from its cells and mothers when it is first asked for; until then no room is taken.
 */
final class InfestedCells {
  private final double[][] cells;
  private final double[][] mothers;
  private final double clumping;
  private final double[][] infested;
  private final boolean[] counted;
  private double[] sum;
  private boolean summed;
  private boolean room;

  InfestedCells(double[][] cells, double[][] mothers, double clumping) {
    this.cells = cells;
    this.mothers = mothers;
    this.clumping = clumping;
    infested = new double[cells.length][];
    counted = new boolean[cells.length];
    sum = new double[0];
  }

  /** Cells were closed on a day; their row holds others from now on. */
  void closed(int day) {
    counted[day % counted.length] = false;
    summed = false;
  }

  /**
   * Cells or mites of any age were taken away. Mothers that each die with the same chance leave the
   * negative binomial a negative binomial of the same size, so what is left is counted anew.
   */
  void disturbed() {
    Arrays.fill(counted, false);
    summed = false;
  }

  /** All infested cells of a lane. */
  double in(int lane) {
    if (!summed) {
      count();
      sum = sum.length == 0 ? new double[cells[0].length] : sum;
      Arrays.fill(sum, 0);
      for (double[] row : infested) {
        Kernel.add(sum, row);
      }
      summed = true;
    }
    return sum[lane];
  }

  private void count() {
    if (!room) {
      Arrays.setAll(infested, i -> new double[cells[i].length]);
      room = true;
    }
    for (int i = 0; i < counted.length; i++) {
      if (!counted[i]) {
        if (clumping == 2) {
          usual(infested[i], cells[i], mothers[i]);
        } else {
          any(infested[i], cells[i], mothers[i]);
        }
        counted[i] = true;
      }
    }
  }

  /** cells (1 - (1 + m / 2)^-2) for m mothers per cell. */
  private static void usual(double[] infested, double[] cells, double[] mothers) {
    for (int l = 0; l < infested.length; l++) {
      double c = cells[l] + Kernel.FEW;
      double empty = c / (c + 0.5 * mothers[l]);
      infested[l] = cells[l] * (1 - empty * empty);
    }
  }

  private void any(double[] infested, double[] cells, double[] mothers) {
    for (int l = 0; l < infested.length; l++) {
      double load = mothers[l] / (cells[l] + Kernel.FEW);
      infested[l] = cells[l] * (1 - AnyClumping.power(load / clumping, clumping));
    }
  }
}
