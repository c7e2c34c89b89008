package broodtide.engine;

import broodtide.control.Plan;
import broodtide.measure.Unworkable;
import broodtide.mite.Immigration;
import java.time.LocalDate;
import java.util.List;

/**
 * What colonies start from on a day. A climate's standard year is a colony of average strength, run
 * for three years with a trace of mites too few to matter; it spares the user a census of brood by
 * age. Colonies leave it {@link #LEAD} days before the day asked for, without infected bees, and
 * {@link Lead} sees to it that they have the infestation asked for on that day: by then their bees
 * carry what so many mites did to them, and mites are spread over bees and cells as the season
 * spreads them.
 */
public final class StandardColony {
  /** Days before the start on which colonies leave the standard year: {@value}. */
  public static final int LEAD = 60;

  private static final int YEARS = 3;

  /**
   * Mites at the founding: too few to matter after three years that multiply them 1e7-fold each.
   */
  private static final double TRACE = 1e-30;

  /** Steps of a search that each leave about a hundredth of the error. */
  private static final int TRIES = 5;

  private static final double FOUNDING_BEES = 12_000;

  private final ColonyBlock standard;
  private final Lead lead;
  private final double clumping;

  private StandardColony(ColonyBlock standard, Lead lead, double clumping) {
    this.standard = standard;
    this.lead = lead;
    this.clumping = clumping;
  }

  /**
   * {@return what colonies start from on a day}
   *
   * @param model the rates; mites from outside come in during the lead alone
   * @param day the day
   * @throws Unworkable when no colony lives in this climate at these rates
   */
  public static StandardColony on(ColonyModel model, LocalDate day) {
    LocalDate leave = day.minusDays(LEAD);
    LocalDate from = day.minusYears(YEARS);
    ColonyModel alone = model.with(Immigration.NONE);
    ColonyBlock founding = new ColonyBlock(1, model.mites().clumping());
    founding.of(AdultClass.HIVE_SOUND)[0] = FOUNDING_BEES / 2;
    founding.of(AdultClass.WINTER)[0] = FOUNDING_BEES / 2;
    founding.phoretic[0] = TRACE;
    founding.startMites[0] = TRACE;
    ColonyBlock before = run(founding, alone, from, leave);
    ColonyBlock then = before.lane(0, 1);
    ColonyBlock standard = run(then, alone, leave, day);
    if (standard.adults(0) < 100) {
      throw new Unworkable(
          "no colony lives through three years of climate \""
              + model.climate().name()
              + "\" at these rates; raise laying or lower deaths");
    }
    return new StandardColony(standard, new Lead(model, leave, before), model.mites().clumping());
  }

  /** Runs a block and turns its rings, so that a new run finds its first row at index 0. */
  private static ColonyBlock run(
      ColonyBlock block, ColonyModel model, LocalDate from, LocalDate to) {
    int days = Math.toIntExact(to.toEpochDay() - from.toEpochDay());
    Scenario untreated = new Scenario(model, Plan.waiting("standard"), from, days);
    DailyEngine.from(block, untreated, List.of(SimulatedColony.average(0))).run(DayObserver.NONE);
    block.turn(days);
    return block;
  }

  /**
   * {@return the same start, to which colonies come in half the time: they have the infestation
   * asked for, but carry what up to three thousandths more or fewer mites did to their bees} For
   * likelihoods of thousands of colonies, whose own noise is far wider.
   */
  public StandardColony about() {
    return new StandardColony(standard, lead.about(), clumping);
  }

  /** {@return adult bees} */
  public double adults() {
    return standard.adults(0);
  }

  /** {@return capped worker cells} */
  public double workerCells() {
    return standard.workerCells(0);
  }

  /** {@return all mites per mite on bees while mites are few; at least 1} */
  public double mitesPerMiteOnBees() {
    return standard.mites(0) / standard.phoretic[0];
  }

  /**
   * {@return the size with which a colony has so many adults on the day; mites have shortened some
   * lives by then, so it is a little over what the standard year's adults alone would say}
   *
   * @param adults adult bees on the day, above 0
   * @param colony the colony; its own size plays no part
   */
  public double sizeFor(double adults, SimulatedColony colony) {
    double size = adults / adults();
    for (int i = 0; i < TRIES; i++) {
      size *= adults / colonies(List.of(colony.sized(size))).adults(0);
    }
    return size;
  }

  /** Size of the negative binomial of mothers over cells, as blocks that start from it have it. */
  double clumping() {
    return clumping;
  }

  /**
   * {@return a block of colonies on the start day, one lane for each member}
   *
   * @param members what sets each colony apart, its infestation included; at least one
   */
  public ColonyBlock colonies(List<SimulatedColony> members) {
    return lead.colonies(members);
  }
}
