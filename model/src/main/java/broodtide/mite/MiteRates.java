package broodtide.mite;

import static broodtide.measure.Tag.CHOICE;
import static broodtide.measure.Tag.DERIVED;
import static broodtide.measure.Tag.MEMORY;
import static broodtide.measure.Tag.SEEN;

import broodtide.measure.Measure;
import broodtide.measure.Measures;
import java.util.Map;

/** Rates of the mites. Each component's {@link Measure} gives meaning, unit, range and source. */
public record MiteRates(
    @Measure(
            meaning = "invasion of worker cells, per cell capped a day and gram of bees",
            value = 0.56,
            unit = "g/cell",
            min = 0,
            max = 5,
            tag = SEEN,
            source = "Boot, Schoenmaker, Calis & Beetsma 1995, Apidologie 26:109")
        double workerInvasion,
    @Measure(
            meaning = "invasion of drone cells, per cell capped a day and gram of bees",
            value = 6.49,
            unit = "g/cell",
            min = 0,
            max = 50,
            tag = SEEN,
            source = "Boot, Schoenmaker, Calis & Beetsma 1995: drone cells 11.6 times as often")
        double droneInvasion,
    @Measure(
            meaning = "shortest mean stay on bees, however much brood there is",
            value = 2.0,
            unit = "days",
            min = 0,
            max = 10,
            tag = CHOICE,
            source = "half-times of 2.0, 4.3 and 8.3 days, Boot et al. 1993; value by choice")
        double shortestStay,
    @Measure(
            meaning =
                "link L between deaths of mites and bees: mites on bees die at the bees'"
                    + " rate over 1 + (L x rate of entering cells)^2",
            value = 28,
            unit = "days",
            min = 0,
            max = 200,
            tag = CHOICE,
            source =
                "without brood mites die with their bees (Fries & Perez-Escala 2001); in"
                    + " summer they sit on nurses and leave the dying. Set by growth in a"
                    + " year, loss of mites in winter and the highest infestations seen")
        double deathLink,
    @Measure(
            meaning = "share of mothers that come back from a worker cell",
            value = 0.65,
            unit = "1",
            min = 0,
            max = 1,
            tag = MEMORY,
            source = "with 2-3 cycles a life, Martin & Kemp 1997; losses from memory")
        double workerMothersBack,
    @Measure(
            meaning = "mated daughters made per mother alone in a worker cell",
            value = 0.85,
            unit = "mites",
            min = 0,
            max = 3,
            tag = SEEN,
            source = "0.9 per mother, Martin & Kryger 2002; rounded down by choice")
        double workerDaughters,
    @Measure(
            meaning = "share of daughters lost as the worker emerges",
            value = 0.20,
            unit = "1",
            min = 0,
            max = 1,
            tag = MEMORY,
            source = "from memory")
        double workerDaughtersLost,
    @Measure(
            meaning = "loss of daughters per further mother in a worker cell",
            value = 0.15,
            unit = "1",
            min = 0,
            max = 1,
            tag = CHOICE,
            source =
                "form after Donze et al. 1996; value by choice, for the highest infestations seen")
        double workerCrowding,
    @Measure(
            meaning = "share of mothers that come back from a drone cell",
            value = 0.75,
            unit = "1",
            min = 0,
            max = 1,
            tag = MEMORY,
            source = "from memory")
        double droneMothersBack,
    @Measure(
            meaning = "mated daughters made per mother alone in a drone cell",
            value = 2.0,
            unit = "mites",
            min = 0,
            max = 5,
            tag = DERIVED,
            source = "2.2-2.6 per reproducing mother, less those that do not reproduce")
        double droneDaughters,
    @Measure(
            meaning = "share of daughters lost as the drone emerges",
            value = 0.08,
            unit = "1",
            min = 0,
            max = 1,
            tag = MEMORY,
            source = "from memory")
        double droneDaughtersLost,
    @Measure(
            meaning = "loss of daughters per further mother in a drone cell",
            value = 0.22,
            unit = "1",
            min = 0,
            max = 1,
            tag = CHOICE,
            source =
                "form after Donze et al. 1996; value by choice, for the highest infestations seen")
        double droneCrowding,
    @Measure(
            meaning = "size K of the negative binomial of mothers over cells",
            value = 2,
            unit = "1",
            min = 0.2,
            max = 1000,
            tag = CHOICE,
            source = "clumping seen by Donze et al. 1996 and Floris et al. 2020; value by choice")
        double clumping) {

  /** Checks every component against its range. */
  public MiteRates {
    Measures.checkAll(
        MiteRates.class,
        workerInvasion,
        droneInvasion,
        shortestStay,
        deathLink,
        workerMothersBack,
        workerDaughters,
        workerDaughtersLost,
        workerCrowding,
        droneMothersBack,
        droneDaughters,
        droneDaughtersLost,
        droneCrowding,
        clumping);
  }

  /** {@return the defaults} */
  public static MiteRates defaults() {
    return with(Map.of());
  }

  /**
   * {@return the defaults with some components replaced by name}
   *
   * @param overrides values by component name; each must lie in the range of its component
   */
  public static MiteRates with(Map<String, Double> overrides) {
    return Measures.build(MiteRates.class, overrides);
  }

  /**
   * {@return mites that leave a worker cell per mother that entered, when cells hold one mother at
   * most}
   *
   * @param fertility factor on daughters from stock and vigour
   */
  public double workerReturn(double fertility) {
    return workerMothersBack + fertility * workerDaughters * (1 - workerDaughtersLost);
  }

  /**
   * {@return the same for drone cells}
   *
   * @param fertility factor on daughters from stock and vigour
   */
  public double droneReturn(double fertility) {
    return droneMothersBack + fertility * droneDaughters * (1 - droneDaughtersLost);
  }

  /**
   * Rate at which a mite on a bee enters a cell.
   *
   * @param workerCellsPerGram worker cells capped a day per gram of adult bees
   * @param droneCellsPerGram drone cells capped a day per gram of adult bees
   * @return the saturating hazard, 1/day
   */
  public double invasion(double workerCellsPerGram, double droneCellsPerGram) {
    double x = workerInvasion * workerCellsPerGram + droneInvasion * droneCellsPerGram;
    return x / (1 + shortestStay * x);
  }

  /**
   * Rate at which a mite on a bee dies.
   *
   * @param beeDeath adults that die of age in a day, per adult bee, 1/day
   * @param invasion rate at which it enters cells, 1/day
   * @return the bees' rate where there is no brood, and less the sooner mites enter cells, 1/day
   */
  public double death(double beeDeath, double invasion) {
    double link = deathLink * invasion;
    return beeDeath / (1 + link * link);
  }
}
