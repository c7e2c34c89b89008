package broodtide.control;

import broodtide.measure.OutOfRange;

/**
 * How a miticide acts, named by its active substance and the way it is given.
 *
 * @param name for example {@code oxalic-dribble}
 * @param days days on which one application acts, 1 to 120
 * @param onBees hazard of mites on bees, 1/day, 0 to 20
 * @param inCells hazard of mother mites in capped cells, 1/day, 0 to 20
 * @param beeCost extra death of adult bees, 1/day, 0 to 1
 * @param broodCost share of the brood due for capping each day that is lost, 0 to 1
 * @param coolest lowest daily high at which it may be used, degrees Celsius
 * @param warmest highest daily high at which it may be used, degrees Celsius
 * @param supers the usual rule about honey supers; the registered label and local law decide
 * @param warmth how its hazards and costs hang on the warmth of the day
 * @param spread how far its hazards differ between trials and between colonies
 */
public record Miticide(
    String name,
    int days,
    double onBees,
    double inCells,
    double beeCost,
    double broodCost,
    double coolest,
    double warmest,
    SupersRule supers,
    WarmthResponse warmth,
    HazardSpread spread) {

  /** The usual rule about honey supers. The registered label and local law decide. */
  public enum SupersRule {
    /** Not while honey for harvest is on the hive. */
    OFF,
    /** Labels in some countries allow it with supers on. */
    LABEL_DECIDES
  }

  /** Checks every range. */
  public Miticide {
    OutOfRange.check("days", days, 1, 120, "days");
    OutOfRange.check("onBees", onBees, 0, 20, "1/day");
    OutOfRange.check("inCells", inCells, 0, 20, "1/day");
    OutOfRange.check("beeCost", beeCost, 0, 1, "1/day");
    OutOfRange.check("broodCost", broodCost, 0, 1, "1");
    OutOfRange.check("coolest", coolest, -40, 60, "degrees Celsius");
    OutOfRange.check("warmest", warmest, coolest, 60, "degrees Celsius");
  }

  /**
   * A miticide that acts alike in any weather, its hazards as doubtful as usual.
   *
   * @param name for example {@code oxalic-dribble}
   * @param days days on which one application acts, 1 to 120
   * @param onBees hazard of mites on bees, 1/day, 0 to 20
   * @param inCells hazard of mother mites in capped cells, 1/day, 0 to 20
   * @param beeCost extra death of adult bees, 1/day, 0 to 1
   * @param broodCost share of the brood due for capping each day that is lost, 0 to 1
   * @param coolest lowest daily high at which it may be used, degrees Celsius
   * @param warmest highest daily high at which it may be used, degrees Celsius
   * @param supers the usual rule about honey supers; the registered label and local law decide
   */
  public Miticide(
      String name,
      int days,
      double onBees,
      double inCells,
      double beeCost,
      double broodCost,
      double coolest,
      double warmest,
      SupersRule supers) {
    this(
        name,
        days,
        onBees,
        inCells,
        beeCost,
        broodCost,
        coolest,
        warmest,
        supers,
        WarmthResponse.STEADY,
        HazardSpread.USUAL);
  }

  /**
   * {@return the same with both hazards multiplied}
   *
   * @param factor 0 or more; the hazards must stay in their range
   */
  public Miticide scaled(double factor) {
    return with(onBees * factor, inCells * factor, spread);
  }

  /**
   * {@return the same with hazards that differ otherwise}
   *
   * @param other between trials and between colonies
   */
  public Miticide with(HazardSpread other) {
    return with(onBees, inCells, other);
  }

  private Miticide with(double ofBees, double ofCells, HazardSpread other) {
    return new Miticide(
        name, days, ofBees, ofCells, beeCost, broodCost, coolest, warmest, supers, warmth, other);
  }
}
