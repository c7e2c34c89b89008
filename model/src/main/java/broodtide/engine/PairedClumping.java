package broodtide.engine;

import broodtide.mite.MiteRates;

/**
 * The usual clumping K = 2, with e = (1 + m/2)^-1, a = (1 + d m/2)^-1 and n = (1 + v m/2)^-1: a
 * share e^2 of the cells is empty, a^2 of the bees live, and 1 - n^2 of the cells hold a mother
 * with virus. The share that emerges overtly infected, (1 - n^2) (a^2 - e^2) / (1 - e^2), is
 * written without differences, so that no rounding makes it negative and a cell without mites
 * divides by something: (a^2 - e^2) / (1 - e^2) = (1 - d)/2 a (a + e) (1 + m/2) / (1 + m/4), and
 * a^2 less that is d/2 a (1 + a) / (1 + m/4).
 */
final class PairedClumping implements CellShares {
  private final double workerCrowding;
  private final double droneCrowding;
  private final double deathPerMite;
  private final double[] empty;
  private final double[] alive;

  /** Share of cells that hold a mother with virus; then times a / (1 + m/4). */
  private final double[] carried;

  private final double[] ill;

  PairedClumping(MiteRates rates, double deathPerMite, Rows rows) {
    workerCrowding = rates.workerCrowding();
    droneCrowding = rates.droneCrowding();
    this.deathPerMite = deathPerMite;
    empty = rows.row();
    alive = rows.row();
    carried = rows.row();
    ill = rows.row();
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
    roots(cells, mothers, daughters, deathPerMite / 2, workerCrowding / 2);
    carriers(cells, mothers, infectivity);
    born(cells, mothers, overt, 0.5 - deathPerMite / 2);
    living(cells, sound, deathPerMite / 2);
    made(daughters, mothers, vigour);
  }

  /** The powers to -1: of cells empty, of bees alive and of daughters unharmed by crowding. */
  private void roots(
      double[] c, double[] m, double[] uncrowded, double atDeath, double atCrowding) {
    double[] empties = empty;
    double[] living = alive;
    for (int l = 0; l < empties.length; l++) {
      double mites = m[l];
      double some = c[l] + Kernel.FEW;
      double e = some - -0.5 * mites;
      double a = some - -atDeath * mites;
      double u = some + atCrowding * mites;
      double ea = e * a;
      double overEau = some / (ea * u);
      double overEa = overEau * u;
      empties[l] = overEa * a;
      living[l] = overEa * e;
      uncrowded[l] = overEau * ea;
    }
  }

  /** 1 - n^2 as (1 + n) v m / (2 + v m), and the same times a / (c + m/4). */
  private void carriers(double[] c, double[] m, double[] infectivity) {
    double[] out = carried;
    double[] both = ill;
    double[] living = alive;
    for (int l = 0; l < out.length; l++) {
      double some = c[l] + Kernel.FEW;
      double mites = m[l];
      double bad = 0.5 * infectivity[l] * mites;
      double n = some + bad;
      double q = some - -0.25 * mites;
      double over = 1 / (n * q);
      double overN = over * q;
      double g = (1 + some * overN) * bad * overN;
      out[l] = g;
      both[l] = g * (over * n) * living[l];
    }
  }

  private void born(double[] c, double[] m, double[] overt, double apart) {
    double[] both = ill;
    double[] living = alive;
    double[] empties = empty;
    for (int l = 0; l < overt.length; l++) {
      double cells = c[l];
      overt[l] = both[l] * (living[l] + empties[l]) * (cells + 0.5 * m[l]) * (apart * cells);
    }
  }

  private void living(double[] c, double[] sound, double atDeath) {
    double[] both = ill;
    double[] living = alive;
    double[] g = carried;
    for (int l = 0; l < sound.length; l++) {
      double cells = c[l];
      double a = living[l];
      sound[l] = ((1 - g[l]) * a * a + both[l] * (1 + a) * (atDeath * cells)) * cells;
    }
  }

  private static void made(double[] daughters, double[] m, double[] vigour) {
    for (int l = 0; l < daughters.length; l++) {
      double u = daughters[l];
      daughters[l] = u * u * u * (m[l] * vigour[l]);
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
