package broodtide.engine;

import broodtide.mite.MiteRates;

/**
 * What mothers sharing cells do to each other and to the bees, over lanes: the closed forms of
 * {@link broodtide.mite.CellLoad} with m = mothers / cells.
 */
sealed interface CellShares permits PairedClumping, AnyClumping {
  /**
   * The form for these rates.
   *
   * @param rates crowding and clumping
   * @param deathPerMite chance that a mother kills the bee in her cell
   * @param rows makes room to work in
   */
  static CellShares of(MiteRates rates, double deathPerMite, Rows rows) {
    return rates.clumping() == 2
        ? new PairedClumping(rates, deathPerMite, rows)
        : new AnyClumping(rates, deathPerMite);
  }

  /**
   * Opens worker cells.
   *
   * @param cells cells that are due
   * @param mothers mothers in them
   * @param vigour factor on daughters, lane by lane
   * @param infectivity share of mothers that carry virus, lane by lane
   * @param sound takes the workers that emerge alive and not overtly infected
   * @param overt takes those that emerge alive and overtly infected
   * @param daughters takes daughters made, per daughter of a mother alone in her cell
   */
  void workers(
      double[] cells,
      double[] mothers,
      double[] vigour,
      double[] infectivity,
      double[] sound,
      double[] overt,
      double[] daughters);

  /** Opens drone cells; parameters as for {@link #workers}. */
  void drones(double[] cells, double[] mothers, double[] vigour, double[] daughters);
}
