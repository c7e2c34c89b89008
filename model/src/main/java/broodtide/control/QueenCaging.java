package broodtide.control;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.Optional;

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

  @Override
  public QueenCaging named(String called) {
    return new QueenCaging(called, from, to);
  }

  @Override
  public QueenCaging startingOn(LocalDate day) {
    return new QueenCaging(name, day, day.plusDays(daysWithoutLaying() - 1L));
  }

  @Override
  public void act(ControlEffects colony) {
    colony.stopLaying(from, daysWithoutLaying());
  }

  @Override
  public Optional<Control> withDaysWithoutLaying(int days) {
    return days > 0
        ? Optional.of(new QueenCaging(name, from, from.plusDays(days - 1L)))
        : Optional.empty();
  }

  @Override
  public boolean cagesQueen() {
    return true;
  }
}
