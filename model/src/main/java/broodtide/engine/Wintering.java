package broodtide.engine;

import static broodtide.measure.Tag.CHOICE;
import static broodtide.measure.Tag.DERIVED;

import broodtide.measure.Measure;
import broodtide.measure.Measures;
import java.util.Map;

/**
 * What a colony needs to live: a number of bees that depends on weather and luck that no model of a
 * colony knows, so that it is a chance, not a line; and that nothing else takes it over winter. A
 * part of that luck is shared by the colonies of a yard and a winter. {@link Survival} works out
 * the chances.
 */
public record Wintering(
    @Measure(
            meaning = "adult bees at which a colony's life is even odds",
            value = 2200,
            unit = "bees",
            min = 100,
            max = 20_000,
            tag = DERIVED,
            source =
                "fitted with this program to 104 untreated colonies in Georgia by their wash"
                    + " and by month (Bartlett et al. 2024). 1,800 to 2,600 fit about as well")
        double fewestBees,
    @Measure(
            meaning = "spread of that number between colonies, in natural logarithms",
            value = 0.3,
            unit = "1",
            min = 0.01,
            max = 2,
            tag = CHOICE,
            source =
                "choice, tried on the colonies to which fewestBees was fitted; 0.2 to 0.4 fit"
                    + " alike")
        double spread,
    @Measure(
            meaning = "spread of that number between yards and winters, in natural logarithms",
            value = 0.8,
            unit = "1",
            min = 0,
            max = 2,
            tag = DERIVED,
            source =
                "fitted to the same colonies, 0.4 to 0.8; in Vermont in 2021 (from memory, no"
                    + " author known) yards with the same washes differed more")
        double yardSpread,
    @Measure(
            meaning =
                "chance that a colony is lost over winter from other causes, in the middle yard",
            value = 0.10,
            unit = "1",
            min = 0.001,
            max = 0.95,
            tag = CHOICE,
            source =
                "choice; losses of treated colonies, 11 to 18 % from memory, hold both" + " causes")
        double otherLosses,
    @Measure(
            meaning = "spread of that chance between yards and winters, in logits",
            value = 1.2,
            unit = "1",
            min = 0,
            max = 4,
            tag = CHOICE,
            source = "choice: 90 % of yards lose 1.5 to 44 % from other causes")
        double otherSpread) {

  /** Checks every component against its range. */
  public Wintering {
    Measures.checkAll(Wintering.class, fewestBees, spread, yardSpread, otherLosses, otherSpread);
  }

  /** {@return the defaults} */
  public static Wintering defaults() {
    return with(Map.of());
  }

  /**
   * {@return the defaults with some components replaced by name}
   *
   * @param overrides values by component name; each must lie in the range of its component
   */
  public static Wintering with(Map<String, Double> overrides) {
    return Measures.build(Wintering.class, overrides);
  }
}
