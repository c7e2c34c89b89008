package broodtide.assessment;

import static broodtide.measure.Tag.CHOICE;
import static broodtide.measure.Tag.DERIVED;

import broodtide.engine.EnsembleRun;
import broodtide.engine.Quantity;
import broodtide.measure.Measure;
import broodtide.measure.Measures;
import java.util.Arrays;
import java.util.Map;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.util.FastMath;

/**
 * Whether colonies come through a winter. A colony is lost when it is dead or too weak on the day
 * of the {@link SpringLow}, or when something other than mites takes it. How weak is too weak
 * depends on weather and luck that no model of a colony knows, so it is a chance, not a line: it
 * rises as a lognormal does when the colony shrinks against the standard year of its climate.
 *
 * <p>Calibrated with the harm of mites to winter bees so that losses fall with late-September
 * washes as they did in Vermont in 2021; nothing finer than that shape is claimed. Results are
 * estimates.
 *
 * <p>Bees that carried mites recover once the mites are gone, since the viruses that mites leave
 * behind are not modelled: a treatment after the winter bees are raised looks better here than
 * trials found it. For that question count sound winter bees in November as well.
 */
public record Wintering(
    @Measure(
            is = "adults in spring, as a share of the standard year's, at which loss is even odds",
            value = 0.5,
            unit = "1",
            min = 0.01,
            max = 2,
            tag = CHOICE,
            source =
                "calibrated to the shape of winter survival by late-September wash (Vermont 2021)")
        double weakest,
    @Measure(
            is = "spread of that share between winters and colonies, in natural logarithms",
            value = 0.3,
            unit = "1",
            min = 0.01,
            max = 2,
            tag = CHOICE,
            source =
                "calibrated to the shape of winter survival by late-September wash (Vermont 2021)")
        double spread,
    @Measure(
            is = "chance that a colony is lost over winter for other causes than mites",
            value = 0.15,
            unit = "1",
            min = 0,
            max = 0.95,
            tag = DERIVED,
            source =
                "17 % lost with washes below 1 per 100 (Vermont 2021), less about 2 % that the"
                    + " model itself loses there")
        double otherLosses) {

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /** Checks every component against its range. */
  public Wintering {
    Measures.checkAll(Wintering.class, weakest, spread, otherLosses);
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

  /**
   * Chance that a colony is dead or too weak in spring, other causes apart.
   *
   * @param adults its adult bees on the day of the low, zero or more
   * @param low the low of its climate
   * @return 0 to 1
   */
  public double tooWeak(double adults, SpringLow low) {
    if (adults <= 0) {
      return 1;
    }
    return NORMAL.cumulativeProbability(-FastMath.log(adults / low.adults() / weakest) / spread);
  }

  /**
   * {@return chance that a colony is lost for whatever cause} Arguments as in {@link #tooWeak}.
   *
   * @param adults its adult bees on the day of the low, zero or more
   * @param low the low of its climate
   */
  public double lost(double adults, SpringLow low) {
    return 1 - (1 - otherLosses) * (1 - tooWeak(adults, low));
  }

  /**
   * Chance of loss of each colony of a run.
   *
   * @param run has kept {@link Quantity#ADULTS} and lasts to the day of the low
   * @param low the low of its climate
   * @return by member, 0 to 1 each
   * @throws IllegalArgumentException when the run ends before the low or has not kept the adults
   */
  public double[] lost(EnsembleRun run, SpringLow low) {
    double[] chances = run.values(Quantity.ADULTS, low.day());
    Arrays.setAll(chances, member -> lost(chances[member], low));
    return chances;
  }
}
