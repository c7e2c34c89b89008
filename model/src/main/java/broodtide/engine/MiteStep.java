package broodtide.engine;

import broodtide.colony.BeeRates;
import broodtide.mite.MiteRates;

/**
 * One day of the mites on bees: they enter cells, die or are killed, immigrants arrive, and today's
 * cells are closed over those that entered. Mites that come out of cells spend half of the day on
 * bees, so that a stay under the capping lasts its full number of days on average.
 */
final class MiteStep {
  private final ColonyBlock b;
  private final Lanes lanes;
  private final double perWorkerCell;
  private final double perDroneCell;
  private final double shortest;
  private final double broodless;
  private final double withBrood;
  private final double half;

  /** Whether the hazard of mites on bees stays below 1 while nothing is done to them. */
  private final boolean mild;

  /** What cells capped today draw. */
  private final double[] draw;

  /** Hazards of entry and of death are draw / bees and deaths / brood. */
  private final double[] bees;

  private final double[] deaths;

  /** All hazards together are all / both with both = bees * brood. */
  private final double[] all;

  private final double[] both;

  /** Share of mites that stay on bees. */
  private final double[] stay;

  /** One over {@link #all}; then times the mites that leave; last, for cells, times the brood. */
  private final double[] leaving;

  /** Hazard of mites on bees from miticides, set before each step. */
  final double[] kill;

  MiteStep(ColonyBlock block, Lanes lanes, MiteRates rates, BeeRates beeRates) {
    b = block;
    this.lanes = lanes;
    perWorkerCell = rates.workerInvasion() * beeRates.beesPerGram();
    perDroneCell = rates.droneInvasion() * beeRates.beesPerGram();
    shortest = rates.shortestStay();
    broodless = rates.deathBroodless();
    withBrood = rates.deathWithBrood() - broodless;
    half = rates.broodForSummerDeath();
    mild = shortest > 0 && 1 / shortest + Math.max(broodless, rates.deathWithBrood()) <= 1;
    draw = block.rows.row();
    bees = block.rows.row();
    deaths = block.rows.row();
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
   * @param kept share of the brood due to be capped that is capped
   * @param treated whether any hazard of being killed is set
   * @param arriving mites from outside, before each lane's factor
   */
  void run(
      int day,
      double[] emerged,
      double[] someAdults,
      double kept,
      boolean treated,
      double arriving) {
    double[] workers = b.openWorker[day % b.openWorker.length];
    double[] drones = b.openDrone[day % b.openDrone.length];
    draw(workers, drones, someAdults, kept);
    hazards(b.workerCells);
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
    book(b.workerCells);
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

  /** The hazard of death, which rises with the brood, and the sum of both. */
  private void hazards(double[] cells) {
    double[] x = draw;
    double[] n = bees;
    double[] dying = deaths;
    double[] sum = all;
    double[] product = both;
    double some = half;
    double base = broodless;
    double extra = withBrood;
    for (int l = 0; l < sum.length; l++) {
      double capped = cells[l];
      double under = n[l];
      double brood = capped + some;
      double d = base * brood + extra * capped;
      dying[l] = d;
      sum[l] = x[l] * brood + d * under;
      product[l] = under * brood;
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
      left[l] = Kernel.expOfMinusUpToOne(over * s * s);
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

  private void book(double[] cells) {
    double[] died = b.diedOnBees;
    double[] dying = deaths;
    double[] n = bees;
    double[] per = leaving;
    double some = half;
    for (int l = 0; l < died.length; l++) {
      double left = per[l];
      died[l] += left * (dying[l] * n[l]);
      per[l] = left * (cells[l] + some);
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
