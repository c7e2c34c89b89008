package broodtide.control;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.Optional;

/**
 * Bees and brood moved out of the colony that is followed. A shook swarm is a split that leaves all
 * the brood behind.
 *
 * @param name what people call it
 * @param from the day
 * @param beesLeaving share of the adult bees moved away, 0 to 0.95; their mites go with them
 * @param broodLeaving share of the brood moved away, 0 to 1; its mites go with it
 * @param daysWithoutLaying days until eggs are laid again in the part that is followed, 0 to 60;
 *     about 27 when it rears a queen from a cell
 */
public record Split(
    String name, LocalDate from, double beesLeaving, double broodLeaving, int daysWithoutLaying)
    implements Control {
  /** Checks ranges. */
  public Split {
    OutOfRange.check("beesLeaving", beesLeaving, 0, 0.95, "1");
    OutOfRange.check("broodLeaving", broodLeaving, 0, 1, "1");
    OutOfRange.check("daysWithoutLaying", daysWithoutLaying, 0, 60, "days");
  }

  @Override
  public LocalDate to() {
    return from.plusDays(Math.max(daysWithoutLaying - 1L, 0));
  }

  @Override
  public Split named(String called) {
    return new Split(called, from, beesLeaving, broodLeaving, daysWithoutLaying);
  }

  @Override
  public Split startingOn(LocalDate day) {
    return new Split(name, day, beesLeaving, broodLeaving, daysWithoutLaying);
  }

  @Override
  public void act(ControlEffects colony) {
    colony.moveBees(from, beesLeaving);
    colony.moveBrood(from, broodLeaving);
    colony.stopLaying(from, daysWithoutLaying);
  }

  @Override
  public Optional<Control> withDaysWithoutLaying(int days) {
    return Optional.of(new Split(name, from, beesLeaving, broodLeaving, days));
  }

  @Override
  public boolean needsFreeQueen() {
    return true;
  }

  @Override
  public Optional<LocalDate> broodless() {
    return broodLeaving >= 1 ? Optional.of(from) : Optional.empty();
  }
}
