package broodtide.engine;

import broodtide.mite.MiteRates;

/** The usual clumping K = 2: (1 + a m / K)^-1 is c / (c + a/2 mothers) and its powers products. */
final class PairedClumping implements CellShares {
  private final double workerCrowding;
  private final double droneCrowding;
  private final double deathPerMite;

  PairedClumping(MiteRates rates, double deathPerMite) {
    workerCrowding = rates.workerCrowding();
    droneCrowding = rates.droneCrowding();
    this.deathPerMite = deathPerMite;
  }

  @Override
  public void workers(
      double[] cells,
      double[] mothers,
      double[] vigour,
      double[] sound,
      double[] harmed,
      double[] daughters) {
    roots(cells, mothers, sound, harmed, daughters, deathPerMite / 2, workerCrowding / 2);
    powers(cells, mothers, vigour, sound, harmed, daughters, 0.5 - deathPerMite / 2);
  }

  /** The powers to -1: of cells empty, of bees alive and of daughters unharmed by crowding. */
  private static void roots(
      double[] c,
      double[] m,
      double[] empty,
      double[] alive,
      double[] uncrowded,
      double atDeath,
      double atCrowding) {
    for (int l = 0; l < empty.length; l++) {
      double mites = m[l];
      double some = c[l] + Kernel.FEW;
      double e = some - -0.5 * mites;
      double a = some - -atDeath * mites;
      double u = some + atCrowding * mites;
      double ea = e * a;
      double overEau = some / (ea * u);
      double overEa = overEau * u;
      empty[l] = overEa * a;
      alive[l] = overEa * e;
      uncrowded[l] = overEau * ea;
    }
  }

  /** In place. Harmed bees from a difference of squares, which rounding cannot make negative. */
  private static void powers(
      double[] c,
      double[] m,
      double[] vigour,
      double[] sound,
      double[] harmed,
      double[] daughters,
      double apart) {
    for (int l = 0; l < sound.length; l++) {
      double e = sound[l];
      double a = harmed[l];
      double u = daughters[l];
      double mites = m[l];
      double some = (e + a) * e * a * (apart * mites);
      double made = u * u * u * (mites * vigour[l]);
      sound[l] = e * e * c[l];
      harmed[l] = some;
      daughters[l] = made;
    }
  }

  @Override
  public void drones(double[] c, double[] m, double[] vigour, double[] daughters) {
    double atCrowding = droneCrowding / 2;
    for (int l = 0; l < daughters.length; l++) {
      double mites = m[l];
      double some = c[l] + Kernel.FEW;
      double u = some / (some + atCrowding * mites);
      daughters[l] = u * u * u * (mites * vigour[l]);
    }
  }
}
