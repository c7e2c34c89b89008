package broodtide.engine;

import broodtide.colony.BroodTimes;
import java.util.Arrays;

/**
 * The state of W colonies that are advanced in lockstep: one array per variable, one element per
 * colony. Brood is kept in rings with one row per day of age; the row of a ring that comes due on
 * day t is {@code t mod length}, so a day touches one row of each ring.
 *
 * <p>Package-private arrays on purpose: this is the memory that the steps of the daily engine work
 * on. Everyone else reads it as a {@link ColonyView}.
 */
final class ColonyBlock implements ColonyView {
  final int width;

  final double[][] openWorker;
  final double[][] openDrone;
  final double[][] cappedWorker;
  final double[][] cappedDrone;
  final double[][] workerMothers;
  final double[][] droneMothers;
  final double[][] infestedWorker;
  final double[][] infestedDrone;

  final double[] hiveSound;
  final double[] hiveHarmed;
  final double[] foragerSound;
  final double[] foragerHarmed;
  final double[] winterSound;
  final double[] winterHarmed;
  final double[] phoretic;

  /** Sums over the rings, kept up day by day. */
  final double[] open;

  final double[] workerCells;
  final double[] droneCells;
  final double[] inWorker;
  final double[] inDrone;
  final double[] infestedWorkerCells;
  final double[] infestedDroneCells;

  /** The ledger. */
  final double[] startMites;

  final double[] daughters;
  final double[] immigrants;
  final double[] diedOnBees;
  final double[] diedInCells;
  final double[] killed;
  final double[] cutOut;
  final double[] movedAway;

  ColonyBlock(int width) {
    this.width = width;
    openWorker = rows(BroodTimes.WORKER.open());
    openDrone = rows(BroodTimes.DRONE.open());
    cappedWorker = rows(BroodTimes.WORKER.capped());
    cappedDrone = rows(BroodTimes.DRONE.capped());
    workerMothers = rows(BroodTimes.WORKER.capped());
    droneMothers = rows(BroodTimes.DRONE.capped());
    infestedWorker = rows(BroodTimes.WORKER.capped());
    infestedDrone = rows(BroodTimes.DRONE.capped());
    hiveSound = new double[width];
    hiveHarmed = new double[width];
    foragerSound = new double[width];
    foragerHarmed = new double[width];
    winterSound = new double[width];
    winterHarmed = new double[width];
    phoretic = new double[width];
    open = new double[width];
    workerCells = new double[width];
    droneCells = new double[width];
    inWorker = new double[width];
    inDrone = new double[width];
    infestedWorkerCells = new double[width];
    infestedDroneCells = new double[width];
    startMites = new double[width];
    daughters = new double[width];
    immigrants = new double[width];
    diedOnBees = new double[width];
    diedInCells = new double[width];
    killed = new double[width];
    cutOut = new double[width];
    movedAway = new double[width];
  }

  private double[][] rows(int length) {
    return new double[length][width];
  }

  /** Rings of bees and brood, whatever their mites. */
  double[][][] broodRings() {
    return new double[][][] {openWorker, openDrone, cappedWorker, cappedDrone};
  }

  /** Rings that follow the mites. */
  double[][][] miteRings() {
    return new double[][][] {workerMothers, droneMothers, infestedWorker, infestedDrone};
  }

  /** Adult bees by kind. */
  double[][] adultKinds() {
    return new double[][] {
      hiveSound, hiveHarmed, foragerSound, foragerHarmed, winterSound, winterHarmed
    };
  }

  /** Brings the sums over the rings up to date from the rings themselves. */
  void sumUp() {
    sum(open, openWorker, openDrone);
    sum(workerCells, cappedWorker);
    sum(droneCells, cappedDrone);
    sum(inWorker, workerMothers);
    sum(inDrone, droneMothers);
    sum(infestedWorkerCells, infestedWorker);
    sum(infestedDroneCells, infestedDrone);
  }

  private static void sum(double[] into, double[][]... rings) {
    Arrays.fill(into, 0);
    for (double[][] ring : rings) {
      for (double[] row : ring) {
        for (int l = 0; l < into.length; l++) {
          into[l] += row[l];
        }
      }
    }
  }

  @Override
  public int lanes() {
    return width;
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
    return open[lane];
  }

  @Override
  public double workerCells(int lane) {
    return workerCells[lane];
  }

  @Override
  public double droneCells(int lane) {
    return droneCells[lane];
  }

  @Override
  public double infestedWorkerCells(int lane) {
    return infestedWorkerCells[lane];
  }

  @Override
  public double infestedDroneCells(int lane) {
    return infestedDroneCells[lane];
  }

  @Override
  public double mitesOnBees(int lane) {
    return phoretic[lane];
  }

  @Override
  public double mitesInWorkerCells(int lane) {
    return inWorker[lane];
  }

  @Override
  public double mitesInDroneCells(int lane) {
    return inDrone[lane];
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
