package broodtide.chart;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/**
 * A treatment threshold that steps through the season, and may be missing on some days.
 *
 * @param name written beside it, for instance {@code threshold: 3 per 100}
 * @param levels one or more steps that do not overlap; kept in order of date
 */
public record ThresholdSteps(String name, List<Level> levels) {
  /**
   * One step.
   *
   * @param from first day it holds
   * @param to last day it holds
   * @param value its height, in the unit of the chart
   */
  public record Level(LocalDate from, LocalDate to, double value) {
    public Level {
      if (!(value >= 0) || !Double.isFinite(value)) {
        throw new IllegalArgumentException(
            "threshold from " + from + " is " + value + "; expected 0 or more");
      }
      if (to.isBefore(from)) {
        throw new IllegalArgumentException("threshold ends on " + to + ", before it begins");
      }
    }
  }

  public ThresholdSteps {
    levels = levels.stream().sorted(Comparator.comparing(Level::from)).toList();
    if (levels.isEmpty()) {
      throw new IllegalArgumentException(
          "threshold '" + name + "' has no level; give at least one");
    }
  }
}
