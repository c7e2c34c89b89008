package broodtide.engine;

import broodtide.colony.BroodTimes;
import java.util.Arrays;

/**
 * The state of W colonies that are advanced in lockstep: one array per variable, one element per
 * colony. Brood is kept in rings with one row per day of age; the row of a ring that comes due on
 * day t is {@code t mod length}, so a day touches one row of each ring.
 *
 * <p>Arrays are padded with empty hives. The compiler judges by the loops it has seen whether to
 * turn them into vector instructions, so a run of one colony must not show it loops of one turn.
 *
 * <p>Package-private arrays on purpose: this is the memory that the steps of the daily engine work
 * on. Everyone else reads it as a {@link ColonyView}.
 */
public final class ColonyBlock implements ColonyView {
  /** Makes every array of this block and of the steps that work on it. */
  final Rows rows;

  /** Length of every array; lanes beyond the last colony hold none. */
  final int width;

  private final int lanes;

  final double[][] openWorker;
  final double[][] openDrone;
  final double[][] cappedWorker;
  final double[][] cappedDrone;
  final double[][] workerMothers;
  final double[][] droneMothers;
  final InfestedCells infestedWorker;
  final InfestedCells infestedDrone;

  final double[] hiveSound;
  final double[] hiveHarmed;
  final double[] foragerSound;
  final double[] foragerHarmed;
  final double[] winterSound;
  final double[] winterHarmed;
  final double[] phoretic;

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
    hiveSound = rows.row();
    hiveHarmed = rows.row();
    foragerSound = rows.row();
    foragerHarmed = rows.row();
    winterSound = rows.row();
    winterHarmed = rows.row();
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

  /** Adult bees by kind. */
  double[][] adultKinds() {
    return new double[][] {
      hiveSound, hiveHarmed, foragerSound, foragerHarmed, winterSound, winterHarmed
    };
  }

  /** Brings the sums over the rings up to date from the rings themselves. */
  void sumUp() {
    openSummed = false;
    sum(workerCells, cappedWorker);
    sum(droneCells, cappedDrone);
    sum(inWorker, workerMothers);
    sum(inDrone, droneMothers);
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
  public double hiveBees(int lane) {
    return hiveSound[lane] + hiveHarmed[lane];
  }

  @Override
  public double foragers(int lane) {
    return foragerSound[lane] + foragerHarmed[lane];
  }

  @Override
  public double winterBees(int lane) {
    return winterSound[lane] + winterHarmed[lane];
  }

  @Override
  public double soundWinterBees(int lane) {
    return winterSound[lane];
  }

  @Override
  public double harmedBees(int lane) {
    return hiveHarmed[lane] + foragerHarmed[lane] + winterHarmed[lane];
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
