package broodtide.engine;

import java.util.Arrays;

/**
 * A quantity of all colonies of a block at once. What runs keep of every colony on every day is
 * read row by row, which is many times faster than colony by colony and the same to the last bit.
 */
final class BlockRow {
  private final double[] spare;

  /** Adult bees, which several quantities ask for. */
  private final double[] adults;

  private int counted = -1;

  /**
   * Room for the figures of a block.
   *
   * @param colonies how many there are
   */
  BlockRow(int colonies) {
    spare = new double[colonies];
    adults = new double[colonies];
  }

  /**
   * Reads a quantity.
   *
   * @param day the day that the block shows
   * @param into where the figures go
   * @param first where the first of them goes
   */
  void read(Quantity quantity, int day, ColonyView view, float[] into, int first) {
    if (view instanceof ColonyBlock block && rows(quantity, day, block)) {
      for (int l = 0; l < spare.length; l++) {
        into[first + l] = (float) spare[l];
      }
    } else {
      for (int l = 0; l < spare.length; l++) {
        into[first + l] = (float) quantity.of(view, l);
      }
    }
  }

  /** Whether the quantity is one of those that are read by rows; if so it has been. */
  private boolean rows(Quantity quantity, int day, ColonyBlock block) {
    double[] out = spare;
    switch (quantity) {
      case ADULTS -> System.arraycopy(adults(day, block), 0, out, 0, out.length);
      case WINTER_BEES -> {
        Arrays.fill(out, 0);
        for (AdultClass each : AdultClass.ALL) {
          if (each.work() == AdultClass.Work.WINTER) {
            add(out, block.of(each));
          }
        }
      }
      case INFESTATION -> {
        double[] bees = adults(day, block);
        double[] mites = block.phoretic;
        for (int l = 0; l < out.length; l++) {
          out[l] = 100 * mites[l] / Math.max(1, bees[l]);
        }
      }
      case MITES -> {
        for (int l = 0; l < out.length; l++) {
          out[l] =
              block.phoretic[l] + Math.max(0, block.inWorker[l]) + Math.max(0, block.inDrone[l]);
        }
      }
      case INFESTED_WORKER_SHARE -> {
        for (int l = 0; l < out.length; l++) {
          double cells = Math.max(0, block.workerCells[l]);
          out[l] = cells > 0 ? Math.min(1, block.infestedWorkerCells(l) / cells) : 0;
        }
      }
      default -> {
        return false;
      }
    }
    return true;
  }

  private double[] adults(int day, ColonyBlock block) {
    if (counted != day) {
      Arrays.fill(adults, 0);
      for (double[] row : block.adults) {
        add(adults, row);
      }
      counted = day;
    }
    return adults;
  }

  private static void add(double[] into, double[] row) {
    for (int l = 0; l < into.length; l++) {
      into[l] += row[l];
    }
  }
}
