package broodtide.engine;

import broodtide.colony.BeeRates;

/** One day's adults counted and eggs laid. Losses of brood before capping fall on the egg. */
final class BroodStep {
  private final ColonyBlock b;
  private final Lanes lanes;
  private final BeeRates rates;
  private final double[] adults;

  /** Share of her eggs that the queen lays; the rest wants bees to tend it. */
  private final double[] tended;

  /** Adult bees this morning, or 1 where there are fewer: for what is counted per bee. */
  final double[] someAdults;

  /** One over {@link #someAdults}. */
  final double[] perAdult;

  BroodStep(ColonyBlock block, Lanes lanes, BeeRates rates) {
    b = block;
    this.lanes = lanes;
    this.rates = rates;
    adults = block.rows.row();
    tended = block.rows.row();
    someAdults = block.rows.row();
    perAdult = block.rows.row();
  }

  /** Counts the adults before any changes. */
  void count() {
    double[][] classes = b.adults;
    System.arraycopy(classes[0], 0, adults, 0, adults.length);
    int next = 1;
    for (; next + 1 < classes.length; next += 2) {
      Kernel.add(adults, classes[next], classes[next + 1]);
    }
    if (next < classes.length) {
      Kernel.add(adults, classes[next]);
    }
    compare();
  }

  private void compare() {
    double[] n = adults;
    double[] some = someAdults;
    double[] share = tended;
    double[] per = perAdult;
    double half = rates.halfLayingAdults() + Kernel.FEW;
    for (int l = 0; l < n.length; l++) {
      double bees = n[l];
      double least = Math.max(1, bees);
      double laying = bees + half;
      double over = 1 / (least * laying);
      some[l] = least;
      share[l] = over * least * bees;
      per[l] = over * laying;
    }
  }

  /**
   * Lays today's eggs in the place of the brood that was capped.
   *
   * @param day day of the run, picks the rows
   * @param laying laying potential, eggs/day
   * @param droneShare share of eggs in drone cells
   */
  void lay(int day, double laying, double droneShare) {
    lay(
        b.openWorker[day % b.openWorker.length],
        b.openDrone[day % b.openDrone.length],
        laying * (1 - droneShare) * rates.workerSurvival(),
        laying * droneShare * rates.droneSurvival());
  }

  private void lay(double[] worker, double[] drone, double workers, double drones) {
    double[] share = tended;
    double[] strength = lanes.strength;
    for (int l = 0; l < share.length; l++) {
      double laid = strength[l] * share[l];
      worker[l] = laid * workers;
      drone[l] = laid * drones;
    }
  }
}
