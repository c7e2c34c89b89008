package broodtide.engine;

import broodtide.mite.MiteRates;
import java.util.List;

/** The usual clumping K = 2: (1 + a m / K)^-1 is c / (c + a/2 mothers) and its powers products. */
final class PairedClumping implements CellShares {
  private final double workerCrowding;
  private final double droneCrowding;
  private final double deathPerMite;
  private final double[] underEmpty;
  private final double[] underAlive;
  private final double[] underWorker;
  private final double[] underDrone;
  private double[] cells;
  private double[] mothers;
  private double[] droneCells;
  private double[] droneMothers;

  PairedClumping(Rows rows, MiteRates rates, double deathPerMite) {
    workerCrowding = rates.workerCrowding();
    droneCrowding = rates.droneCrowding();
    this.deathPerMite = deathPerMite;
    underEmpty = rows.row();
    underAlive = rows.row();
    underWorker = rows.row();
    underDrone = rows.row();
    cells = new double[0];
    mothers = cells;
    droneCells = cells;
    droneMothers = cells;
  }

  @Override
  public List<double[]> denominators() {
    return List.of(underEmpty, underAlive, underWorker, underDrone);
  }

  @Override
  public void prepare(
      double[] cells, double[] mothers, double[] droneCells, double[] droneMothers) {
    this.cells = cells;
    this.mothers = mothers;
    this.droneCells = droneCells;
    this.droneMothers = droneMothers;
    worker(underEmpty, underAlive, underWorker, deathPerMite / 2, workerCrowding / 2);
    drone(underDrone, droneCrowding / 2);
  }

  private void worker(double[] e, double[] a, double[] w, double atDeath, double atCrowding) {
    double[] c = cells;
    double[] m = mothers;
    for (int l = 0; l < e.length; l++) {
      double some = c[l] + Kernel.FEW;
      e[l] = some + 0.5 * m[l];
      a[l] = some + atDeath * m[l];
      w[l] = some + atCrowding * m[l];
    }
  }

  private void drone(double[] d, double atCrowding) {
    double[] c = droneCells;
    double[] m = droneMothers;
    for (int l = 0; l < d.length; l++) {
      d[l] = c[l] + Kernel.FEW + atCrowding * m[l];
    }
  }

  /** Harmed bees from a difference of squares, which rounding cannot make negative. */
  @Override
  public void bees(double[] sound, double[] harmed) {
    double[] c = cells;
    double[] e = underEmpty;
    double[] a = underAlive;
    double[] m = mothers;
    double apart = 0.5 - deathPerMite / 2;
    for (int l = 0; l < sound.length; l++) {
      double empty = c[l] * e[l];
      double alive = c[l] * a[l];
      sound[l] = empty * empty * c[l];
      harmed[l] = (empty + alive) * empty * alive * (apart * m[l]);
    }
  }

  @Override
  public void daughters(double[] inWorker, double[] inDrone, double[] vigour) {
    cubes(inWorker, cells, underWorker, mothers, vigour);
    cubes(inDrone, droneCells, underDrone, droneMothers, vigour);
  }

  private static void cubes(double[] out, double[] c, double[] over, double[] m, double[] vigour) {
    for (int l = 0; l < out.length; l++) {
      double share = (c[l] + Kernel.FEW) * over[l];
      out[l] = share * share * share * (m[l] * vigour[l]);
    }
  }
}
