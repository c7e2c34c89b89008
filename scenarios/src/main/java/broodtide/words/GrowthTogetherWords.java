package broodtide.words;

import broodtide.fit.Growth;
import broodtide.fit.PooledGrowth;
import broodtide.wash.Interval;

/** How fast mites grow over the hives of a table, in a sentence. */
public final class GrowthTogetherWords {
  /** A share below this is none. */
  private static final double LEAST = 0.01;

  private GrowthTogetherWords() {}

  /**
   * {@return what the hives say together}
   *
   * @param together the growth over the hives
   * @param hives hives in the table
   */
  public static String of(PooledGrowth together, int hives) {
    Growth mean = together.mean();
    Interval factor = mean.monthFactorInterval();
    return "Over "
        + (together.hives() == hives
            ? "all " + Digits.count(hives) + " hives"
            : Digits.count(together.hives())
                + " of "
                + Digits.count(hives)
                + " hives, whose washes bound their growth")
        + ": mites per bee change by a factor of "
        + Digits.two(mean.monthFactor().orElseThrow())
        + " a month (90 % interval "
        + Digits.range(factor.low(), factor.high())
        + "). "
        + apart(Math.expm1(together.between() * Growth.MONTH));
  }

  /** How far the factor of a month differs from hive to hive, as a share of it. */
  private static String apart(double share) {
    return share < LEAST
        ? "The hives do not differ beyond chance."
        : "From hive to hive the factor differs by about " + Digits.percent(share) + ".";
  }
}
