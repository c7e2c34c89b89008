package broodtide.engine;

import broodtide.colony.BeeRates;
import java.util.List;

/** One day of laying, rearing and capping. Losses of brood before capping fall on the egg. */
final class BroodStep {
  private final ColonyBlock b;
  private final Lanes lanes;
  private final BeeRates rates;
  private final double[] underEggs;

  /** Adult bees this morning. */
  final double[] adults;

  /** The same, or 1 where there are fewer: for what is counted per bee. */
  final double[] someAdults;

  /** Cells capped today. */
  final double[] workerCapped;

  final double[] droneCapped;

  BroodStep(ColonyBlock block, Lanes lanes, BeeRates rates) {
    b = block;
    this.lanes = lanes;
    this.rates = rates;
    underEggs = block.rows.row();
    adults = block.rows.row();
    someAdults = block.rows.row();
    workerCapped = block.rows.row();
    droneCapped = block.rows.row();
  }

  List<double[]> denominators() {
    return List.of(underEggs);
  }

  /**
   * Counts the adults before any changes, and caps the brood that is due.
   *
   * @param day day of the run, picks the rows
   * @param lost share of the brood due today that is lost
   */
  void prepare(int day, double lost) {
    count();
    compare();
    cap(b.openWorker[day % b.openWorker.length], b.openDrone[day % b.openDrone.length], 1 - lost);
  }

  private void count() {
    double[] hive = b.hiveSound;
    double[] hiveHarmed = b.hiveHarmed;
    double[] forager = b.foragerSound;
    double[] foragerHarmed = b.foragerHarmed;
    double[] winter = b.winterSound;
    double[] winterHarmed = b.winterHarmed;
    double[] n = adults;
    for (int l = 0; l < n.length; l++) {
      n[l] =
          hive[l] + hiveHarmed[l] + forager[l] + (foragerHarmed[l] + winter[l] + winterHarmed[l]);
    }
  }

  private void compare() {
    double[] n = adults;
    double[] some = someAdults;
    double[] under = underEggs;
    double half = rates.halfLayingAdults() + Kernel.FEW;
    for (int l = 0; l < n.length; l++) {
      some[l] = Math.max(1, n[l]);
      under[l] = n[l] + half;
    }
  }

  private void cap(double[] worker, double[] drone, double kept) {
    double[] workers = workerCapped;
    double[] drones = droneCapped;
    for (int l = 0; l < workers.length; l++) {
      workers[l] = worker[l] * kept;
      drones[l] = drone[l] * kept;
    }
  }

  /**
   * Lays today's eggs in the place of the brood that was capped.
   *
   * @param day day of the run, picks the rows
   * @param laying laying potential, eggs/day
   * @param droneShare share of eggs in drone cells
   */
  void run(int day, double laying, double droneShare) {
    lay(
        b.openWorker[day % b.openWorker.length],
        b.openDrone[day % b.openDrone.length],
        laying * (1 - droneShare) * rates.workerSurvival(),
        laying * droneShare * rates.droneSurvival());
  }

  private void lay(double[] worker, double[] drone, double workers, double drones) {
    double[] n = adults;
    double[] over = underEggs;
    double[] strength = lanes.strength;
    for (int l = 0; l < n.length; l++) {
      double share = strength[l] * n[l] * over[l];
      worker[l] = share * workers;
      drone[l] = share * drones;
    }
  }
}
