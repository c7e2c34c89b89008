package broodtide.control;

import broodtide.measure.OutOfRange;
import broodtide.mite.StockTraits;
import java.time.LocalDate;
import java.util.Optional;

/**
 * A new queen of other stock. Her workers take over as the old ones are replaced: the new traits
 * come in evenly from the first emergence of her workers until six weeks later.
 *
 * @param name what people call it
 * @param from the day the old queen goes
 * @param stock traits of the new stock
 * @param daysWithoutLaying days until the new queen lays, 0 to 60
 */
public record Requeening(String name, LocalDate from, StockTraits stock, int daysWithoutLaying)
    implements Control {
  private static final int FIRST_WORKERS = 21;
  private static final int TURNOVER = 42;

  /** Checks ranges. */
  public Requeening {
    OutOfRange.check("daysWithoutLaying", daysWithoutLaying, 0, 60, "days");
  }

  @Override
  public LocalDate to() {
    return from.plusDays(Math.max(daysWithoutLaying - 1L, 0));
  }

  /**
   * {@return share of the new stock's traits that holds on a day, 0 before, 1 once the bees are
   * replaced}
   *
   * @param day the day
   */
  public double takenOver(LocalDate day) {
    double since = day.toEpochDay() - from.toEpochDay() - daysWithoutLaying - FIRST_WORKERS;
    return Math.max(0, Math.min(1, since / TURNOVER));
  }

  @Override
  public Requeening named(String called) {
    return new Requeening(called, from, stock, daysWithoutLaying);
  }

  @Override
  public Requeening startingOn(LocalDate day) {
    return new Requeening(name, day, stock, daysWithoutLaying);
  }

  @Override
  public void act(ControlEffects colony) {
    colony.stopLaying(from, daysWithoutLaying);
    colony.replaceStock(stock, this::takenOver);
  }

  @Override
  public Optional<Control> withDaysWithoutLaying(int days) {
    return Optional.of(new Requeening(name, from, stock, days));
  }

  @Override
  public boolean needsFreeQueen() {
    return true;
  }
}
