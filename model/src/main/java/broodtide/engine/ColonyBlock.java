package broodtide.engine;

import broodtide.colony.BroodTimes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/**
 * The state of W colonies that are advanced in lockstep: one array per variable, one element per
 * colony. Brood is kept in rings with one row per day of age; the row of a ring that comes due on
 * day t is {@code t mod length}, so a day touches one row of each ring.
 *
 * <p>Arrays are padded with empty hives. The compiler judges by the loops it has seen whether to
 * turn them into vector instructions, so a run of one colony must not show it loops of one turn.
 *
 * <p>This is the memory that the steps of the daily engine work on. The arrays that are public are
 * so for the flow engine alone, which starts from the first lane; everyone else reads a block as a
 * {@link ColonyView}. A block is changed by one thread at a time.
 */
public final class ColonyBlock implements ColonyView {
  /** Makes every array of this block and of the steps that work on it. */
  final Rows rows;

  /** Length of every array; lanes beyond the last colony hold none. */
  final int width;

  private final int lanes;
  private final double clumping;

  /** Worker cells with eggs or larvae: one row per day of age. */
  public final double[][] openWorker;

  /** Drone cells with eggs or larvae: one row per day of age. */
  public final double[][] openDrone;

  /** Capped worker cells: one row per day since capping. */
  public final double[][] cappedWorker;

  /** Capped drone cells: one row per day since capping. */
  public final double[][] cappedDrone;

  /** Mother mites in capped worker cells, in the rows of {@link #cappedWorker}. */
  public final double[][] workerMothers;

  /** Mother mites in capped drone cells, in the rows of {@link #cappedDrone}. */
  public final double[][] droneMothers;

  final InfestedCells infestedWorker;
  final InfestedCells infestedDrone;

  /** Adult bees, one row per {@link AdultClass} in its order. */
  public final double[][] adults;

  /** Mites on adult bees. */
  public final double[] phoretic;

  /** Sum over the rings of open brood, where {@link #openSummed} says so. */
  private final double[] open;

  private boolean openSummed;

  /** Sums over the other rings, kept up day by day; rounding may leave them just below zero. */
  final double[] workerCells;

  final double[] droneCells;
  final double[] inWorker;
  final double[] inDrone;

  /** The ledger. */
  final double[] startMites;

  final double[] daughters;
  final double[] immigrants;
  final double[] diedOnBees;
  final double[] diedInCells;
  final double[] killed;
  final double[] cutOut;
  final double[] movedAway;

  /**
   * Empty hives.
   *
   * @param lanes colonies
   * @param clumping size of the negative binomial of mothers over cells
   */
  ColonyBlock(int lanes, double clumping) {
    this.lanes = lanes;
    this.clumping = clumping;
    rows = new Rows(lanes);
    width = rows.width;
    openWorker = rows.rows(BroodTimes.WORKER.open());
    openDrone = rows.rows(BroodTimes.DRONE.open());
    cappedWorker = rows.rows(BroodTimes.WORKER.capped());
    cappedDrone = rows.rows(BroodTimes.DRONE.capped());
    workerMothers = rows.rows(BroodTimes.WORKER.capped());
    droneMothers = rows.rows(BroodTimes.DRONE.capped());
    infestedWorker = new InfestedCells(cappedWorker, workerMothers, clumping);
    infestedDrone = new InfestedCells(cappedDrone, droneMothers, clumping);
    adults = rows.rows(AdultClass.ALL.size());
    phoretic = rows.row();
    open = rows.row();
    workerCells = rows.row();
    droneCells = rows.row();
    inWorker = rows.row();
    inDrone = rows.row();
    startMites = rows.row();
    daughters = rows.row();
    immigrants = rows.row();
    diedOnBees = rows.row();
    diedInCells = rows.row();
    killed = rows.row();
    cutOut = rows.row();
    movedAway = rows.row();
  }

  /** Rings of bees and brood, whatever their mites. */
  double[][][] broodRings() {
    return new double[][][] {openWorker, openDrone, cappedWorker, cappedDrone};
  }

  /** Rings that follow the mites. */
  double[][][] miteRings() {
    return new double[][][] {workerMothers, droneMothers};
  }

  /**
   * {@return how many adults of a class each colony has; the block's own row, not a copy}
   *
   * @param each the class
   */
  double[] of(AdultClass each) {
    return adults[each.ordinal()];
  }

  /** Brings the sums over the rings up to date from the rings themselves. */
  void sumUp() {
    openSummed = false;
    sum(workerCells, cappedWorker);
    sum(droneCells, cappedDrone);
    sum(inWorker, workerMothers);
    sum(inDrone, droneMothers);
  }

  /** Turns the rings after so many days, so that a new run finds the row due first at index 0. */
  void turn(int days) {
    for (double[][][] rings : new double[][][][] {broodRings(), miteRings()}) {
      for (double[][] ring : rings) {
        double[][] copy = ring.clone();
        for (int i = 0; i < ring.length; i++) {
          ring[i] = copy[(i + days) % ring.length];
        }
      }
    }
    disturbed();
  }

  /** A block of one colony, a copy of a lane of this one with its bees, brood and mites scaled. */
  ColonyBlock lane(int lane, double factor) {
    ColonyBlock one = new ColonyBlock(1, clumping);
    one.eachRow(this, (theirs, ours) -> ours[0] = theirs[lane] * factor);
    one.begin();
    return one;
  }

  /**
   * Takes bees, brood and mites of some lanes a little beyond what two runs led to.
   *
   * @param from a run
   * @param to the next
   * @param beyond by lane, how far beyond the second, in parts of the way from the first; NaN
   *     leaves the lane as it is
   */
  void follow(ColonyBlock from, ColonyBlock to, double[] beyond) {
    List<double[]> before = new ArrayList<>();
    List<double[]> after = new ArrayList<>();
    from.stateRows(before::add);
    to.stateRows(after::add);
    int[] next = {0};
    stateRows(
        row -> {
          double[] first = before.get(next[0]);
          double[] second = after.get(next[0]++);
          for (int l = 0; l < beyond.length; l++) {
            if (!Double.isNaN(beyond[l])) {
              row[l] = Math.max(0, second[l] + beyond[l] * (second[l] - first[l]));
            }
          }
        });
  }

  /** Puts the first lane of another block into all lanes. */
  void repeat(ColonyBlock from) {
    eachRow(from, (theirs, ours) -> Arrays.fill(ours, 0, lanes, theirs[0]));
  }

  /** Scales bees, brood and mites of every lane. */
  void scale(double[] factors) {
    stateRows(row -> scale(row, factors));
  }

  /** Scales the mites of every lane, on bees and in cells. */
  void scaleMites(double[] factors) {
    scale(phoretic, factors);
    for (double[][] ring : miteRings()) {
      for (double[] row : ring) {
        scale(row, factors);
      }
    }
  }

  private static void scale(double[] row, double[] factors) {
    for (int l = 0; l < factors.length; l++) {
      row[l] *= factors[l];
    }
  }

  /** Shows every row of bees, brood and mites, always in the same order. */
  void stateRows(Consumer<double[]> rows) {
    eachRow(this, (same, row) -> rows.accept(row));
  }

  /** Bees, brood and mites by lane, in the order of {@link #stateRows}. */
  double[][] states() {
    return columns(this::stateRows);
  }

  /** Shows every row that a day hands on to the next: the state, its sums, and the ledger. */
  void memoryRows(Consumer<double[]> rows) {
    stateRows(rows);
    for (double[] row : new double[][] {workerCells, droneCells, inWorker, inDrone, startMites}) {
      rows.accept(row);
    }
    for (double[] row : ledger()) {
      rows.accept(row);
    }
  }

  /** All that lanes hand on to the next day, by lane, in the order of {@link #memoryRows}. */
  double[][] memory() {
    return columns(this::memoryRows);
  }

  private double[][] columns(Consumer<Consumer<double[]>> rows) {
    List<double[]> all = new ArrayList<>();
    rows.accept(all::add);
    double[][] out = new double[lanes][all.size()];
    for (int r = 0; r < all.size(); r++) {
      double[] row = all.get(r);
      for (int l = 0; l < lanes; l++) {
        out[l][r] = row[l];
      }
    }
    return out;
  }

  /**
   * Puts colonies into the lanes of a block.
   *
   * @param rows {@link #stateRows} or {@link #memoryRows} of the block
   * @param columns by colony, what {@link #states} or {@link #memory} gave
   * @param from the colony of lane 0
   * @param end where the colonies end
   */
  static void fill(Consumer<Consumer<double[]>> rows, double[][] columns, int from, int end) {
    int[] next = {0};
    rows.accept(
        row -> {
          for (int i = from; i < end; i++) {
            row[i - from] = columns[i][next[0]];
          }
          next[0]++;
        });
  }

  private double[][] ledger() {
    return new double[][] {
      daughters, immigrants, diedOnBees, diedInCells, killed, cutOut, movedAway
    };
  }

  private void eachRow(ColonyBlock other, BiConsumer<double[], double[]> rows) {
    each(other.adults, adults, rows);
    rows.accept(other.phoretic, phoretic);
    each(other.broodRings(), broodRings(), rows);
    each(other.miteRings(), miteRings(), rows);
  }

  private static void each(
      double[][][] theirs, double[][][] ours, BiConsumer<double[], double[]> rows) {
    for (int r = 0; r < ours.length; r++) {
      each(theirs[r], ours[r], rows);
    }
  }

  private static void each(
      double[][] theirs, double[][] ours, BiConsumer<double[], double[]> rows) {
    for (int i = 0; i < ours.length; i++) {
      rows.accept(theirs[i], ours[i]);
    }
  }

  /** Sums up what the rings hold, and opens the ledger with the mites that are there. */
  void begin() {
    sumUp();
    disturbed();
    for (double[] column : ledger()) {
      Arrays.fill(column, 0);
    }
    for (int l = 0; l < lanes; l++) {
      startMites[l] = mites(l);
    }
  }

  private void disturbed() {
    infestedWorker.disturbed();
    infestedDrone.disturbed();
  }

  /** Makes sums that are only worked out when read be worked out anew after a day's step. */
  void dayDone(int day) {
    openSummed = false;
    infestedWorker.closed(day);
    infestedDrone.closed(day);
  }

  private static void sum(double[] into, double[][]... rings) {
    Arrays.fill(into, 0);
    for (double[][] ring : rings) {
      for (double[] row : ring) {
        Kernel.add(into, row);
      }
    }
  }

  @Override
  public int lanes() {
    return lanes;
  }

  @Override
  public double bees(AdultClass of, int lane) {
    return adults[of.ordinal()][lane];
  }

  @Override
  public double adults(int lane) {
    double sum = 0;
    for (double[] row : adults) {
      sum += row[lane];
    }
    return sum;
  }

  @Override
  public double openBrood(int lane) {
    if (!openSummed) {
      sum(open, openWorker, openDrone);
      openSummed = true;
    }
    return open[lane];
  }

  @Override
  public double workerCells(int lane) {
    return Math.max(0, workerCells[lane]);
  }

  @Override
  public double droneCells(int lane) {
    return Math.max(0, droneCells[lane]);
  }

  @Override
  public double infestedWorkerCells(int lane) {
    return infestedWorker.in(lane);
  }

  @Override
  public double infestedDroneCells(int lane) {
    return infestedDrone.in(lane);
  }

  @Override
  public double mitesOnBees(int lane) {
    return phoretic[lane];
  }

  @Override
  public double mitesInWorkerCells(int lane) {
    return Math.max(0, inWorker[lane]);
  }

  @Override
  public double mitesInDroneCells(int lane) {
    return Math.max(0, inDrone[lane]);
  }

  @Override
  public MiteLedger ledger(int lane) {
    return new MiteLedger(
        startMites[lane],
        daughters[lane],
        immigrants[lane],
        diedOnBees[lane],
        diedInCells[lane],
        killed[lane],
        cutOut[lane],
        movedAway[lane],
        mites(lane));
  }
}
