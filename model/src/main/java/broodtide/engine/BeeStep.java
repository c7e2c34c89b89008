package broodtide.engine;

import broodtide.colony.BeeRates;

/**
 * One day of the adult bees. A rate r leaves a share 1 / (1 + r) of a group behind each day, so
 * that the mean stay is exactly 1 / r days and no rate, however high, makes a count negative.
 */
final class BeeStep {
  private final ColonyBlock b;
  private final BeeRates rates;
  private final double[] onSummerBees;
  private final double[] onWinterBees;
  private final double[] toForage;
  private final double[] released;

  BeeStep(ColonyBlock block, BeeRates rates) {
    b = block;
    this.rates = rates;
    onSummerBees = new double[block.width];
    onWinterBees = new double[block.width];
    toForage = new double[block.width];
    released = new double[block.width];
  }

  /**
   * Runs the day.
   *
   * @param adults adult bees this morning
   * @param mites mites on bees this morning
   * @param sound workers that emerge from clean cells
   * @param harmed workers that emerge from infested cells
   * @param winterShare share of them that become winter bees
   * @param release rate at which winter bees go to work, 1/day
   * @param cost extra death from a miticide, 1/day
   */
  void run(
      double[] adults,
      double[] mites,
      double[] sound,
      double[] harmed,
      double winterShare,
      double release,
      double cost) {
    burden(onSummerBees, adults, mites, rates.mitesOnSummerBees());
    burden(onWinterBees, adults, mites, rates.mitesOnWinterBees());
    kind(b.hiveSound, b.foragerSound, b.winterSound, sound, 1, winterShare, release, cost);
    kind(
        b.hiveHarmed,
        b.foragerHarmed,
        b.winterHarmed,
        harmed,
        rates.harm(),
        winterShare,
        release,
        cost);
  }

  private void kind(
      double[] hive,
      double[] foragers,
      double[] winter,
      double[] emerged,
      double harm,
      double winterShare,
      double release,
      double cost) {
    winter(winter, emerged, winterShare, onWinterBees, harm * rates.winterDeath(), release, cost);
    release(released, winter, release * rates.releasedToForage());
    hive(
        hive,
        emerged,
        1 - winterShare,
        onSummerBees,
        harm * rates.hiveDeath(),
        rates.foraging(),
        cost);
    release(toForage, hive, rates.foraging());
    forage(foragers, toForage, released, onSummerBees, harm * rates.foragerDeath(), cost);
  }

  private static void burden(double[] factor, double[] adults, double[] mites, double perMite) {
    for (int l = 0; l < factor.length; l++) {
      factor[l] = 1 + perMite * mites[l] / Math.max(1, adults[l]);
    }
  }

  private static void winter(
      double[] winter,
      double[] emerged,
      double share,
      double[] burden,
      double death,
      double release,
      double cost) {
    for (int l = 0; l < winter.length; l++) {
      winter[l] = (winter[l] + share * emerged[l]) / (1 + death * burden[l] + release + cost);
    }
  }

  private static void hive(
      double[] hive,
      double[] emerged,
      double share,
      double[] burden,
      double death,
      double foraging,
      double cost) {
    for (int l = 0; l < hive.length; l++) {
      hive[l] = (hive[l] + share * emerged[l]) / (1 + death * burden[l] + foraging + cost);
    }
  }

  private static void release(double[] out, double[] group, double rate) {
    for (int l = 0; l < out.length; l++) {
      out[l] = rate * group[l];
    }
  }

  private static void forage(
      double[] foragers,
      double[] fromHive,
      double[] fromWinter,
      double[] burden,
      double death,
      double cost) {
    for (int l = 0; l < foragers.length; l++) {
      foragers[l] = (foragers[l] + fromHive[l] + fromWinter[l]) / (1 + death * burden[l] + cost);
    }
  }
}
