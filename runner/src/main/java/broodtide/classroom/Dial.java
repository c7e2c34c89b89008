package broodtide.classroom;

import broodtide.measure.OutOfRange;
import broodtide.web.Query;

/**
 * A number that the explorer lets one turn.
 *
 * @param name its name in addresses
 * @param label what it is, for people
 * @param unit its unit; {@code 1} for a pure number
 * @param min lower end
 * @param max upper end
 * @param step from one place of the slider to the next
 * @param start where it stands at first
 */
record Dial(
    String name, String label, String unit, double min, double max, double step, double start) {
  /** The range in words. */
  String range() {
    return OutOfRange.range(min, max, unit);
  }

  /** The number that an address gives, or the start when it gives none. */
  double in(Query query) {
    return query.number(name, start, min, max, range());
  }
}
