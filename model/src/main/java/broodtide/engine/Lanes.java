package broodtide.engine;

import java.util.List;

/** The members of a block laid out as one array per trait, for the engine's loops. */
final class Lanes {
  final double[] strength;
  final double[] vigour;
  final double[] immigration;

  /** One row per miticide course of the plan. */
  final double[][] success;

  /**
   * Lays the members out.
   *
   * @param width length of the arrays, at least the number of members; the rest stays zero
   * @param courses miticide courses in the plan
   */
  Lanes(List<Member> members, int width, int courses) {
    strength = new double[width];
    vigour = new double[width];
    immigration = new double[width];
    success = new double[courses][width];
    for (int l = 0; l < members.size(); l++) {
      Member m = members.get(l);
      strength[l] = m.strength();
      vigour[l] = m.vigour();
      immigration[l] = m.immigration();
      for (int c = 0; c < courses; c++) {
        success[c][l] = c < m.success().size() ? m.success().get(c) : 1;
      }
    }
  }
}
