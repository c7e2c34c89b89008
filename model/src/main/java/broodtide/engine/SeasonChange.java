package broodtide.engine;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;

/**
 * From a day on a colony's mites multiply, or come in from other colonies, otherwise than at first,
 * until its next change.
 *
 * @param from the first day
 * @param growth factor on the colony's vigour, 0 or more
 * @param arrivals factor on what the colony is brought, 0 or more
 * @since 0.2.0
 */
public record SeasonChange(LocalDate from, double growth, double arrivals) {
  /** Checks the factors. */
  public SeasonChange {
    OutOfRange.check("growth", growth, 0, Double.MAX_VALUE, "1");
    OutOfRange.check("arrivals", arrivals, 0, Double.MAX_VALUE, "1");
  }
}
