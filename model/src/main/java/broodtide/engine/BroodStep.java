package broodtide.engine;

import broodtide.colony.BeeRates;

/** One day of laying, rearing and capping. Losses of brood before capping fall on the egg. */
final class BroodStep {
  private final ColonyBlock b;
  private final Lanes lanes;
  private final BeeRates rates;
  private final double[] eggs;

  /** Cells capped today. */
  final double[] workerCapped;

  final double[] droneCapped;

  BroodStep(ColonyBlock block, Lanes lanes, BeeRates rates) {
    b = block;
    this.lanes = lanes;
    this.rates = rates;
    eggs = new double[block.width];
    workerCapped = new double[block.width];
    droneCapped = new double[block.width];
  }

  /**
   * Lays today's eggs and caps the brood that is due.
   *
   * @param day day of the run, picks the rows
   * @param adults adult bees
   * @param laying laying potential, eggs/day
   * @param droneShare share of eggs in drone cells
   * @param lost share of the brood due today that is lost
   */
  void run(int day, double[] adults, double laying, double droneShare, double lost) {
    lay(eggs, adults, lanes.strength, laying, rates.halfLayingAdults());
    turn(
        b.openWorker[day % b.openWorker.length],
        eggs,
        (1 - droneShare) * rates.workerSurvival(),
        workerCapped,
        1 - lost,
        b.open);
    turn(
        b.openDrone[day % b.openDrone.length],
        eggs,
        droneShare * rates.droneSurvival(),
        droneCapped,
        1 - lost,
        b.open);
  }

  private static void lay(
      double[] eggs, double[] adults, double[] strength, double laying, double half) {
    for (int l = 0; l < eggs.length; l++) {
      eggs[l] = laying * strength[l] * adults[l] / (adults[l] + half + Double.MIN_NORMAL);
    }
  }

  /** Takes the due row out of the ring, puts today's eggs in its place. */
  private static void turn(
      double[] row, double[] eggs, double share, double[] capped, double kept, double[] open) {
    for (int l = 0; l < row.length; l++) {
      double due = row[l];
      double laid = eggs[l] * share;
      row[l] = laid;
      capped[l] = due * kept;
      open[l] = Math.max(0, open[l] + laid - due);
    }
  }
}
