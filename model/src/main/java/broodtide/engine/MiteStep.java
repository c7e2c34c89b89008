package broodtide.engine;

import broodtide.colony.BeeRates;
import broodtide.mite.MiteRates;

/**
 * One day of the mites on bees: they enter cells, die or are killed, immigrants arrive, and today's
 * cells are closed over those that entered. Mites that come out of cells spend half of the day on
 * bees, so that a stay under the capping lasts its full number of days on average.
 */
final class MiteStep {
  /** So few that no result shows it: keeps hazards above nothing where there are no bees. */
  private static final double NEVER = 1e-30;

  /** Shortest stay, days, from which on entry alone leaves the quick exponential exact. */
  private static final double LEAST_MILD_STAY = 0.5;

  private final ColonyBlock b;
  private final Lanes lanes;
  private final double perWorkerCell;
  private final double perDroneCell;
  private final double shortest;
  private final double link;

  /** Whether hazards stay low enough for the quick exponential while nothing is done to mites. */
  private final boolean mild;

  /** What cells capped today draw. */
  private final double[] draw;

  /** The hazard of entry is draw / bees. */
  private final double[] bees;

  /** All hazards together are all / both. */
  private final double[] all;

  private final double[] both;

  /** Share of mites that stay on bees. */
  private final double[] stay;

  /**
   * One over {@link #all}; then times the mites that leave; last such that it gives, times the draw
   * of some cells, the mites that enter them.
   */
  private final double[] leaving;

  /** Hazard of mites on bees from miticides, set before each step. */
  final double[] kill;

  MiteStep(ColonyBlock block, Lanes lanes, MiteRates rates, BeeRates beeRates) {
    b = block;
    this.lanes = lanes;
    perWorkerCell = rates.workerInvasion() * beeRates.beesPerGram();
    perDroneCell = rates.droneInvasion() * beeRates.beesPerGram();
    shortest = rates.shortestStay();
    link = rates.deathLink();
    mild = shortest >= LEAST_MILD_STAY;
    draw = block.rows.row();
    bees = block.rows.row();
    all = block.rows.row();
    both = block.rows.row();
    stay = block.rows.row();
    leaving = block.rows.row();
    kill = block.rows.row();
  }

  /**
   * Runs the day.
   *
   * @param day day of the run, picks the rows
   * @param emerged mites that came out of cells today
   * @param someAdults adult bees this morning, at least 1
   * @param deadBees adult bees that die of age today
   * @param kept share of the brood due to be capped that is capped
   * @param treated whether any hazard of being killed is set
   * @param arriving mites from outside, before each lane's factor
   */
  void run(
      int day,
      double[] emerged,
      double[] someAdults,
      double[] deadBees,
      double kept,
      boolean treated,
      double arriving) {
    double[] workers = b.openWorker[day % b.openWorker.length];
    double[] drones = b.openDrone[day % b.openDrone.length];
    draw(workers, drones, someAdults, kept);
    hazards(someAdults, deadBees);
    if (treated) {
      addKill();
    }
    if (mild && !treated) {
      leaveMild();
    } else {
      leave();
      Kernel.expOfMinus(stay, stay);
    }
    compete(emerged);
    if (treated) {
      bookKilled();
    }
    book(someAdults, deadBees);
    if (arriving > 0) {
      arrive(arriving);
    }
    close(
        workers,
        kept,
        perWorkerCell,
        b.cappedWorker[day % b.cappedWorker.length],
        b.workerMothers[day % b.workerMothers.length],
        b.workerCells,
        b.inWorker);
    close(
        drones,
        kept,
        perDroneCell,
        b.cappedDrone[day % b.cappedDrone.length],
        b.droneMothers[day % b.droneMothers.length],
        b.droneCells,
        b.inDrone);
  }

  /** The hazard of entry is x / (1 + s x) with x the draw per bee, hence draw / (bees + s draw). */
  private void draw(double[] workers, double[] drones, double[] n, double kept) {
    double[] x = draw;
    double[] under = bees;
    double perWorker = perWorkerCell * kept;
    double perDrone = perDroneCell * kept;
    double s = shortest;
    for (int l = 0; l < x.length; l++) {
      double cells = perWorker * workers[l] + perDrone * drones[l];
      x[l] = cells;
      under[l] = n[l] + s * cells;
    }
  }

  /**
   * With d = draw and b = bees the hazard of entry is h = d / b, that of death D / A / (1 + (L
   * h)^2) = D b^2 / (A (b^2 + (L d)^2)); both over one denominator.
   */
  private void hazards(double[] someAdults, double[] deadBees) {
    double[] x = draw;
    double[] n = bees;
    double[] sum = all;
    double[] product = both;
    double far = link;
    for (int l = 0; l < sum.length; l++) {
      double d = x[l];
      double under = n[l];
      double ld = far * d;
      double square = under * under;
      double spared = someAdults[l] * (square + ld * ld);
      double p = under * spared;
      sum[l] = d * spared + (deadBees[l] * square * under + NEVER * p);
      product[l] = p;
    }
  }

  private void addKill() {
    double[] hazard = kill;
    double[] product = both;
    double[] sum = all;
    for (int l = 0; l < sum.length; l++) {
      sum[l] += hazard[l] * product[l];
    }
  }

  /** {@link #leave} and its exponential in one, which the division gives time for. */
  private void leaveMild() {
    double[] sum = all;
    double[] product = both;
    double[] left = stay;
    double[] per = leaving;
    for (int l = 0; l < left.length; l++) {
      double p = product[l];
      double s = sum[l];
      double over = 1 / (p * s);
      per[l] = over * p;
      left[l] = Kernel.expOfMinus(over * s * s);
    }
  }

  /** Sets all hazards together where the exponential then sets the share that stays. */
  private void leave() {
    double[] sum = all;
    double[] product = both;
    double[] left = stay;
    double[] per = leaving;
    for (int l = 0; l < left.length; l++) {
      double p = product[l];
      double s = sum[l];
      double over = 1 / (p * s);
      per[l] = over * p;
      left[l] = over * s * s;
    }
  }

  /** Competing risks: those that leave are shared out in proportion to the hazards. */
  private void compete(double[] emerged) {
    double[] phoretic = b.phoretic;
    double[] left = stay;
    double[] per = leaving;
    for (int l = 0; l < phoretic.length; l++) {
      double fresh = 0.5 * emerged[l];
      double exposed = phoretic[l] + fresh;
      double staying = exposed * left[l];
      per[l] *= exposed - staying;
      phoretic[l] = staying + fresh;
    }
  }

  private void bookKilled() {
    double[] killed = b.killed;
    double[] hazard = kill;
    double[] product = both;
    double[] per = leaving;
    for (int l = 0; l < killed.length; l++) {
      killed[l] += per[l] * (hazard[l] * product[l]);
    }
  }

  private void book(double[] someAdults, double[] deadBees) {
    double[] died = b.diedOnBees;
    double[] x = draw;
    double[] n = bees;
    double[] per = leaving;
    double far = link;
    for (int l = 0; l < died.length; l++) {
      double left = per[l];
      double under = n[l];
      double ld = far * x[l];
      double square = under * under;
      died[l] += left * (deadBees[l] * square) * under;
      per[l] = left * (someAdults[l] * (square + ld * ld));
    }
  }

  private void arrive(double arriving) {
    double[] phoretic = b.phoretic;
    double[] immigrants = b.immigrants;
    double[] scale = lanes.immigration;
    for (int l = 0; l < phoretic.length; l++) {
      double from = arriving * scale[l];
      phoretic[l] += from;
      immigrants[l] += from;
    }
  }

  /** Closes today's cells over the mites that entered, and keeps the rings' sums. */
  private void close(
      double[] due,
      double kept,
      double perOwnCell,
      double[] cellRow,
      double[] motherRow,
      double[] cells,
      double[] mothers) {
    double[] per = leaving;
    for (int l = 0; l < due.length; l++) {
      double capped = due[l] * kept;
      double entered = per[l] * (perOwnCell * capped);
      cells[l] = cells[l] + capped - cellRow[l];
      mothers[l] = mothers[l] + entered - motherRow[l];
      cellRow[l] = capped;
      motherRow[l] = entered;
    }
  }
}
