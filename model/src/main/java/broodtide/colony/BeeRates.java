package broodtide.colony;

import static broodtide.measure.Tag.CHOICE;
import static broodtide.measure.Tag.DERIVED;
import static broodtide.measure.Tag.MEMORY;

import broodtide.measure.Measure;
import broodtide.measure.Measures;
import java.util.Map;

/** Rates of the bees. Each component's {@link Measure} gives meaning, unit, range and source. */
public record BeeRates(
    @Measure(
            meaning = "adults at which the queen lays half her potential",
            value = 2500,
            unit = "bees",
            min = 0,
            max = 20_000,
            tag = CHOICE,
            source = "saturating form after Khoury, Myerscough & Barron 2011; value by choice")
        double halfLayingAdults,
    @Measure(
            meaning = "share of worker eggs that reach capping",
            value = 0.90,
            unit = "1",
            min = 0.05,
            max = 1,
            tag = MEMORY,
            source = "usual rearing success, from memory")
        double workerSurvival,
    @Measure(
            meaning = "share of drone eggs that reach capping",
            value = 0.85,
            unit = "1",
            min = 0.05,
            max = 1,
            tag = MEMORY,
            source = "usual rearing success, from memory")
        double droneSurvival,
    @Measure(
            meaning = "rate at which hive bees become foragers",
            value = 0.05,
            unit = "1/day",
            min = 0.01,
            max = 0.3,
            tag = CHOICE,
            source =
                "first flights at about three weeks; summer life of 3-6 weeks (Imdorf,"
                    + " Ruoff & Fluri 2008, ALP forum 68, Agroscope)")
        double foraging,
    @Measure(
            meaning = "death rate of hive bees",
            value = 0.005,
            unit = "1/day",
            min = 0,
            max = 0.2,
            tag = CHOICE,
            source =
                "chosen with the next so that summer life is 27.3 days; 27.6 seen for"
                    + " clean bees by De Jong & De Jong 1983, 3-6 weeks by Imdorf, Ruoff &"
                    + " Fluri 2008")
        double hiveDeath,
    @Measure(
            meaning = "death rate of foragers",
            value = 0.10,
            unit = "1/day",
            min = 0.02,
            max = 0.6,
            tag = CHOICE,
            source = "chosen so that summer life is 27.3 days, see hiveDeath")
        double foragerDeath,
    @Measure(
            meaning = "rate at which winter bees leave their winter life at the height of spring",
            value = 0.05,
            unit = "1/day",
            min = 0.005,
            max = 0.3,
            tag = CHOICE,
            source = "winter bees are gone some eight weeks into spring; choice")
        double springRelease,
    @Measure(
            meaning = "share of released winter bees that go on as foragers; the rest die",
            value = 0.5,
            unit = "1",
            min = 0,
            max = 1,
            tag = CHOICE,
            source = "choice")
        double releasedToForage,
    @Measure(
            meaning = "factor on every death rate of a bee that emerged overtly infected",
            value = 1 / 0.49,
            unit = "1",
            min = 1,
            max = 6,
            tag = DERIVED,
            source = "life of 27.6 days clean and 13.6 infested, De Jong & De Jong 1983")
        double overtDeath,
    @Measure(
            meaning = "adult bees infected per mite that comes out of a cell and carries virus",
            value = 6,
            unit = "bees",
            min = 0,
            max = 60,
            tag = CHOICE,
            source =
                "fitted to survival by autumn wash, 5.6 to 6.2: Bartlett et al. 2024,"
                    + " Georgia, and yards in Vermont in 2021 (from memory, no author known)."
                    + " Hangs together with the share of mites that carry virus")
        double adultInfections,
    @Measure(
            meaning = "chance that a capped bee dies, per mother mite in its cell",
            value = 0.06,
            unit = "1",
            min = 0,
            max = 0.5,
            tag = CHOICE,
            source = "choice")
        double cappedDeathPerMite,
    @Measure(
            meaning = "adult bees in a gram",
            value = 8,
            unit = "bees/g",
            min = 6,
            max = 11,
            tag = CHOICE,
            source = "round figure for engorged and empty bees together, common practice")
        double beesPerGram) {

  /** Checks every component against its range. */
  public BeeRates {
    Measures.checkAll(
        BeeRates.class,
        halfLayingAdults,
        workerSurvival,
        droneSurvival,
        foraging,
        hiveDeath,
        foragerDeath,
        springRelease,
        releasedToForage,
        overtDeath,
        adultInfections,
        cappedDeathPerMite,
        beesPerGram);
  }

  /** {@return the defaults} */
  public static BeeRates defaults() {
    return with(Map.of());
  }

  /**
   * {@return the defaults with some components replaced by name}
   *
   * @param overrides values by component name; each must lie in the range of its component
   */
  public static BeeRates with(Map<String, Double> overrides) {
    return Measures.build(BeeRates.class, overrides);
  }

  /** {@return mean life of a bee that never winters, in a colony without mites, days} */
  public double summerLife() {
    double hive = 1 / (foraging + hiveDeath);
    return hive + foraging * hive / foragerDeath;
  }
}
