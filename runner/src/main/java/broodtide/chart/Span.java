package broodtide.chart;

import java.time.LocalDate;

/**
 * A stretch of the season, shaded.
 *
 * @param label a few words, for instance {@code honey supers on}
 * @param from first day
 * @param to last day
 */
public record Span(String label, LocalDate from, LocalDate to) {
  public Span {
    if (to.isBefore(from)) {
      throw new IllegalArgumentException(
          "span '" + label + "' ends on " + to + ", before it begins on " + from);
    }
  }
}
