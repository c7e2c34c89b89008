package broodtide.engine;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.List;

/**
 * What sets one colony apart from others in the same place: one lane of the engine.
 *
 * @param strength factor on laying, 0.05 to 3
 * @param startSize factor on the bees and brood that a colony of the climate's standard year with
 *     as many mites has on the start day, 0.01 to 5
 * @param infestation mites per 100 adult bees on the start day, 0 to 300
 * @param vigour factor on the mites' daughters, 0 to 3
 * @param immigration factor on the mites that come from outside, 0 to 100
 * @param infectivity share of the mites that carry virus, 0 to 1
 * @param success factor on the hazards of each miticide course, in the order of the plan, 0 to 5;
 *     courses beyond the list act at their full hazard
 * @param changes when vigour and immigration change, rising by day; before the first they are as
 *     above
 */
public record SimulatedColony(
    double strength,
    double startSize,
    double infestation,
    double vigour,
    double immigration,
    double infectivity,
    List<Double> success,
    List<SeasonChange> changes) {
  /** Share of the mites that carry virus where nothing else is said: {@value}, by choice. */
  public static final double USUAL_INFECTIVITY = 0.8;

  /** Checks every range. */
  public SimulatedColony {
    OutOfRange.check("strength", strength, 0.05, 3, "1");
    OutOfRange.check("startSize", startSize, 0.01, 5, "1");
    OutOfRange.check("infestation", infestation, 0, 300, "mites per 100 adult bees");
    OutOfRange.check("vigour", vigour, 0, 3, "1");
    OutOfRange.check("immigration", immigration, 0, 100, "1");
    OutOfRange.check("infectivity", infectivity, 0, 1, "1");
    success = List.copyOf(success);
    changes = List.copyOf(changes);
    for (double factor : success) {
      OutOfRange.check("success", factor, 0, 5, "1");
    }
    for (int i = 1; i < changes.size(); i++) {
      if (!changes.get(i).from().isAfter(changes.get(i - 1).from())) {
        throw new IllegalArgumentException("changes must rise by day: " + changes);
      }
    }
  }

  /**
   * A colony whose vigour and immigration stay as they are.
   *
   * @param strength factor on laying, 0.05 to 3
   * @param startSize factor on the bees and brood of the standard year, 0.01 to 5
   * @param infestation mites per 100 adult bees on the start day, 0 to 300
   * @param vigour factor on the mites' daughters, 0 to 3
   * @param immigration factor on the mites that come from outside, 0 to 100
   * @param infectivity share of the mites that carry virus, 0 to 1
   * @param success factor on the hazards of each miticide course, each 0 to 5
   */
  public SimulatedColony(
      double strength,
      double startSize,
      double infestation,
      double vigour,
      double immigration,
      double infectivity,
      List<Double> success) {
    this(strength, startSize, infestation, vigour, immigration, infectivity, success, List.of());
  }

  /**
   * A colony whose mites carry virus as often as usual.
   *
   * @param strength factor on laying, 0.05 to 3
   * @param startSize factor on the bees and brood of the standard year, 0.01 to 5
   * @param infestation mites per 100 adult bees on the start day, 0 to 300
   * @param vigour factor on the mites' daughters, 0 to 3
   * @param immigration factor on the mites that come from outside, 0 to 100
   * @param success factor on the hazards of each miticide course, each 0 to 5
   */
  public SimulatedColony(
      double strength,
      double startSize,
      double infestation,
      double vigour,
      double immigration,
      List<Double> success) {
    this(strength, startSize, infestation, vigour, immigration, USUAL_INFECTIVITY, success);
  }

  /**
   * {@return the same colony with other success of its courses}
   *
   * @param other factor on the hazards of each miticide course, each 0 to 5
   */
  public SimulatedColony with(List<Double> other) {
    return new SimulatedColony(
        strength, startSize, infestation, vigour, immigration, infectivity, other, changes);
  }

  /**
   * {@return the same colony with other changes of its vigour and immigration}
   *
   * @param other rising by day
   */
  public SimulatedColony changing(List<SeasonChange> other) {
    return new SimulatedColony(
        strength, startSize, infestation, vigour, immigration, infectivity, success, other);
  }

  /**
   * {@return the change that holds on a day; one that changes nothing before the first}
   *
   * @param day the day
   */
  public SeasonChange changeOn(LocalDate day) {
    SeasonChange holds = new SeasonChange(day, 1, 1);
    for (SeasonChange change : changes) {
      if (change.from().isAfter(day)) {
        break;
      }
      holds = change;
    }
    return holds;
  }

  /**
   * {@return the same colony of another size}
   *
   * @param other factor on the bees and brood of the standard year, 0.01 to 5
   */
  public SimulatedColony sized(double other) {
    return new SimulatedColony(
        strength, other, infestation, vigour, immigration, infectivity, success, changes);
  }

  /**
   * {@return an average colony with a given infestation}
   *
   * @param infestation mites per 100 adult bees on the start day, 0 to 300
   */
  public static SimulatedColony average(double infestation) {
    return new SimulatedColony(1, 1, infestation, 1, 1, List.of());
  }
}
