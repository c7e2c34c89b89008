package broodtide.engine;

import java.util.Arrays;

/**
 * A quantity of all colonies of a block at once. What runs keep of every colony on every day is
 * read row by row, which is many times faster than colony by colony and the same to the last bit.
 */
final class BlockRow {
  private BlockRow() {}

  /**
   * Reads a quantity.
   *
   * @param spare room for a figure of each colony
   * @param into where the figures go
   * @param first where the first of them goes
   */
  static void read(Quantity quantity, ColonyView view, double[] spare, float[] into, int first) {
    if (view instanceof ColonyBlock block && rows(quantity, block, spare)) {
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
  private static boolean rows(Quantity quantity, ColonyBlock block, double[] out) {
    switch (quantity) {
      case ADULTS -> adults(block, out);
      case WINTER_BEES -> {
        Arrays.fill(out, 0);
        for (AdultClass each : AdultClass.ALL) {
          if (each.work() == AdultClass.Work.WINTER) {
            add(out, block.of(each));
          }
        }
      }
      case INFESTATION -> {
        adults(block, out);
        double[] mites = block.phoretic;
        for (int l = 0; l < out.length; l++) {
          out[l] = 100 * mites[l] / Math.max(1, out[l]);
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

  private static void adults(ColonyBlock block, double[] out) {
    Arrays.fill(out, 0);
    for (double[] row : block.adults) {
      add(out, row);
    }
  }

  private static void add(double[] into, double[] row) {
    for (int l = 0; l < into.length; l++) {
      into[l] += row[l];
    }
  }
}
