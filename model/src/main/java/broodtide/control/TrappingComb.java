package broodtide.control;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.Optional;

/**
 * The queen caged until hardly a cell is capped, then kept on one comb whose brood draws the mites
 * in, and that comb taken out once it is capped. The colony has no other open brood by then, so
 * what is taken is a share of all brood.
 *
 * @param name what people call it
 * @param from first day in the cage
 * @param cagedDays days without laying, 15 to 60; from 24 on, no drone of before is left in a cell
 * @param trappingDays days from the first egg on the comb to the day it is taken, 9 to 20: from the
 *     first capping until just before the first worker emerges
 * @param taken share of the brood that goes with the comb, 0 to 1; its mites go with it
 */
public record TrappingComb(
    String name, LocalDate from, int cagedDays, int trappingDays, double taken) implements Control {
  /** Checks ranges. */
  public TrappingComb {
    OutOfRange.check("cagedDays", cagedDays, 15, 60, "days");
    OutOfRange.check("trappingDays", trappingDays, 9, 20, "days");
    OutOfRange.check("taken", taken, 0, 1, "1");
  }

  /** {@return the first day with eggs on the comb} */
  public LocalDate given() {
    return from.plusDays(cagedDays);
  }

  /** {@return the day on which the comb is taken out} */
  @Override
  public LocalDate to() {
    return given().plusDays(trappingDays);
  }

  @Override
  public int daysWithoutLaying() {
    return cagedDays;
  }

  @Override
  public TrappingComb named(String called) {
    return new TrappingComb(called, from, cagedDays, trappingDays, taken);
  }

  @Override
  public TrappingComb startingOn(LocalDate day) {
    return new TrappingComb(name, day, cagedDays, trappingDays, taken);
  }

  @Override
  public void act(ControlEffects colony) {
    colony.stopLaying(from, cagedDays);
    colony.moveBrood(to(), taken);
  }

  @Override
  public Optional<Control> withDaysWithoutLaying(int days) {
    return Optional.of(new TrappingComb(name, from, days, trappingDays, taken));
  }

  @Override
  public int applications() {
    return 2;
  }

  /** Caged at first, confined to the comb afterwards. */
  @Override
  public boolean cagesQueen() {
    return true;
  }

  @Override
  public Optional<LocalDate> broodless() {
    return taken >= 1 ? Optional.of(to()) : Optional.empty();
  }
}
