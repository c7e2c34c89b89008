package broodtide.assessment;

import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Trajectory;
import java.time.LocalDate;

/** Average colonies left alone in the shipped climates. */
public final class Untreated {
  /** Mites per 100 bees, so few that crowding and harm play no part. */
  public static final double FEW = 1e-5;

  private Untreated() {}

  public static Trajectory from(String climate, LocalDate start, int days, double infestation) {
    return from(Shipped.model(climate), start, days, infestation);
  }

  public static Trajectory from(ColonyModel model, LocalDate start, int days, double infestation) {
    return DailyEngine.run(
        new Scenario(model, Plan.waiting("left alone"), start, days),
        SimulatedColony.average(infestation));
  }

  /** A calendar year with few mites. */
  static Trajectory year(String climate) {
    return from(climate, LocalDate.of(2001, 1, 1), 365, FEW);
  }

  /** Growth of the infestation per day between two days. */
  static double growth(Trajectory t, LocalDate from, LocalDate to) {
    double rise = t.at(Quantity.INFESTATION, to) / t.at(Quantity.INFESTATION, from);
    return Math.log(rise) / (to.toEpochDay() - from.toEpochDay());
  }
}
