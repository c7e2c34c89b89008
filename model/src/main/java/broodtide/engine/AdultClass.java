package broodtide.engine;

import java.util.List;

/**
 * A class of adult bees: what they do, and what infection they carry. Every part of both engines
 * that copies, scales, adds up or reads the adults goes through this list. Winter bees are sound: a
 * bee that emerges overtly infected, or is infected as an adult, lives as a summer bee (it agrees
 * with Amdam et al. 2004).
 */
public enum AdultClass {
  /** Hive bees without infection. */
  HIVE_SOUND(Work.HIVE, Infection.NONE),
  /** Hive bees that emerged overtly infected. */
  HIVE_OVERT(Work.HIVE, Infection.AT_EMERGENCE),
  /** Hive bees infected as adults. */
  HIVE_CARRIER(Work.HIVE, Infection.AS_ADULT),
  /** Foragers without infection. */
  FORAGER_SOUND(Work.FORAGER, Infection.NONE),
  /** Foragers that emerged overtly infected. */
  FORAGER_OVERT(Work.FORAGER, Infection.AT_EMERGENCE),
  /** Foragers infected as adults. */
  FORAGER_CARRIER(Work.FORAGER, Infection.AS_ADULT),
  /** Winter bees. */
  WINTER(Work.WINTER, Infection.NONE);

  /** What a bee does. */
  public enum Work {
    /** Works inside the hive. */
    HIVE,
    /** Flies out. */
    FORAGER,
    /** Waits for spring. */
    WINTER
  }

  /** How a bee came by virus. */
  public enum Infection {
    /** Not at all. */
    NONE,
    /** In its cell, from a mite; it shows, and the bee lives half as long. */
    AT_EMERGENCE,
    /** From a mite on it or a nest mate; it lives nearly as long as a sound bee. */
    AS_ADULT
  }

  /** All of them, in the order of their rows. */
  public static final List<AdultClass> ALL = List.of(values());

  private final Work work;
  private final Infection infection;

  AdultClass(Work work, Infection infection) {
    this.work = work;
    this.infection = infection;
  }

  /** {@return what the bees do} */
  public Work work() {
    return work;
  }

  /** {@return how they came by virus} */
  public Infection infection() {
    return infection;
  }
}
