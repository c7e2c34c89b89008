package broodtide.engine;

import broodtide.colony.BeeRates;
import broodtide.mite.MiteRates;
import java.util.List;

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

  /** What cells capped today draw, and cells under capping. */
  private final double[] draw;

  private final double[] underDraw;
  private final double[] underBrood;
  private final double[] underLeaving;

  /** Without the bees and the brood that they are per. */
  private final double[] dying;

  private final double[] both;
  private final double[] leaving;
  private final double[] stay;
  private final double[] perHazard;

  /** Hazard of mites on bees from miticides, set before each step. */
  final double[] kill;

  MiteStep(ColonyBlock block, Lanes lanes, MiteRates rates, BeeRates bees) {
    b = block;
    this.lanes = lanes;
    perWorkerCell = rates.workerInvasion() * bees.beesPerGram();
    perDroneCell = rates.droneInvasion() * bees.beesPerGram();
    shortest = rates.shortestStay();
    broodless = rates.deathBroodless();
    withBrood = rates.deathWithBrood() - broodless;
    half = rates.broodForSummerDeath();
    mild = shortest > 0 && 1 / shortest + Math.max(broodless, rates.deathWithBrood()) <= 1;
    draw = block.rows.row();
    underDraw = block.rows.row();
    underBrood = block.rows.row();
    underLeaving = block.rows.row();
    dying = block.rows.row();
    both = block.rows.row();
    leaving = block.rows.row();
    stay = block.rows.row();
    perHazard = block.rows.row();
    kill = block.rows.row();
  }

  List<double[]> denominators() {
    return List.of(underDraw, underBrood, underLeaving);
  }

  /**
   * Sets the day's hazards: of entry, x / (1 + s x) with x the draw per bee, hence draw / (bees + s
   * draw); of death, which rises with the brood; and of being killed. Their sum divides, too.
   */
  void prepare(BroodStep brood) {
    draw(brood.workerCapped, brood.droneCapped, brood.someAdults);
    deaths(b.workerCells);
    sum();
  }

  private void draw(double[] workers, double[] drones, double[] n) {
    double[] x = draw;
    double[] under = underDraw;
    double perWorker = perWorkerCell;
    double perDrone = perDroneCell;
    double s = shortest;
    for (int l = 0; l < x.length; l++) {
      double cells = perWorker * workers[l] + perDrone * drones[l];
      x[l] = cells;
      under[l] = n[l] + s * cells;
    }
  }

  private void deaths(double[] cells) {
    double[] under = underBrood;
    double[] out = dying;
    double some = half;
    double base = broodless;
    double extra = withBrood;
    for (int l = 0; l < out.length; l++) {
      under[l] = cells[l] + some;
      out[l] = base * (cells[l] + some) + extra * cells[l];
    }
  }

  private void sum() {
    double[] x = draw;
    double[] bees = underDraw;
    double[] brood = underBrood;
    double[] deaths = dying;
    double[] killed = kill;
    double[] product = both;
    double[] under = underLeaving;
    for (int l = 0; l < under.length; l++) {
      double all = bees[l] * brood[l];
      product[l] = all;
      under[l] = x[l] * brood[l] + deaths[l] * bees[l] + killed[l] * all;
    }
  }

  /**
   * Runs the day.
   *
   * @param day day of the run, picks the rows
   * @param emerged mites that came out of cells today
   * @param brood today's cells
   * @param treated whether any hazard of being killed is set
   * @param arriving mites from outside, before each lane's factor
   */
  void run(int day, double[] emerged, BroodStep brood, boolean treated, double arriving) {
    leave();
    if (mild && !treated) {
      Kernel.expOfMinusUpToOne(stay, leaving);
    } else {
      Kernel.expOfMinus(stay, leaving);
    }
    compete(emerged);
    if (treated) {
      kill();
    }
    if (arriving > 0) {
      arrive(arriving);
    }
    close(
        brood.workerCapped,
        perWorkerCell,
        b.cappedWorker[day % b.cappedWorker.length],
        b.workerMothers[day % b.workerMothers.length],
        b.workerCells,
        b.inWorker);
    close(
        brood.droneCapped,
        perDroneCell,
        b.cappedDrone[day % b.cappedDrone.length],
        b.droneMothers[day % b.droneMothers.length],
        b.droneCells,
        b.inDrone);
  }

  private void leave() {
    double[] x = draw;
    double[] overDraw = underDraw;
    double[] overBrood = underBrood;
    double[] deaths = dying;
    double[] killed = kill;
    double[] out = leaving;
    for (int l = 0; l < out.length; l++) {
      out[l] = x[l] * overDraw[l] + deaths[l] * overBrood[l] + killed[l];
    }
  }

  /** Competing risks: those that leave are shared out in proportion to the hazards. */
  private void compete(double[] emerged) {
    double[] phoretic = b.phoretic;
    double[] left = stay;
    double[] product = both;
    double[] overLeaving = underLeaving;
    double[] shared = perHazard;
    for (int l = 0; l < phoretic.length; l++) {
      double fresh = 0.5 * emerged[l];
      double exposed = phoretic[l] + fresh;
      double staying = exposed * left[l];
      shared[l] = (exposed - staying) * (product[l] * overLeaving[l]);
      phoretic[l] = staying + fresh;
    }
    book();
  }

  private void book() {
    double[] died = b.diedOnBees;
    double[] shared = perHazard;
    double[] deaths = dying;
    double[] overBrood = underBrood;
    double[] perDraw = underDraw;
    for (int l = 0; l < died.length; l++) {
      died[l] += shared[l] * deaths[l] * overBrood[l];
      perDraw[l] *= shared[l];
    }
  }

  private void kill() {
    double[] killed = b.killed;
    double[] hazard = kill;
    double[] shared = perHazard;
    for (int l = 0; l < killed.length; l++) {
      killed[l] += shared[l] * hazard[l];
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
      double[] capped,
      double perOwnCell,
      double[] cellRow,
      double[] motherRow,
      double[] cells,
      double[] mothers) {
    double[] perDraw = underDraw;
    for (int l = 0; l < capped.length; l++) {
      double entered = perDraw[l] * (perOwnCell * capped[l]);
      cells[l] = cells[l] + capped[l] - cellRow[l];
      mothers[l] = mothers[l] + entered - motherRow[l];
      cellRow[l] = capped[l];
      motherRow[l] = entered;
    }
  }
}
