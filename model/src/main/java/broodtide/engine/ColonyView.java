package broodtide.engine;

/**
 * The state of colonies at the start of a day, as both engines show it. Counts are never negative.
 */
public interface ColonyView {
  /** {@return number of colonies} */
  int lanes();

  /**
   * {@return adult bees of a class}
   *
   * @param of the class
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  double bees(AdultClass of, int lane);

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
   * {@return adult bees of every class}
   *
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  default double adults(int lane) {
    double sum = 0;
    for (AdultClass each : AdultClass.ALL) {
      sum += bees(each, lane);
    }
    return sum;
  }

  /**
   * {@return adult bees that do one kind of work}
   *
   * @param work what they do
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  default double bees(AdultClass.Work work, int lane) {
    double sum = 0;
    for (AdultClass each : AdultClass.ALL) {
      sum += each.work() == work ? bees(each, lane) : 0;
    }
    return sum;
  }

  /**
   * {@return adult bees that came by virus in one way}
   *
   * @param infection the way
   * @param lane the colony, 0 to {@link #lanes()} less one
   */
  default double bees(AdultClass.Infection infection, int lane) {
    double sum = 0;
    for (AdultClass each : AdultClass.ALL) {
      sum += each.infection() == infection ? bees(each, lane) : 0;
    }
    return sum;
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
