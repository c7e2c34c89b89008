package broodtide.study;

import static broodtide.measure.Tag.CHOICE;

import broodtide.catalog.Assumptions;
import broodtide.measure.Measure;
import broodtide.measure.OutOfRange;
import broodtide.mite.StockTraits;
import java.util.OptionalDouble;

/**
 * The colony on the first day of a study.
 *
 * @param name its name, as the washes call it
 * @param adults adult bees, 100 to 120,000; the climate's standard year when empty
 * @param framesOfBees deep frames covered with bees on both sides, 0.1 to 60; another way to say
 *     the same, so at most one of the two is given
 * @param infestation mites per 100 adult bees, 0 to 300; empty when washes are to tell
 * @param strength factor on laying, 0.05 to 3
 * @param stock traits of the bees' stock and of the mites
 * @param yard the yard in which it stands; empty where none is named
 */
public record ColonyStart(
    String name,
    OptionalDouble adults,
    OptionalDouble framesOfBees,
    OptionalDouble infestation,
    @Measure(
            meaning = "factor on laying, one for an average queen",
            value = 1,
            unit = "1",
            min = 0.05,
            max = 3,
            tag = CHOICE,
            source = "the climates are drawn for an average colony")
        double strength,
    StockTraits stock,
    String yard) {
  /** Fewest adults of a colony. */
  public static final double FEWEST = 100;

  /** Most adults of a colony. */
  public static final double MOST = 120_000;

  /**
   * A colony whose yard is not named.
   *
   * @param name its name
   * @param adults adult bees
   * @param framesOfBees frames covered with bees
   * @param infestation mites per 100 adult bees
   * @param strength factor on laying
   * @param stock traits of the stock
   */
  public ColonyStart(
      String name,
      OptionalDouble adults,
      OptionalDouble framesOfBees,
      OptionalDouble infestation,
      double strength,
      StockTraits stock) {
    this(name, adults, framesOfBees, infestation, strength, stock, "");
  }

  /** Checks every range, and that the size is given once. */
  public ColonyStart {
    if (adults.isPresent() && framesOfBees.isPresent()) {
      throw new OutOfRange(
          "framesOfBees",
          "" + framesOfBees.getAsDouble(),
          "nothing beside adults; keep one of them");
    }
    adults.ifPresent(v -> OutOfRange.check("adults", v, FEWEST, MOST, "bees"));
    framesOfBees.ifPresent(v -> OutOfRange.check("framesOfBees", v, 0.1, 60, "frames"));
    infestation.ifPresent(
        v -> OutOfRange.check("infestation", v, 0, 300, "mites per 100 adult bees"));
    OutOfRange.check("strength", strength, 0.05, 3, "1");
  }

  /**
   * {@return adult bees as given, from frames when it was frames; empty when neither was given}
   *
   * @param assumptions says how many bees stand on a frame
   */
  public OptionalDouble bees(Assumptions assumptions) {
    return framesOfBees.isPresent()
        ? OptionalDouble.of(framesOfBees.getAsDouble() * assumptions.beesPerFrame())
        : adults;
  }
}
