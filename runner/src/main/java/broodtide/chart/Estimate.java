package broodtide.chart;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What is believed about one quantity on one day.
 *
 * @param date the day
 * @param median the middle value, in the unit of the chart, finite
 * @param inner the 50 % band; null for none
 * @param outer the 90 % band; null for none
 */
public record Estimate(
    LocalDate date, double median, @Nullable Range inner, @Nullable Range outer) {
  public Estimate {
    if (!Double.isFinite(median)) {
      throw new IllegalArgumentException(
          "median on " + date + " is " + median + "; leave the day out when there is no value");
    }
  }

  /**
   * {@return a value without bands}
   *
   * @param date the day
   * @param value the figure, known without doubt
   */
  public static Estimate of(LocalDate date, double value) {
    return new Estimate(date, value, null, null);
  }

  /**
   * {@return a value with both bands, from the quantiles at 5, 25, 50, 75 and 95 %}
   *
   * @param date the day
   * @param q5 5 % lie below
   * @param q25 25 % lie below
   * @param q50 half lie below
   * @param q75 75 % lie below
   * @param q95 95 % lie below
   */
  public static Estimate of(
      LocalDate date, double q5, double q25, double q50, double q75, double q95) {
    return new Estimate(date, q50, new Range(q25, q75), new Range(q5, q95));
  }
}
