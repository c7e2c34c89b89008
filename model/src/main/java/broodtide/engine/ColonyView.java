package broodtide.engine;

/**
 * The state of colonies at the start of a day, as both engines show it. Counts are never negative.
 */
public interface ColonyView {
  /** {@return number of colonies} */
  int lanes();

  /**
   * {@return hive bees}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double hiveBees(int lane);

  /**
   * {@return foragers}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double foragers(int lane);

  /**
   * {@return winter bees}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double winterBees(int lane);

  /**
   * {@return winter bees that grew up in cells without a mite}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double soundWinterBees(int lane);

  /**
   * {@return adult bees of every kind that grew up in an infested cell}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double harmedBees(int lane);

  /**
   * {@return eggs and open larvae, workers and drones, that will be reared}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double openBrood(int lane);

  /**
   * {@return capped worker cells}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double workerCells(int lane);

  /**
   * {@return capped drone cells}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double droneCells(int lane);

  /**
   * {@return capped worker cells that hold a mite}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double infestedWorkerCells(int lane);

  /**
   * {@return capped drone cells that hold a mite}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double infestedDroneCells(int lane);

  /**
   * {@return mites on adult bees (phoretic)}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double mitesOnBees(int lane);

  /**
   * {@return mother mites in capped worker cells (reproductive)}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double mitesInWorkerCells(int lane);

  /**
   * {@return mother mites in capped drone cells (reproductive)}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double mitesInDroneCells(int lane);

  /**
   * {@return the ledger of mites since the start}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  MiteLedger ledger(int lane);

  /**
   * {@return adult bees of every kind}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  default double adults(int lane) {
    return hiveBees(lane) + foragers(lane) + winterBees(lane);
  }

  /**
   * {@return all mites}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  default double mites(int lane) {
    return mitesOnBees(lane) + mitesInWorkerCells(lane) + mitesInDroneCells(lane);
  }
}
