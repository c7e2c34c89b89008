package broodtide.assessment;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * Plans that were played, of which those that were asked for last are kept. A plan that is asked
 * for again is played again, to the same figures, so that the days of many plans need not all be in
 * memory at once. Safe to share between threads.
 */
final class KeptRuns {
  /**
   * Simulated colonies, over all plans, whose days are kept: as many plans as anyone lays side by
   * side with the usual number of colonies, a single one with sixteen times as many. Choice.
   */
  static final int COLONIES = 65_536;

  private final int most;
  private final Map<Object, PlanRun.Played> kept = new LinkedHashMap<>(16, 0.75f, true);

  /**
   * Plans of so many simulated colonies each.
   *
   * @param members simulated colonies, 1 or more
   */
  KeptRuns(int members) {
    most = most(members);
  }

  /** How many plans of so many simulated colonies are kept, one at least. */
  static int most(int members) {
    return Math.max(1, COLONIES / Math.max(1, members));
  }

  /** Whether so many plans are kept all at once. */
  boolean holds(int plans) {
    return plans <= most;
  }

  /** Plays one plan more; it is played again when it is asked for and no longer kept. */
  Supplier<PlanRun.Played> of(Supplier<PlanRun.Played> play) {
    Object own = new Object();
    get(own, play);
    return () -> get(own, play);
  }

  private synchronized PlanRun.Played get(Object own, Supplier<PlanRun.Played> play) {
    PlanRun.Played known = kept.get(own);
    if (known == null) {
      while (kept.size() >= most) {
        // before the next is played, for both might not fit
        kept.remove(kept.keySet().iterator().next());
      }
      known = play.get();
      kept.put(own, known);
    }
    return known;
  }
}
