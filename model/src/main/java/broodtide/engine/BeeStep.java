package broodtide.engine;

import static broodtide.engine.AdultClass.FORAGER_CARRIER;
import static broodtide.engine.AdultClass.FORAGER_OVERT;
import static broodtide.engine.AdultClass.FORAGER_SOUND;
import static broodtide.engine.AdultClass.HIVE_CARRIER;
import static broodtide.engine.AdultClass.HIVE_OVERT;
import static broodtide.engine.AdultClass.HIVE_SOUND;
import static broodtide.engine.AdultClass.WINTER;

import broodtide.colony.BeeRates;

/**
 * One day of the adult bees: mites that came out of cells infect some, young bees emerge, all age.
 * A rate r leaves a share 1 / (1 + r) of a group behind each day, so that the mean stay is exactly
 * 1 / r days and no rate, however high, makes a count negative; what dies is the rate times those
 * left.
 */
final class BeeStep {
  /**
   * Added and taken away again, this leaves counts as they are and makes a dead colony's dwindling
   * trace zero, before it gets so small that processors slow down over it.
   */
  private static final double FLUSH_TO_ZERO = 1e-44;

  private final ColonyBlock b;
  private final Lanes lanes;
  private final BeeRates rates;
  private final double winterDeath;

  /** Share of the sound adults that stay sound today. */
  private final double[] spared;

  /** Adult bees that die of age today; those that a miticide kills are not among them. */
  final double[] dead;

  BeeStep(ColonyBlock block, Lanes lanes, ColonyModel model) {
    b = block;
    this.lanes = lanes;
    rates = model.bees();
    winterDeath = model.climate().winterDeath();
    spared = block.rows.row();
    dead = block.rows.row();
  }

  /**
   * Runs the day.
   *
   * @param perAdult one over the adult bees of this morning, or over 1 where there are fewer
   * @param emerged workers and mites that come out of cells today
   * @param release rate at which winter bees go to work, 1/day
   * @param cost extra death from a miticide, 1/day
   * @param winterShare share of the sound ones that become winter bees
   */
  void run(double[] perAdult, Emergence emerged, double release, double cost, double winterShare) {
    double foraging = rates.foraging();
    double hive = rates.hiveDeath();
    double forager = rates.foragerDeath();
    double overt = rates.overtDeath();
    double called = release * rates.releasedToForage();
    infect(emerged.mites, perAdult);
    hive(
        emerged.sound,
        1 - winterShare,
        winterShare,
        1 / (1 + (hive + foraging + cost)),
        1 / (1 + (winterDeath + release + cost)));
    forage(foraging, called, 1 / (1 + (forager + cost)));
    overt(
        emerged.overt,
        1 / (1 + (overt * hive + foraging + cost)),
        foraging,
        1 / (1 + (overt * forager + cost)),
        overt * hive,
        overt * forager);
    die(hive, forager, winterDeath + (release - called));
  }

  private void infect(double[] mites, double[] perAdult) {
    double[] left = spared;
    double[] infectivity = lanes.infectivity;
    double each = rates.adultInfections();
    for (int l = 0; l < left.length; l++) {
      left[l] = Kernel.expOfMinus(each * infectivity[l] * mites[l] * perAdult[l]);
    }
  }

  private void hive(
      double[] emerged, double toHive, double toWinter, double ofHive, double ofWinter) {
    double[] sound = b.of(HIVE_SOUND);
    double[] carrier = b.of(HIVE_CARRIER);
    double[] winter = b.of(WINTER);
    double[] left = spared;
    for (int l = 0; l < sound.length; l++) {
      double share = left[l];
      double bees = sound[l];
      double old = winter[l];
      double young = emerged[l];
      double stay = share * bees;
      double wait = share * old;
      double ill = bees - stay + (old - wait);
      carrier[l] = (carrier[l] + ill) * ofHive + FLUSH_TO_ZERO - FLUSH_TO_ZERO;
      sound[l] = (stay + toHive * young) * ofHive + FLUSH_TO_ZERO - FLUSH_TO_ZERO;
      winter[l] = (wait + toWinter * young) * ofWinter + FLUSH_TO_ZERO - FLUSH_TO_ZERO;
    }
  }

  private void forage(double flying, double called, double ofForagers) {
    double[] sound = b.of(FORAGER_SOUND);
    double[] carrier = b.of(FORAGER_CARRIER);
    double[] hive = b.of(HIVE_SOUND);
    double[] hiveCarrier = b.of(HIVE_CARRIER);
    double[] winter = b.of(WINTER);
    double[] left = spared;
    for (int l = 0; l < sound.length; l++) {
      double bees = sound[l];
      double stay = left[l] * bees;
      double ill = carrier[l] + (bees - stay);
      carrier[l] = (ill + flying * hiveCarrier[l]) * ofForagers + FLUSH_TO_ZERO - FLUSH_TO_ZERO;
      sound[l] =
          (stay + flying * hive[l] + called * winter[l]) * ofForagers
              + FLUSH_TO_ZERO
              - FLUSH_TO_ZERO;
    }
  }

  private void overt(
      double[] emerged,
      double ofHive,
      double flying,
      double ofForagers,
      double hiveDeath,
      double foragerDeath) {
    double[] hive = b.of(HIVE_OVERT);
    double[] forager = b.of(FORAGER_OVERT);
    double[] die = dead;
    for (int l = 0; l < hive.length; l++) {
      double bees = (hive[l] + emerged[l]) * ofHive + FLUSH_TO_ZERO - FLUSH_TO_ZERO;
      double flown = (forager[l] + flying * bees) * ofForagers + FLUSH_TO_ZERO - FLUSH_TO_ZERO;
      hive[l] = bees;
      forager[l] = flown;
      die[l] = hiveDeath * bees + foragerDeath * flown;
    }
  }

  private void die(double ofHive, double ofForagers, double ofWinter) {
    double[] hive = b.of(HIVE_SOUND);
    double[] hiveCarrier = b.of(HIVE_CARRIER);
    double[] forager = b.of(FORAGER_SOUND);
    double[] carrier = b.of(FORAGER_CARRIER);
    double[] winter = b.of(WINTER);
    double[] die = dead;
    for (int l = 0; l < die.length; l++) {
      die[l] +=
          ofHive * (hive[l] + hiveCarrier[l])
              + ofForagers * (forager[l] + carrier[l])
              + ofWinter * winter[l];
    }
  }
}
