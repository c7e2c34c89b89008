package broodtide.engine;

import broodtide.mite.MiteRates;
import java.util.List;

/**
 * What mothers sharing cells do to each other and to the bees, over lanes: the closed forms of
 * {@link broodtide.mite.CellLoad} with m = mothers / cells.
 */
sealed interface CellShares permits PairedClumping, AnyClumping {
  /**
   * The form for these rates.
   *
   * @param rows makes the arrays
   * @param rates crowding and clumping
   * @param deathPerMite chance that a mother kills the bee in her cell
   */
  static CellShares of(Rows rows, MiteRates rates, double deathPerMite) {
    return rates.clumping() == 2
        ? new PairedClumping(rows, rates, deathPerMite)
        : new AnyClumping(rates, deathPerMite);
  }

  /** Arrays that want to be turned into their reciprocals between preparing and reading. */
  List<double[]> denominators();

  /** Takes the cells and mothers of one day; reads them again until the day is over. */
  void prepare(double[] cells, double[] mothers, double[] droneCells, double[] droneMothers);

  /** Workers that emerge alive, from cells without a mite and from the rest. */
  void bees(double[] sound, double[] harmed);

  /**
   * Daughters made, per daughter of a mother alone in her cell.
   *
   * @param vigour factor on daughters, lane by lane
   */
  void daughters(double[] inWorker, double[] inDrone, double[] vigour);
}
