package broodtide.chart;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/**
 * A limit that steps through the season.
 *
 * @param name written beside it, for instance {@code limit: 3 per 100}
 * @param levels one or more steps; kept in order of date
 */
public record Limit(String name, List<Level> levels) {
  /**
   * One step.
   *
   * @param from first day it holds; it holds until the next step
   * @param value its height, in the unit of the chart
   */
  public record Level(LocalDate from, double value) {
    public Level {
      if (!(value >= 0) || !Double.isFinite(value)) {
        throw new IllegalArgumentException(
            "limit from " + from + " is " + value + "; allowed is 0 or more");
      }
    }
  }

  public Limit {
    levels = levels.stream().sorted(Comparator.comparing(Level::from)).toList();
    if (levels.isEmpty()) {
      throw new IllegalArgumentException("limit '" + name + "' has no level; give at least one");
    }
  }
}
