package broodtide.wash;

import broodtide.measure.Measure;
import broodtide.measure.Measures;
import broodtide.measure.OutOfRange;
import broodtide.measure.Tag;
import java.util.Map;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How many bees and how many hives to wash. Within a hive mites are on bees binomially; between
 * hives the rates are gamma about the apiary's mean, so that counts are negative binomial.
 */
public record SamplePlan(
    @Measure(
            meaning = "evenness of mites between hives, k of a negative binomial",
            value = 0.6,
            unit = "1",
            min = 0.05,
            max = 1000,
            tag = Tag.DATA,
            source =
                "Alabama trials of 2022 and 2023, open data, hives treated differently; hives"
                    + " treated alike are more even")
        double evenness,
    @Measure(
            meaning = "share of the mites on the bees that a wash finds",
            value = 0.9,
            unit = "1",
            min = 0.01,
            max = 1,
            tag = Tag.MEMORY,
            source = "one 1-minute shake in alcohol, from memory")
        double recovery) {
  /** Checks the ranges. */
  public SamplePlan {
    Measures.checkAll(SamplePlan.class, evenness, recovery);
  }

  /** {@return the defaults} */
  public static SamplePlan usual() {
    return Measures.build(SamplePlan.class, Map.of());
  }

  /**
   * {@return standard deviation over mean of one wash's reading of one hive}
   *
   * @param perHundred mites per 100 bees that the method would find in all bees, above 0, below 100
   * @param bees bees in the wash
   */
  public double spread(double perHundred, int bees) {
    double p = share(perHundred);
    return Math.sqrt((1 - p) / (p * checkBees(bees)));
  }

  /**
   * Half-width of a wash's interval over its mean.
   *
   * @param perHundred mites per 100 bees that the method would find in all bees
   * @param bees bees in the wash
   * @param level for example 0.95
   * @return 0.5 for give or take half
   */
  public double precision(double perHundred, int bees, double level) {
    return normal(level) * spread(perHundred, bees);
  }

  /**
   * {@return bees to wash so that one hive's reading is within a relative precision of the truth}
   *
   * @param perHundred mites per 100 bees that the method would find in all bees
   * @param precision for example 0.5 for give or take half
   * @param level for example 0.95
   */
  public int beesFor(double perHundred, double precision, double level) {
    OutOfRange.check("precision", precision, 0.001, 10, "1");
    double p = share(perHundred);
    double z = normal(level);
    double bees = z * z * (1 - p) / (p * precision * precision);
    return (int) Math.ceil(Math.min(bees, Integer.MAX_VALUE));
  }

  /**
   * {@return standard deviation over mean of the apiary's mean from some of its hives}
   *
   * @param perHundred the apiary's mean, mites per 100 bees as a wash shows them
   * @param bees bees in each wash
   * @param washed hives washed
   * @param hives hives in the apiary, at least {@code washed}
   */
  public double spreadOfMean(double perHundred, int bees, int washed, int hives) {
    OutOfRange.check("washed", washed, 1, hives, "hives");
    double within = spread(perHundred, bees);
    double between = (1.0 / washed - 1.0 / hives) / evenness;
    return Math.sqrt(between + within * within / washed);
  }

  /**
   * Hives to wash so that the standard deviation of the apiary's mean is within a share of it.
   *
   * @param perHundred the apiary's mean, mites per 100 bees as a wash shows them
   * @param bees bees in each wash
   * @param hives hives in the apiary
   * @param spread for example 0.25
   * @return 1 to {@code hives}; {@code hives} also when even all of them do not reach it
   */
  public int hivesFor(double perHundred, int bees, int hives, double spread) {
    OutOfRange.check("hives", hives, 1, 100_000, "hives");
    for (int washed = 1; washed < hives; washed++) {
      if (spreadOfMean(perHundred, bees, washed, hives) <= spread) {
        return washed;
      }
    }
    return hives;
  }

  /**
   * {@return chance that a wash of one hive finds no mite at all}
   *
   * @param perHundred mites per 100 bees in truth
   * @param bees bees in the wash
   */
  public double chanceOfNone(double perHundred, int bees) {
    return Math.exp(checkBees(bees) * Math.log1p(-share(perHundred) * recovery));
  }

  /**
   * {@return chance that washes of several hives find no mite at all, the hives differing as {@link
   * #evenness()} says}
   *
   * @param perHundred the apiary's mean, mites per 100 bees in truth
   * @param bees bees in each wash
   * @param washed hives washed
   */
  public double chanceOfNone(double perHundred, int bees, int washed) {
    OutOfRange.check("washed", washed, 1, 100_000, "hives");
    double mean = checkBees(bees) * share(perHundred) * recovery;
    return Math.exp(-evenness * washed * Math.log1p(mean / evenness));
  }

  /**
   * {@return chance that one wash reads below a threshold although the hive stands at {@code
   * perHundred}}
   *
   * @param perHundred mites per 100 bees in truth
   * @param threshold the threshold in mites per 100 bees as a wash shows them
   * @param bees bees in the wash
   */
  public double chanceOfMissing(double perHundred, double threshold, int bees) {
    double p = share(perHundred) * recovery;
    int below = (int) Math.ceil(threshold * checkBees(bees) / 100 - 1e-9) - 1;
    return new BinomialDistribution(null, bees, p).cumulativeProbability(below);
  }

  private static double share(double perHundred) {
    return OutOfRange.check("perHundred", perHundred, 1e-6, 99.999, "mites per 100 bees") / 100;
  }

  private static int checkBees(int bees) {
    OutOfRange.check("bees", bees, 1, Wash.MOST_BEES, "bees");
    return bees;
  }

  private static double normal(double level) {
    if (!(level > 0 && level < 1)) {
      throw new OutOfRange("level", Double.toString(level), "between 0 and 1, for example 0.95");
    }
    return new NormalDistribution(null, 0, 1).inverseCumulativeProbability((1 + level) / 2);
  }
}
