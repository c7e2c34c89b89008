package broodtide.assessment;

import broodtide.engine.Quantity;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * One day of a plan's colonies taken together.
 *
 * @param date the day
 * @param infestation mites per 100 adult bees of living colonies
 * @param adults adult bees of the middle colony
 */
public record PlanDay(LocalDate date, QuantileSummary infestation, double adults) {
  /**
   * {@return every day of a run, from its start on}
   *
   * @param run a plan that was played
   */
  public static List<PlanDay> all(PlanRun run) {
    List<PlanDay> out = new ArrayList<>();
    for (LocalDate date = run.colony().start();
        !date.isAfter(run.colony().until());
        date = date.plusDays(1)) {
      out.add(
          new PlanDay(
              date, run.on(Quantity.INFESTATION, date), run.on(Quantity.ADULTS, date).median()));
    }
    return out;
  }
}
