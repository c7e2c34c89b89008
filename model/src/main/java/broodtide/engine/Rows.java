package broodtide.engine;

/**
 * The arrays of one block of colonies, made one right after the other and of a length that keeps
 * each as far from a cache line's start as the last. Loops over lanes begin and end with a few
 * single steps until the arrays' places in memory suit vectors; arrays that lie alike suit all at
 * once, and no vector straddles two lines. Speed alone depends on it.
 */
final class Rows {
  /** Doubles in a cache line. */
  private static final int LINE = 8;

  /** Doubles that an array's header takes the room of. */
  private static final int HEADER = 2;

  /**
   * Shortest row. The compiler judges by the loops it has seen: it unrolls eightfold, as the widest
   * vectors want, only what turned more than eighty times on average.
   */
  private static final int LEAST = 12 * LINE - HEADER;

  private static final int MADE_AT_ONCE = 136;

  /** Length of every row. */
  final int width;

  private final double[][] made = new double[MADE_AT_ONCE][];
  private int next = MADE_AT_ONCE;

  /** Rows for a number of colonies; what is beyond them stays zero. */
  Rows(int colonies) {
    int lines = (Math.max(LEAST, colonies) + HEADER + LINE - 1) / LINE;
    width = lines * LINE - HEADER;
  }

  /** A row of zeros. */
  double[] row() {
    if (next == MADE_AT_ONCE) {
      for (int i = 0; i < MADE_AT_ONCE; i++) {
        made[i] = new double[width];
      }
      next = 0;
    }
    return made[next++];
  }

  /** Several rows of zeros. */
  double[][] rows(int count) {
    double[][] rows = new double[count][];
    for (int i = 0; i < count; i++) {
      rows[i] = row();
    }
    return rows;
  }
}
