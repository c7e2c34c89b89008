package broodtide.chart;

import java.util.List;

/**
 * One named line of a chart, for instance a plan.
 *
 * @param name written beside the line's end
 * @param note a few words written below the name, for instance the value at the end; may be empty
 * @param estimates one or more days in order
 * @param ended why the line goes no further, in a few words, marked at its last day; empty when it
 *     reaches the end of what was asked for
 */
public record Line(String name, String note, List<Estimate> estimates, String ended) {
  /**
   * A line that reaches the end of what was asked for.
   *
   * @param name written beside the line's end
   * @param note a few words written below the name; may be empty
   * @param estimates one or more days in order
   */
  public Line(String name, String note, List<Estimate> estimates) {
    this(name, note, estimates, "");
  }

  public Line {
    estimates = List.copyOf(estimates);
    if (estimates.isEmpty()) {
      throw new IllegalArgumentException("line '" + name + "' has no days; give at least one");
    }
    for (int i = 1; i < estimates.size(); i++) {
      if (!estimates.get(i - 1).date().isBefore(estimates.get(i).date())) {
        throw new IllegalArgumentException(
            "line '"
                + name
                + "': "
                + estimates.get(i).date()
                + " does not come after "
                + estimates.get(i - 1).date()
                + "; give each day once, in order");
      }
    }
  }

  /** What is written below the name. */
  String words() {
    return note.isEmpty() || ended.isEmpty() ? note + ended : note + "; " + ended;
  }

  Estimate last() {
    return estimates.get(estimates.size() - 1);
  }
}
