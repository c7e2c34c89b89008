package broodtide.engine;

import broodtide.colony.BeeRates;
import broodtide.mite.MiteRates;
import java.util.Arrays;

/**
 * One day of the mites: cells due open and let mothers and daughters out, mites on bees enter
 * cells, die or are killed, immigrants arrive. Mites that come out spend half of the day on bees,
 * so that a stay under the capping lasts its full number of days on average.
 */
final class MiteStep {
  private static final double FEW = 1e-12;

  private final ColonyBlock b;
  private final Lanes lanes;
  private final MiteRates rates;
  private final double cappedDeath;
  private final double beesPerGram;

  private final double[] load;
  private final double[] empty;
  private final double[] fecundity;
  private final double[] arrivals;
  private final double[] toWorker;
  private final double[] toDrone;
  private final double[] enter;
  private final double[] death;
  private final double[] leaving;
  private final double[] stay;
  private final double[] entered;

  /** Hazard of mites on bees from miticides, set before each step. */
  final double[] kill;

  /** Workers that emerge today. */
  final double[] sound;

  final double[] harmed;

  MiteStep(ColonyBlock block, Lanes lanes, MiteRates rates, BeeRates bees) {
    b = block;
    this.lanes = lanes;
    this.rates = rates;
    cappedDeath = bees.cappedDeathPerMite();
    beesPerGram = bees.beesPerGram();
    int w = block.width;
    load = new double[w];
    empty = new double[w];
    fecundity = new double[w];
    arrivals = new double[w];
    toWorker = new double[w];
    toDrone = new double[w];
    enter = new double[w];
    death = new double[w];
    leaving = new double[w];
    stay = new double[w];
    entered = new double[w];
    kill = new double[w];
    sound = new double[w];
    harmed = new double[w];
  }

  /**
   * Runs the day.
   *
   * @param day day of the run, picks the rows
   * @param adults adult bees
   * @param workerCapped worker cells capped today
   * @param droneCapped drone cells capped today
   * @param fertility factor on daughters from the stock
   * @param arriving mites from outside, before each lane's factor
   */
  void run(
      int day,
      double[] adults,
      double[] workerCapped,
      double[] droneCapped,
      double fertility,
      double arriving) {
    int w = day % b.cappedWorker.length;
    int d = day % b.cappedDrone.length;
    emergeWorkers(b.cappedWorker[w], b.workerMothers[w], fertility);
    emergeDrones(b.cappedDrone[d], b.droneMothers[d], fertility);
    attract(toWorker, workerCapped, adults, rates.workerInvasion() * beesPerGram);
    attract(toDrone, droneCapped, adults, rates.droneInvasion() * beesPerGram);
    hazards(
        toWorker,
        toDrone,
        enter,
        b.workerCells,
        death,
        kill,
        leaving,
        rates.shortestStay(),
        rates.deathBroodless(),
        rates.deathWithBrood() - rates.deathBroodless(),
        rates.broodForSummerDeath());
    Kernel.expOfMinus(stay, leaving);
    compete(b.phoretic, arrivals, stay, leaving, enter, death, entered, b.diedOnBees);
    killed(b.killed, kill);
    arrive(b.phoretic, arrivals, lanes.immigration, arriving, b.immigrants);
    closeWorkers(w, workerCapped);
    closeDrones(d, droneCapped);
  }

  private void emergeWorkers(double[] cells, double[] mothers, double fertility) {
    double k = rates.clumping();
    perCell(load, mothers, cells);
    Kernel.clumped(empty, load, 1, k, k);
    Kernel.clumped(harmed, load, cappedDeath, k, k);
    Kernel.clumped(fecundity, load, rates.workerCrowding(), k, k + 1);
    workers(sound, harmed, cells, empty);
    Arrays.fill(arrivals, 0);
    breed(
        arrivals,
        mothers,
        fecundity,
        lanes.vigour,
        rates.workerMothersBack(),
        fertility * rates.workerDaughters(),
        rates.workerDaughtersLost(),
        b.daughters,
        b.diedInCells);
  }

  private void emergeDrones(double[] cells, double[] mothers, double fertility) {
    double k = rates.clumping();
    perCell(load, mothers, cells);
    Kernel.clumped(fecundity, load, rates.droneCrowding(), k, k + 1);
    breed(
        arrivals,
        mothers,
        fecundity,
        lanes.vigour,
        rates.droneMothersBack(),
        fertility * rates.droneDaughters(),
        rates.droneDaughtersLost(),
        b.daughters,
        b.diedInCells);
  }

  private void closeWorkers(int row, double[] capped) {
    double k = rates.clumping();
    share(entered, toWorker, toDrone, load);
    close(b.cappedWorker[row], capped, b.workerCells);
    close(b.workerMothers[row], load, b.inWorker);
    perCell(load, b.workerMothers[row], capped);
    Kernel.clumped(empty, load, 1, k, k);
    infested(b.infestedWorker[row], capped, empty, b.infestedWorkerCells);
  }

  private void closeDrones(int row, double[] capped) {
    double k = rates.clumping();
    share(entered, toDrone, toWorker, load);
    close(b.cappedDrone[row], capped, b.droneCells);
    close(b.droneMothers[row], load, b.inDrone);
    perCell(load, b.droneMothers[row], capped);
    Kernel.clumped(empty, load, 1, k, k);
    infested(b.infestedDrone[row], capped, empty, b.infestedDroneCells);
  }

  private static void perCell(double[] load, double[] mothers, double[] cells) {
    for (int l = 0; l < load.length; l++) {
      load[l] = mothers[l] / (cells[l] + FEW);
    }
  }

  /** In: harmed holds the share alive, empty the share without a mite. Out: bees that emerge. */
  private static void workers(double[] sound, double[] harmed, double[] cells, double[] empty) {
    for (int l = 0; l < sound.length; l++) {
      sound[l] = cells[l] * empty[l];
      harmed[l] = cells[l] * Math.max(0, harmed[l] - empty[l]);
    }
  }

  private static void breed(
      double[] arrivals,
      double[] mothers,
      double[] fecundity,
      double[] vigour,
      double back,
      double daughters,
      double lost,
      double[] made,
      double[] died) {
    for (int l = 0; l < arrivals.length; l++) {
      double young = mothers[l] * daughters * vigour[l] * fecundity[l];
      arrivals[l] += mothers[l] * back + young * (1 - lost);
      made[l] += young;
      died[l] += mothers[l] * (1 - back) + young * lost;
    }
  }

  private static void attract(double[] x, double[] capped, double[] adults, double invasion) {
    for (int l = 0; l < x.length; l++) {
      x[l] = invasion * capped[l] / Math.max(1, adults[l]);
    }
  }

  private static void hazards(
      double[] toWorker,
      double[] toDrone,
      double[] enter,
      double[] cells,
      double[] death,
      double[] kill,
      double[] leaving,
      double shortest,
      double broodless,
      double withBrood,
      double half) {
    for (int l = 0; l < enter.length; l++) {
      double x = toWorker[l] + toDrone[l];
      double h = x / (1 + shortest * x);
      double mu = broodless + withBrood * cells[l] / (cells[l] + half);
      enter[l] = h;
      death[l] = mu;
      leaving[l] = h + mu + kill[l];
    }
  }

  /** Competing risks: those that leave are shared out in proportion to the hazards. */
  private static void compete(
      double[] phoretic,
      double[] arrivals,
      double[] stay,
      double[] leaving,
      double[] enter,
      double[] death,
      double[] entered,
      double[] died) {
    for (int l = 0; l < phoretic.length; l++) {
      double exposed = phoretic[l] + 0.5 * arrivals[l];
      double left = exposed * stay[l];
      double perHazard = (exposed - left) / leaving[l];
      phoretic[l] = left;
      entered[l] = perHazard * enter[l];
      died[l] += perHazard * death[l];
      leaving[l] = perHazard;
    }
  }

  private void killed(double[] total, double[] hazard) {
    for (int l = 0; l < total.length; l++) {
      total[l] += leaving[l] * hazard[l];
    }
  }

  private static void arrive(
      double[] phoretic, double[] arrivals, double[] scale, double arriving, double[] immigrants) {
    for (int l = 0; l < phoretic.length; l++) {
      double from = arriving * scale[l];
      phoretic[l] += 0.5 * arrivals[l] + from;
      immigrants[l] += from;
    }
  }

  /** part = entered x / (x + y), zero where neither draws mites. */
  private static void share(double[] entered, double[] x, double[] y, double[] part) {
    for (int l = 0; l < part.length; l++) {
      part[l] = entered[l] * x[l] / (x[l] + y[l] + Double.MIN_NORMAL);
    }
  }

  /** Puts today's value into the row and keeps the ring's sum. */
  private static void close(double[] row, double[] today, double[] sum) {
    for (int l = 0; l < row.length; l++) {
      double gone = row[l];
      row[l] = today[l];
      sum[l] = Math.max(0, sum[l] + today[l] - gone);
    }
  }

  private static void infested(double[] row, double[] capped, double[] empty, double[] sum) {
    for (int l = 0; l < row.length; l++) {
      double gone = row[l];
      double now = capped[l] * (1 - empty[l]);
      row[l] = now;
      sum[l] = Math.max(0, sum[l] + now - gone);
    }
  }
}
