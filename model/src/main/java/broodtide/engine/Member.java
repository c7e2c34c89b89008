package broodtide.engine;

import broodtide.measure.OutOfRange;
import java.util.List;

/**
 * What sets one colony apart from others in the same place: one lane of the engine.
 *
 * @param strength factor on laying, 0.05 to 3
 * @param startSize factor on the bees and brood that the climate's standard year has on the start
 *     day, 0.01 to 5
 * @param infestation mites per 100 adult bees on the start day, 0 to 300
 * @param vigour factor on the mites' daughters, 0 to 3
 * @param immigration factor on the mites that come from outside, 0 to 100
 * @param success factor on the hazards of each miticide course, in the order of the plan, 0 to 5;
 *     courses beyond the list act at their full hazard
 */
public record Member(
    double strength,
    double startSize,
    double infestation,
    double vigour,
    double immigration,
    List<Double> success) {
  /** Checks every range. */
  public Member {
    OutOfRange.check("strength", strength, 0.05, 3, "1");
    OutOfRange.check("startSize", startSize, 0.01, 5, "1");
    OutOfRange.check("infestation", infestation, 0, 300, "mites per 100 adult bees");
    OutOfRange.check("vigour", vigour, 0, 3, "1");
    OutOfRange.check("immigration", immigration, 0, 100, "1");
    success = List.copyOf(success);
    for (double factor : success) {
      OutOfRange.check("success", factor, 0, 5, "1");
    }
  }

  /**
   * {@return an average colony with a given infestation}
   *
   * @param infestation mites per 100 adult bees on the start day, 0 to 300
   */
  public static Member average(double infestation) {
    return new Member(1, 1, infestation, 1, 1, List.of());
  }
}
