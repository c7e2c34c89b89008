package broodtide.control;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;

/**
 * The queen caged so that no eggs are laid.
 *
 * @param name what people call it
 * @param from first day in the cage
 * @param to last day in the cage, not before {@code from}, at most 120 days later
 */
public record QueenCaging(String name, LocalDate from, LocalDate to) implements Control {
  /** Checks the dates. */
  public QueenCaging {
    long days = to.toEpochDay() - from.toEpochDay();
    if (days < 0 || days > 120) {
      throw new OutOfRange("to", to.toString(), from + " to " + from.plusDays(120));
    }
  }

  @Override
  public int daysWithoutLaying() {
    return Math.toIntExact(to.toEpochDay() - from.toEpochDay()) + 1;
  }
}
