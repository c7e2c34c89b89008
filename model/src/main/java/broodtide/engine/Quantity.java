package broodtide.engine;

/** A result that can be followed day by day. */
public enum Quantity {
  /** Adult bees. */
  ADULTS("adult bees", "bees", ColonyView::adults),
  /** Hive bees. */
  HIVE_BEES("hive bees", "bees", (v, l) -> v.bees(AdultClass.Work.HIVE, l)),
  /** Foragers. */
  FORAGERS("foragers", "bees", (v, l) -> v.bees(AdultClass.Work.FORAGER, l)),
  /** Winter bees, which are sound bees only. */
  WINTER_BEES("winter bees", "bees", (v, l) -> v.bees(AdultClass.Work.WINTER, l)),
  /** Adult bees without infection. */
  SOUND_BEES("sound bees", "bees", (v, l) -> v.bees(AdultClass.Infection.NONE, l)),
  /** Share of the adult bees that emerged overtly infected. */
  SHARE_INFECTED_AT_EMERGENCE(
      "bees infected at emergence",
      "1",
      (v, l) -> share(v.bees(AdultClass.Infection.AT_EMERGENCE, l), v.adults(l))),
  /** Share of the adult bees that were infected as adults. */
  SHARE_INFECTED_AS_ADULTS(
      "bees infected as adults",
      "1",
      (v, l) -> share(v.bees(AdultClass.Infection.AS_ADULT, l), v.adults(l))),
  /** Eggs and open larvae. */
  OPEN_BROOD("open brood", "cells", ColonyView::openBrood),
  /** Capped worker cells. */
  WORKER_CELLS("capped worker cells", "cells", ColonyView::workerCells),
  /** Capped drone cells. */
  DRONE_CELLS("capped drone cells", "cells", ColonyView::droneCells),
  /** All mites. */
  MITES("mites", "mites", ColonyView::mites),
  /** Mites on adult bees. */
  MITES_ON_BEES("mites on bees", "mites", ColonyView::mitesOnBees),
  /** Mother mites in capped cells. */
  MITES_IN_CELLS(
      "mites in cells", "mites", (v, l) -> v.mitesInWorkerCells(l) + v.mitesInDroneCells(l)),
  /** Mother mites in capped drone cells. */
  MITES_IN_DRONE_CELLS("mites in drone cells", "mites", ColonyView::mitesInDroneCells),
  /** What a wash of a mixed sample would show on average. */
  INFESTATION(
      "infestation",
      "mites per 100 adult bees",
      (v, l) -> 100 * v.mitesOnBees(l) / Math.max(1, v.adults(l))),
  /** Phoretic fraction: share of all mites that sit on adult bees. */
  SHARE_ON_BEES("share on bees", "1", (v, l) -> share(v.mitesOnBees(l), v.mites(l))),
  /** Reproductive fraction: share of all mites that are in capped cells. */
  SHARE_IN_CELLS(
      "share in cells",
      "1",
      (v, l) -> share(v.mitesInWorkerCells(l) + v.mitesInDroneCells(l), v.mites(l))),
  /** Share of capped worker cells with a mite. */
  INFESTED_WORKER_SHARE(
      "infested worker cells", "1", (v, l) -> share(v.infestedWorkerCells(l), v.workerCells(l))),
  /** Share of capped drone cells with a mite. */
  INFESTED_DRONE_SHARE(
      "infested drone cells", "1", (v, l) -> share(v.infestedDroneCells(l), v.droneCells(l)));

  /** Reads a quantity of one lane. */
  @FunctionalInterface
  interface Reader {
    double read(ColonyView view, int lane);
  }

  private final String label;
  private final String unit;
  private final Reader reader;

  Quantity(String label, String unit, Reader reader) {
    this.label = label;
    this.unit = unit;
    this.reader = reader;
  }

  /** {@return name for people} */
  public String label() {
    return label;
  }

  /** {@return unit} */
  public String unit() {
    return unit;
  }

  /**
   * {@return the value in one lane}
   *
   * @param view the colonies
   * @param lane the colony, from 0
   */
  public double of(ColonyView view, int lane) {
    return reader.read(view, lane);
  }

  private static double share(double part, double whole) {
    return whole > 0 ? Math.min(1, part / whole) : 0;
  }
}
