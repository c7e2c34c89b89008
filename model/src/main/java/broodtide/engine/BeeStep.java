package broodtide.engine;

import broodtide.colony.BeeRates;

/**
 * One day of the adult bees. A rate r leaves a share 1 / (1 + r) of a group behind each day, so
 * that the mean stay is exactly 1 / r days and no rate, however high, makes a count negative.
 */
final class BeeStep {
  /**
   * Added and taken away again, this leaves counts as they are and makes a dead colony's dwindling
   * trace zero, before it gets so small that processors slow down over it.
   */
  private static final double NOBODY = 1e-44;

  private final ColonyBlock b;
  private final BeeRates rates;
  private final Kind sound;
  private final Kind harmed;

  /** Shares of hive bees, foragers and winter bees that today leaves in their group. */
  private final double[] hiveLeft;

  private final double[] foragersLeft;
  private final double[] winterLeft;

  BeeStep(ColonyBlock block, BeeRates rates) {
    b = block;
    this.rates = rates;
    sound = new Kind(b.hiveSound, b.foragerSound, b.winterSound, 1);
    harmed = new Kind(b.hiveHarmed, b.foragerHarmed, b.winterHarmed, rates.harm());
    hiveLeft = b.rows.row();
    foragersLeft = b.rows.row();
    winterLeft = b.rows.row();
  }

  /** The bees of one upbringing, and what their death rates are multiplied by for it. */
  private record Kind(double[] hive, double[] forager, double[] winter, double harm) {}

  /**
   * Runs the day.
   *
   * @param someAdults adult bees this morning, at least 1
   * @param soundBees workers that emerge from clean cells
   * @param harmedBees workers that emerge from infested cells
   * @param release rate at which winter bees go to work, 1/day
   * @param cost extra death from a miticide, 1/day
   * @param winterShare share of the emerging that become winter bees
   */
  void run(
      double[] someAdults,
      double[] soundBees,
      double[] harmedBees,
      double release,
      double cost,
      double winterShare) {
    run(sound, someAdults, soundBees, release, cost, winterShare);
    run(harmed, someAdults, harmedBees, release, cost, winterShare);
  }

  private void run(
      Kind kind,
      double[] someAdults,
      double[] emerged,
      double release,
      double cost,
      double winterShare) {
    age(kind, someAdults, release, cost);
    emerge(kind, emerged, 1 - winterShare, winterShare);
    forage(kind, release * rates.releasedToForage());
  }

  /**
   * With n bees that carry m mites, a group dies at d (1 + a m / n) and leaves at f; so 1 + r =
   * stay + d a m / n with stay = 1 + d + f, and the share left behind is n / stay / (n + (d a /
   * stay) m).
   */
  private void age(Kind kind, double[] someAdults, double release, double cost) {
    double hiveDeath = kind.harm * rates.hiveDeath();
    double foragerDeath = kind.harm * rates.foragerDeath();
    double winterDeath = kind.harm * rates.winterDeath();
    double hive = 1 + (hiveDeath + rates.foraging() + cost);
    double forager = 1 + (foragerDeath + cost);
    double winter = 1 + (winterDeath + release + cost);
    left(
        someAdults,
        hiveDeath * rates.mitesOnSummerBees() / hive,
        foragerDeath * rates.mitesOnSummerBees() / forager,
        winterDeath * rates.mitesOnWinterBees() / winter,
        1 / hive,
        1 / forager,
        1 / winter);
  }

  private void left(
      double[] n,
      double onHive,
      double onForager,
      double onWinter,
      double ofHive,
      double ofForagers,
      double ofWinter) {
    double[] m = b.phoretic;
    double[] hive = hiveLeft;
    double[] foragers = foragersLeft;
    double[] winter = winterLeft;
    for (int l = 0; l < hive.length; l++) {
      double bees = n[l];
      double mites = m[l];
      double h = bees + onHive * mites;
      double f = bees - -onForager * mites;
      double w = bees + onWinter * mites;
      double hf = h * f;
      double overHfw = bees / (hf * w);
      double overHf = overHfw * w;
      hive[l] = overHf * f * ofHive;
      foragers[l] = overHf * h * ofForagers;
      winter[l] = overHfw * hf * ofWinter;
    }
  }

  private void emerge(Kind kind, double[] emerged, double toHive, double toWinter) {
    double[] hive = kind.hive;
    double[] winter = kind.winter;
    double[] ofHive = hiveLeft;
    double[] ofWinter = winterLeft;
    for (int l = 0; l < hive.length; l++) {
      double young = emerged[l];
      hive[l] = (hive[l] + toHive * young) * ofHive[l] + NOBODY - NOBODY;
      winter[l] = (winter[l] + toWinter * young) * ofWinter[l] + NOBODY - NOBODY;
    }
  }

  private void forage(Kind kind, double called) {
    double[] forager = kind.forager;
    double[] hive = kind.hive;
    double[] winter = kind.winter;
    double[] left = foragersLeft;
    double flying = rates.foraging();
    for (int l = 0; l < forager.length; l++) {
      forager[l] = (forager[l] + flying * hive[l] + called * winter[l]) * left[l] + NOBODY - NOBODY;
    }
  }
}
