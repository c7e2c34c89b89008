package broodtide.flow;

import broodtide.colony.BroodTimes;
import broodtide.engine.AdultClass;
import broodtide.engine.ColonyBlock;
import broodtide.engine.ColonyView;
import broodtide.engine.MiteLedger;
import broodtide.mite.CellLoad;

/**
 * Where each variable of the flow engine lies in its state vector, and how to read one as a colony.
 */
public final class FlowState implements ColonyView {
  /** Adult bees come first, one variable per {@link AdultClass} in its order. */
  static final int PHORETIC = AdultClass.ALL.size();

  static final int DAUGHTERS = PHORETIC + 1;
  static final int IMMIGRANTS = PHORETIC + 2;
  static final int DIED_ON_BEES = PHORETIC + 3;
  static final int DIED_IN_CELLS = PHORETIC + 4;
  static final int KILLED = PHORETIC + 5;
  static final int CUT_OUT = PHORETIC + 6;
  static final int MOVED_AWAY = PHORETIC + 7;
  private static final int CHAINS = PHORETIC + 8;

  final int stages;
  final int openWorker;
  final int openDrone;
  final int cappedWorker;
  final int cappedDrone;
  final int workerMothers;
  final int droneMothers;
  private final double clumping;
  private final double startMites;
  private double[] y;

  private FlowState(int stages, double clumping, double startMites) {
    this.stages = stages;
    this.clumping = clumping;
    this.startMites = startMites;
    openWorker = CHAINS;
    openDrone = openWorker + stages;
    cappedWorker = openDrone + stages;
    cappedDrone = cappedWorker + stages;
    workerMothers = cappedDrone + stages;
    droneMothers = workerMothers + stages;
    y = new double[droneMothers + stages];
  }

  /**
   * {@return the first lane of a block, with its brood spread over stages}
   *
   * @param b a block whose rings start at index 0; it is not changed
   * @param stages stages per brood delay, at least 1
   * @param clumping size of the negative binomial of mothers over cells, above 0
   */
  public static FlowState of(ColonyBlock b, int stages, double clumping) {
    FlowState s = new FlowState(stages, clumping, b.mites(0));
    for (int k = 0; k < b.adults.length; k++) {
      s.y[k] = b.adults[k][0];
    }
    s.y[PHORETIC] = b.phoretic[0];
    s.spread(b.openWorker, s.openWorker);
    s.spread(b.openDrone, s.openDrone);
    s.spread(b.cappedWorker, s.cappedWorker);
    s.spread(b.cappedDrone, s.cappedDrone);
    s.spread(b.workerMothers, s.workerMothers);
    s.spread(b.droneMothers, s.droneMothers);
    return s;
  }

  /** Shares each day's cohort out over the stages that its ages fall into. */
  private void spread(double[][] ring, int chain) {
    int days = ring.length;
    for (int i = 0; i < days; i++) {
      double youngest = (double) (days - i - 1) / days * stages;
      double oldest = (double) (days - i) / days * stages;
      for (int k = (int) youngest; k < Math.min(stages, Math.ceil(oldest)); k++) {
        double overlap = Math.min(oldest, k + 1) - Math.max(youngest, k);
        y[chain + k] += ring[i][0] * Math.max(0, overlap) / (oldest - youngest);
      }
    }
  }

  /** {@return the state vector itself, not a copy} */
  public double[] vector() {
    return y;
  }

  /**
   * Reads another vector from now on.
   *
   * @param vector a state vector of this layout; it is kept, not copied
   * @return this object
   */
  public FlowState over(double[] vector) {
    y = vector;
    return this;
  }

  /** Scales a chain. */
  void scale(int chain, double factor) {
    for (int k = 0; k < stages; k++) {
      y[chain + k] *= factor;
    }
  }

  /** Scales every adult bee and the mites on them. */
  void scaleBees(double factor) {
    for (int k = 0; k <= PHORETIC; k++) {
      y[k] *= factor;
    }
  }

  private double at(int index) {
    return Math.max(0, y[index]);
  }

  private double sum(int chain) {
    double sum = 0;
    for (int k = 0; k < stages; k++) {
      sum += at(chain + k);
    }
    return sum;
  }

  private double infested(int cells, int mothers) {
    double sum = 0;
    for (int k = 0; k < stages; k++) {
      double c = at(cells + k);
      sum += c > 0 ? c * (1 - CellLoad.empty(at(mothers + k) / c, clumping)) : 0;
    }
    return sum;
  }

  @Override
  public int lanes() {
    return 1;
  }

  @Override
  public double bees(AdultClass of, int lane) {
    return at(of.ordinal());
  }

  @Override
  public double openBrood(int lane) {
    return sum(openWorker) + sum(openDrone);
  }

  @Override
  public double workerCells(int lane) {
    return sum(cappedWorker);
  }

  @Override
  public double droneCells(int lane) {
    return sum(cappedDrone);
  }

  @Override
  public double infestedWorkerCells(int lane) {
    return infested(cappedWorker, workerMothers);
  }

  @Override
  public double infestedDroneCells(int lane) {
    return infested(cappedDrone, droneMothers);
  }

  @Override
  public double mitesOnBees(int lane) {
    return at(PHORETIC);
  }

  @Override
  public double mitesInWorkerCells(int lane) {
    return sum(workerMothers);
  }

  @Override
  public double mitesInDroneCells(int lane) {
    return sum(droneMothers);
  }

  @Override
  public MiteLedger ledger(int lane) {
    return new MiteLedger(
        startMites,
        y[DAUGHTERS],
        y[IMMIGRANTS],
        y[DIED_ON_BEES],
        y[DIED_IN_CELLS],
        y[KILLED],
        y[CUT_OUT],
        y[MOVED_AWAY],
        mites(0));
  }

  /** Days under the capping and in the open, by chain, for the rates between stages. */
  static double rate(int stages, int days) {
    return (double) stages / days;
  }

  /** Passage rate of open worker brood, 1/day, and so on for the other chains. */
  double openWorkerRate() {
    return rate(stages, BroodTimes.WORKER.open());
  }

  double openDroneRate() {
    return rate(stages, BroodTimes.DRONE.open());
  }

  double cappedWorkerRate() {
    return rate(stages, BroodTimes.WORKER.capped());
  }

  double cappedDroneRate() {
    return rate(stages, BroodTimes.DRONE.capped());
  }
}
