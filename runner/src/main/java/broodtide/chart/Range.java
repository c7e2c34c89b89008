package broodtide.chart;

/**
 * A range of values that holds both its ends.
 *
 * @param low lower end, finite
 * @param high upper end, finite, not below {@code low}
 */
public record Range(double low, double high) {
  public Range {
    if (!Double.isFinite(low) || !Double.isFinite(high) || low > high) {
      throw new IllegalArgumentException(
          "interval is "
              + low
              + " to "
              + high
              + "; both ends must be numbers, the lower one first");
    }
  }
}
