package broodtide.engine;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.measure.OutOfRange;
import broodtide.measure.Unworkable;
import java.time.LocalDate;

/**
 * One plan carried out in one place over one stretch of time.
 *
 * @param model the rates
 * @param plan what is done
 * @param start first day; a state dated {@code start} is the one before anything happens
 * @param days days to run, 1 to 3,660
 */
public record Scenario(ColonyModel model, Plan plan, LocalDate start, int days) {
  /** Longest run, days: ten years. */
  public static final int LONGEST = 3660;

  /**
   * Checks the span.
   *
   * @throws Unworkable when a control begins before the start or after the end
   */
  public Scenario {
    OutOfRange.check("days", days, 1, LONGEST, "days");
    for (Control c : plan.controls()) {
      if (c.from().isBefore(start) || !c.from().isBefore(start.plusDays(days))) {
        throw new Unworkable(
            "plan \""
                + plan.name()
                + "\": \""
                + c.name()
                + "\" begins on "
                + c.from()
                + ", outside "
                + start
                + " to "
                + start.plusDays(days - 1L));
      }
    }
  }

  /**
   * {@return from a first day to a last day, both run}
   *
   * @param model the place and the rates
   * @param plan what is done
   * @param start first day
   * @param last last day, not before the first
   */
  public static Scenario until(ColonyModel model, Plan plan, LocalDate start, LocalDate last) {
    long days = last.toEpochDay() - start.toEpochDay() + 1;
    OutOfRange.check("days from " + start + " to " + last, days, 1, LONGEST, "days");
    return new Scenario(model, plan, start, Math.toIntExact(days));
  }

  /**
   * {@return the same place and time under another plan}
   *
   * @param other what is done instead
   */
  public Scenario with(Plan other) {
    return new Scenario(model, other, start, days);
  }
}
