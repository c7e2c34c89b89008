package broodtide.engine;

import java.util.List;

/** The members of a block laid out as one array per trait, for the engine's loops. */
final class Lanes {
  final double[] strength;
  final double[] vigour;
  final double[] immigration;
  final double[] infectivity;

  /** One row per miticide course of the plan. */
  final double[][] success;

  /**
   * Lays the members out.
   *
   * @param rows makes the arrays
   * @param courses miticide courses in the plan
   */
  Lanes(List<SimulatedColony> members, Rows rows, int courses) {
    strength = rows.row();
    vigour = rows.row();
    immigration = rows.row();
    infectivity = rows.row();
    success = rows.rows(courses);
    for (int l = 0; l < members.size(); l++) {
      SimulatedColony m = members.get(l);
      strength[l] = m.strength();
      vigour[l] = m.vigour();
      immigration[l] = m.immigration();
      infectivity[l] = m.infectivity();
      for (int c = 0; c < courses; c++) {
        success[c][l] = c < m.success().size() ? m.success().get(c) : 1;
      }
    }
  }
}
