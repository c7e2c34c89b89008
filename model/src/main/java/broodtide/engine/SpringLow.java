package broodtide.engine;

import broodtide.control.Plan;
import java.time.LocalDate;
import java.util.List;

/**
 * The day on which the climate's standard year has the fewest adult bees: the winter bees are going
 * and the first bees of spring barely replace them. A colony that is too small on this day does not
 * recover in time, so it is the day on which to look whether it came through the winter.
 *
 * @param day the day
 * @param adults adult bees that an average colony without mites has on it, above 0
 */
public record SpringLow(LocalDate day, double adults) {
  private static final int YEAR = 366;

  /**
   * {@return the first such day that comes after a day}
   *
   * @param model the place and the bees; stock and immigration play no part
   * @param day for example a day in autumn
   * @throws broodtide.measure.Unworkable when no colony lives in this climate at these rates
   */
  public static SpringLow after(ColonyModel model, LocalDate day) {
    Trajectory year =
        DailyEngine.run(
            new Scenario(model, Plan.waiting("standard"), day, YEAR),
            new SimulatedColony(1, 1, 0, 1, 0, List.of()));
    double[] adults = year.of(Quantity.ADULTS);
    int fewest = 1;
    for (int d = 2; d < adults.length; d++) {
      if (adults[d] < adults[fewest]) {
        fewest = d;
      }
    }
    return new SpringLow(day.plusDays(fewest), adults[fewest]);
  }
}
