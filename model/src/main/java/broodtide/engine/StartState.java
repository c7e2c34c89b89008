package broodtide.engine;

import broodtide.control.Plan;
import broodtide.measure.Unworkable;
import broodtide.mite.Immigration;
import java.time.LocalDate;
import java.util.List;

/**
 * The bees, the brood and the spread of mites that a climate's standard year has on a day: a colony
 * of average strength, run for three years with a trace of mites too few to matter. Starting
 * colonies from it spares the user a census of brood by age, and mites start spread over bees and
 * cells as the season spreads them.
 */
public final class StartState {
  private static final int YEARS = 3;

  /**
   * Mites at the founding: too few to matter after three years that multiply them 1e7-fold each.
   */
  private static final double TRACE = 1e-30;

  private static final double FOUNDING_BEES = 12_000;

  private final ColonyBlock block;
  private final double clumping;

  private StartState(ColonyBlock block, double clumping) {
    this.block = block;
    this.clumping = clumping;
  }

  /**
   * {@return the standard year's state on a day}
   *
   * @param model the rates; immigration plays no part
   * @param day the day
   * @throws Unworkable when no colony lives in this climate at these rates
   */
  public static StartState on(ColonyModel model, LocalDate day) {
    LocalDate from = day.minusYears(YEARS);
    int days = Math.toIntExact(day.toEpochDay() - from.toEpochDay());
    Scenario untreated =
        new Scenario(model.with(Immigration.NONE), Plan.waiting("standard"), from, days);
    ColonyBlock founding = new ColonyBlock(1, model.mites().clumping());
    founding.hiveSound[0] = FOUNDING_BEES / 2;
    founding.winterSound[0] = FOUNDING_BEES / 2;
    founding.phoretic[0] = TRACE;
    founding.startMites[0] = TRACE;
    DailyEngine engine = DailyEngine.from(founding, untreated, List.of(Member.average(0)));
    engine.run(DayObserver.NONE);
    if (founding.adults(0) < 100) {
      throw new Unworkable(
          "no colony lives through three years of climate \""
              + model.climate().name()
              + "\" at these rates; raise laying or lower deaths");
    }
    return new StartState(turned(founding, days), model.mites().clumping());
  }

  /** Turns the rings so that the row due first stands at index 0, where a new run looks for it. */
  private static ColonyBlock turned(ColonyBlock b, int days) {
    for (double[][][] rings : List.of(b.broodRings(), b.miteRings())) {
      for (double[][] ring : rings) {
        double[][] copy = ring.clone();
        for (int i = 0; i < ring.length; i++) {
          ring[i] = copy[(i + days) % ring.length];
        }
      }
    }
    return b;
  }

  /** {@return adult bees} */
  public double adults() {
    return block.adults(0);
  }

  /** {@return capped worker cells} */
  public double workerCells() {
    return block.workerCells(0);
  }

  /** {@return all mites per mite on bees while mites are few; at least 1} */
  public double mitesPerMiteOnBees() {
    return block.mites(0) / block.phoretic[0];
  }

  /**
   * {@return share of adult bees that a size and an infestation put mites on: mites on bees, in
   * mites}
   *
   * @param startSize factor on the standard year's bees
   * @param infestation mites per 100 adult bees
   */
  public double mitesOnBees(double startSize, double infestation) {
    return adults() * startSize * infestation / 100;
  }

  /** Fills a block with colonies that start here. */
  public ColonyBlock colonies(List<Member> members) {
    ColonyBlock b = new ColonyBlock(members.size(), clumping);
    for (int l = 0; l < members.size(); l++) {
      Member m = members.get(l);
      double mites = mitesOnBees(m.startSize(), m.infestation());
      copyLane(block.broodRings(), b.broodRings(), l, m.startSize());
      copyLane(block.miteRings(), b.miteRings(), l, mites / block.phoretic[0]);
      double[][] from = block.adultKinds();
      double[][] to = b.adultKinds();
      for (int k = 0; k < from.length; k++) {
        to[k][l] = from[k][0] * m.startSize();
      }
      b.phoretic[l] = mites;
    }
    b.sumUp();
    for (int l = 0; l < members.size(); l++) {
      b.startMites[l] = b.mites(l);
    }
    return b;
  }

  private static void copyLane(double[][][] from, double[][][] to, int lane, double factor) {
    for (int r = 0; r < from.length; r++) {
      for (int i = 0; i < from[r].length; i++) {
        to[r][i][lane] = from[r][i][0] * factor;
      }
    }
  }
}
