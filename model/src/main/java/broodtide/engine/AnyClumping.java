package broodtide.engine;

import broodtide.mite.MiteRates;

/** Any clumping K, by powers: slow, and as reproducible as the rest. */
final class AnyClumping implements CellShares {
  private final MiteRates rates;
  private final double deathPerMite;

  AnyClumping(MiteRates rates, double deathPerMite) {
    this.rates = rates;
    this.deathPerMite = deathPerMite;
  }

  @Override
  public void workers(
      double[] cells,
      double[] mothers,
      double[] vigour,
      double[] infectivity,
      double[] sound,
      double[] overt,
      double[] daughters) {
    double k = rates.clumping();
    for (int l = 0; l < sound.length; l++) {
      double load = mothers[l] / (cells[l] + Kernel.FEW);
      double empty = power(load / k, k);
      double alive = power(deathPerMite * load / k, k);
      double carried = 1 - power(infectivity[l] * load / k, k);
      double ill = empty < 1 ? carried * Math.max(0, alive - empty) / (1 - empty) : 0;
      overt[l] = cells[l] * Math.min(alive, ill);
      sound[l] = cells[l] * alive - overt[l];
    }
    daughters(daughters, mothers, cells, vigour, rates.workerCrowding());
  }

  @Override
  public void drones(double[] cells, double[] mothers, double[] vigour, double[] daughters) {
    daughters(daughters, mothers, cells, vigour, rates.droneCrowding());
  }

  private void daughters(double[] out, double[] m, double[] c, double[] vigour, double crowding) {
    double k = rates.clumping();
    for (int l = 0; l < out.length; l++) {
      double load = crowding * m[l] / (c[l] + Kernel.FEW);
      out[l] = power(load / k, k + 1) * (m[l] * vigour[l]);
    }
  }

  /** (1 + x)^-n. {@code StrictMath}, unlike {@code Math}, gives the same bits on every machine. */
  static double power(double x, double n) {
    return StrictMath.pow(1 + x, -n);
  }
}
