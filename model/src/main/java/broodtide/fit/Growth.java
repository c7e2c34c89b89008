package broodtide.fit;

import broodtide.wash.Interval;
import java.util.OptionalDouble;

/**
 * Growth of the mites per bee.
 *
 * @param perDay best estimate of the growth rate, 1/day (the logarithm's slope); empty when the
 *     washes bear none
 * @param perDayInterval interval of the growth rate, 1/day; an end is infinite where the washes do
 *     not bound it
 */
public record Growth(OptionalDouble perDay, Interval perDayInterval) {
  /** Days in a month. */
  public static final double MONTH = 30.4;

  /** {@return whether the washes tell growth or decline from no change} */
  public boolean differsFromZero() {
    return !perDayInterval.holds(0);
  }

  /** {@return growth rate per month, 1/month} */
  public OptionalDouble perMonth() {
    return perDay.isPresent() ? OptionalDouble.of(perDay.getAsDouble() * MONTH) : perDay;
  }

  /** {@return by what the mites per bee multiply in a month} */
  public OptionalDouble monthFactor() {
    return perDay.isPresent()
        ? OptionalDouble.of(Math.exp(perDay.getAsDouble() * MONTH))
        : OptionalDouble.empty();
  }

  /** {@return interval of {@link #monthFactor()}, 0 or more, infinite where nothing bounds it} */
  public Interval monthFactorInterval() {
    return new Interval(
        Math.exp(perDayInterval.low() * MONTH),
        Math.exp(perDayInterval.high() * MONTH),
        perDayInterval.level());
  }

  /** {@return days in which the mites per bee double; empty when they do not grow} */
  public OptionalDouble doublingDays() {
    return perDay.isPresent() && perDay.getAsDouble() > 0
        ? OptionalDouble.of(Math.log(2) / perDay.getAsDouble())
        : OptionalDouble.empty();
  }

  /** {@return days in which the mites per bee halve; empty when they do not decline} */
  public OptionalDouble halvingDays() {
    return perDay.isPresent() && perDay.getAsDouble() < 0
        ? OptionalDouble.of(-Math.log(2) / perDay.getAsDouble())
        : OptionalDouble.empty();
  }
}
