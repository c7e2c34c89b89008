package broodtide.engine;

import broodtide.colony.BeeRates;
import java.util.List;
import java.util.stream.Stream;

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

  private final Kind sound;
  private final Kind harmed;

  BeeStep(ColonyBlock b, BeeRates rates) {
    sound = new Kind(b, b.hiveSound, b.foragerSound, b.winterSound, 1, rates);
    harmed = new Kind(b, b.hiveHarmed, b.foragerHarmed, b.winterHarmed, rates.harm(), rates);
  }

  List<double[]> denominators() {
    return Stream.concat(sound.denominators().stream(), harmed.denominators().stream()).toList();
  }

  /**
   * Sets the day's rates before any bee or mite has moved.
   *
   * @param someAdults adult bees this morning, at least 1
   * @param release rate at which winter bees go to work, 1/day
   * @param cost extra death from a miticide, 1/day
   */
  void prepare(double[] someAdults, double release, double cost) {
    sound.prepare(someAdults, release, cost);
    harmed.prepare(someAdults, release, cost);
  }

  /**
   * Runs the day.
   *
   * @param someAdults as before
   * @param soundBees workers that emerge from clean cells
   * @param harmedBees workers that emerge from infested cells
   * @param winterShare share of them that become winter bees
   */
  void run(double[] someAdults, double[] soundBees, double[] harmedBees, double winterShare) {
    sound.run(someAdults, soundBees, winterShare);
    harmed.run(someAdults, harmedBees, winterShare);
  }

  /**
   * The bees of one upbringing. With n bees that carry m mites, a group dies at d (1 + a m / n) and
   * leaves at f; so 1 + r = stay + d a m / n with stay = 1 + d + f, and the share left behind is n
   * / stay / (n + (d a / stay) m).
   */
  private static final class Kind {
    private final double[] mites;
    private final double[] hive;
    private final double[] forager;
    private final double[] winter;
    private final double hiveDeath;
    private final double foragerDeath;
    private final double winterDeath;
    private final BeeRates rates;
    private final double[] underHive;
    private final double[] underForager;
    private final double[] underWinter;
    private double hiveStay;
    private double foragerStay;
    private double winterStay;
    private double called;

    Kind(
        ColonyBlock b,
        double[] hive,
        double[] forager,
        double[] winter,
        double harm,
        BeeRates rates) {
      mites = b.phoretic;
      this.hive = hive;
      this.forager = forager;
      this.winter = winter;
      this.rates = rates;
      hiveDeath = harm * rates.hiveDeath();
      foragerDeath = harm * rates.foragerDeath();
      winterDeath = harm * rates.winterDeath();
      underHive = b.rows.row();
      underForager = b.rows.row();
      underWinter = b.rows.row();
    }

    List<double[]> denominators() {
      return List.of(underHive, underForager, underWinter);
    }

    void prepare(double[] someAdults, double release, double cost) {
      hiveStay = 1 + (hiveDeath + rates.foraging() + cost);
      foragerStay = 1 + (foragerDeath + cost);
      winterStay = 1 + (winterDeath + release + cost);
      called = release * rates.releasedToForage();
      burden(
          someAdults,
          hiveDeath * rates.mitesOnSummerBees() / hiveStay,
          foragerDeath * rates.mitesOnSummerBees() / foragerStay,
          winterDeath * rates.mitesOnWinterBees() / winterStay);
    }

    private void burden(double[] n, double onHive, double onForager, double onWinter) {
      double[] m = mites;
      double[] h = underHive;
      double[] f = underForager;
      double[] w = underWinter;
      for (int l = 0; l < h.length; l++) {
        h[l] = n[l] + onHive * m[l];
        f[l] = n[l] + onForager * m[l];
        w[l] = n[l] + onWinter * m[l];
      }
    }

    void run(double[] someAdults, double[] emerged, double winterShare) {
      stay(hive, someAdults, emerged, 1 - winterShare, underHive, 1 / hiveStay);
      stay(winter, someAdults, emerged, winterShare, underWinter, 1 / winterStay);
      forage(someAdults, 1 / foragerStay);
    }

    private static void stay(
        double[] group, double[] n, double[] emerged, double share, double[] over, double kept) {
      for (int l = 0; l < group.length; l++) {
        double stayed = (group[l] + share * emerged[l]) * (kept * over[l] * n[l]);
        group[l] = stayed + NOBODY - NOBODY;
      }
    }

    private void forage(double[] n, double kept) {
      double[] group = forager;
      double[] fromHive = hive;
      double[] fromWinter = winter;
      double[] over = underForager;
      double flying = rates.foraging();
      double back = called;
      for (int l = 0; l < group.length; l++) {
        double stayed =
            (group[l] + flying * fromHive[l] + back * fromWinter[l]) * (kept * over[l] * n[l]);
        group[l] = stayed + NOBODY - NOBODY;
      }
    }
  }
}
