package broodtide.engine;

/**
 * The state of colonies at the start of a day, as both engines show it. Counts are never negative.
 */
public interface ColonyView {
  /** Number of colonies. */
  int lanes();

  /** Hive bees. */
  double hiveBees(int lane);

  /** Foragers. */
  double foragers(int lane);

  /** Winter bees. */
  double winterBees(int lane);

  /** Winter bees that grew up in cells without a mite. */
  double soundWinterBees(int lane);

  /** Adult bees of every kind that grew up in an infested cell. */
  double harmedBees(int lane);

  /** Eggs and open larvae, workers and drones, that will be reared. */
  double openBrood(int lane);

  /** Capped worker cells. */
  double workerCells(int lane);

  /** Capped drone cells. */
  double droneCells(int lane);

  /** Capped worker cells that hold a mite. */
  double infestedWorkerCells(int lane);

  /** Capped drone cells that hold a mite. */
  double infestedDroneCells(int lane);

  /** Mites on adult bees (phoretic). */
  double mitesOnBees(int lane);

  /** Mother mites in capped worker cells (reproductive). */
  double mitesInWorkerCells(int lane);

  /** Mother mites in capped drone cells (reproductive). */
  double mitesInDroneCells(int lane);

  /** The ledger of mites since the start. */
  MiteLedger ledger(int lane);

  /** Adult bees of every kind. */
  default double adults(int lane) {
    return hiveBees(lane) + foragers(lane) + winterBees(lane);
  }

  /** All mites. */
  default double mites(int lane) {
    return mitesOnBees(lane) + mitesInWorkerCells(lane) + mitesInDroneCells(lane);
  }
}
