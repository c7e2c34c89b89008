package broodtide.engine;

import broodtide.colony.BeeRates;
import broodtide.mite.MiteRates;

/** Cells due today open: which bees come out, and how many mothers and daughters. */
final class Emergence {
  private final ColonyBlock b;
  private final Lanes lanes;
  private final MiteRates rates;
  private final CellShares shares;
  private final double[] fromWorker;
  private final double[] fromDrone;

  /** Workers that emerge without showing infection, and overtly infected. */
  final double[] sound;

  final double[] overt;

  /** Mites that come out and live. */
  final double[] mites;

  Emergence(ColonyBlock block, Lanes lanes, MiteRates rates, BeeRates bees) {
    b = block;
    this.lanes = lanes;
    this.rates = rates;
    shares = CellShares.of(rates, bees.cappedDeathPerMite(), block.rows);
    fromWorker = block.rows.row();
    fromDrone = block.rows.row();
    sound = block.rows.row();
    overt = block.rows.row();
    mites = block.rows.row();
  }

  /**
   * Opens them.
   *
   * @param day day of the run, picks the rows
   * @param fertility factor on daughters from the stock
   */
  void run(int day, double fertility) {
    double[] workers = b.cappedWorker[day % b.cappedWorker.length];
    double[] drones = b.cappedDrone[day % b.cappedDrone.length];
    double[] inWorker = b.workerMothers[day % b.workerMothers.length];
    double[] inDrone = b.droneMothers[day % b.droneMothers.length];
    shares.workers(workers, inWorker, lanes.vigour, lanes.infectivity, sound, overt, fromWorker);
    shares.drones(drones, inDrone, lanes.vigour, fromDrone);
    double perWorker = fertility * rates.workerDaughters();
    double perDrone = fertility * rates.droneDaughters();
    out(inWorker, inDrone, perWorker, perDrone);
    book(inWorker, inDrone, perWorker, perDrone);
  }

  private void out(double[] inWorker, double[] inDrone, double perWorker, double perDrone) {
    double[] out = mites;
    double[] w = fromWorker;
    double[] d = fromDrone;
    double workerBack = rates.workerMothersBack();
    double droneBack = rates.droneMothersBack();
    double workerKept = perWorker * (1 - rates.workerDaughtersLost());
    double droneKept = perDrone * (1 - rates.droneDaughtersLost());
    for (int l = 0; l < out.length; l++) {
      out[l] =
          inWorker[l] * workerBack + inDrone[l] * droneBack + w[l] * workerKept + d[l] * droneKept;
    }
  }

  private void book(double[] inWorker, double[] inDrone, double perWorker, double perDrone) {
    double[] made = b.daughters;
    double[] died = b.diedInCells;
    double[] w = fromWorker;
    double[] d = fromDrone;
    double workerGone = 1 - rates.workerMothersBack();
    double droneGone = 1 - rates.droneMothersBack();
    double workerLost = perWorker * rates.workerDaughtersLost();
    double droneLost = perDrone * rates.droneDaughtersLost();
    for (int l = 0; l < made.length; l++) {
      made[l] += w[l] * perWorker + d[l] * perDrone;
      // Read anew: the compiler would mix up two sums of the same locals.
      died[l] +=
          inWorker[l] * workerGone + inDrone[l] * droneGone + w[l] * workerLost + d[l] * droneLost;
    }
  }
}
