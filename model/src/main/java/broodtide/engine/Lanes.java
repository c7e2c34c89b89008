package broodtide.engine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The members of a block laid out as one array per trait, for the engine's loops. What changes with
 * the season stands as on the day that was last entered.
 */
final class Lanes {
  final double[] strength;
  final double[] vigour;
  final double[] immigration;
  final double[] infectivity;

  /** One row per miticide course of the plan. */
  final double[][] success;

  private final double[] usualVigour;
  private final double[] usualImmigration;

  /** What changes on a day, by days since the start; null where nothing does. */
  private final @Nullable Factors[] changes;

  /** New factors by lane; NaN where nothing changes. */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  private record Factors(double[] growth, double[] arrivals) {
    Factors(Rows rows) {
      this(rows.row(), rows.row());
      Arrays.fill(growth, Double.NaN);
      Arrays.fill(arrivals, Double.NaN);
    }
  }

  /** The factors that begin on a day. */
  private record Begun(LocalDate from, Factors factors) {}

  /**
   * Lays the members out.
   *
   * @param start first day of the run
   * @param rows makes the arrays
   * @param courses miticide courses in the plan
   */
  Lanes(List<SimulatedColony> members, LocalDate start, Rows rows, int courses) {
    strength = rows.row();
    vigour = rows.row();
    immigration = rows.row();
    infectivity = rows.row();
    success = rows.rows(courses);
    // members of one posterior mostly change on the same days, so each is looked up once
    List<Begun> known = new ArrayList<>();
    SortedMap<Integer, Factors> byDay = new TreeMap<>();
    for (int l = 0; l < members.size(); l++) {
      SimulatedColony m = members.get(l);
      strength[l] = m.strength();
      vigour[l] = m.vigour();
      immigration[l] = m.immigration();
      infectivity[l] = m.infectivity();
      for (int c = 0; c < courses; c++) {
        success[c][l] = c < m.success().size() ? m.success().get(c) : 1;
      }
      for (int k = 0; k < m.changes().size(); k++) {
        SeasonChange change = m.changes().get(k);
        if (k == known.size() || !known.get(k).from.equals(change.from())) {
          // of those before the start the last one holds, since they come in the order of days
          int day = (int) Math.max(0, change.from().toEpochDay() - start.toEpochDay());
          Begun begun =
              new Begun(change.from(), byDay.computeIfAbsent(day, d -> new Factors(rows)));
          known.subList(k, known.size()).clear();
          known.add(begun);
        }
        Factors factors = known.get(k).factors;
        factors.growth[l] = change.growth();
        factors.arrivals[l] = change.arrivals();
      }
    }
    changes = new Factors[byDay.isEmpty() ? 0 : byDay.lastKey() + 1];
    byDay.forEach((day, factors) -> changes[day] = factors);
    usualVigour = vigour.clone();
    usualImmigration = immigration.clone();
  }

  /** Sets the factor on the mites that come from outside where the season changes nothing. */
  void arriving(int lane, double factor) {
    immigration[lane] = factor;
    usualImmigration[lane] = factor;
  }

  /** Takes in what changes on a day. Days must be entered one after the other. */
  void enter(int day) {
    Factors factors = day < changes.length ? changes[day] : null;
    if (factors == null) {
      return;
    }
    for (int l = 0; l < vigour.length; l++) {
      if (!Double.isNaN(factors.growth[l])) {
        vigour[l] = usualVigour[l] * factors.growth[l];
        immigration[l] = usualImmigration[l] * factors.arrivals[l];
      }
    }
  }
}
