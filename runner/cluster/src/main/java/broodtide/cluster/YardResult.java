package broodtide.cluster;

import broodtide.assessment.HiveUrgency;
import broodtide.assessment.RegionCount;
import java.io.Serializable;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What was worked out of one yard. It holds no simulated colony.
 *
 * @param key the yard
 * @param region its region
 * @param lines its hives, as the sheet has them
 * @param over how many of them are over the treatment threshold today; null where some have none
 * @param lost how many are lost by spring if all that can do so carry out a plan, by its name;
 *     empty where losses are not known
 * @param waiting the plan of those that do nothing
 * @param acid whether a plan that the sheet names for one of them uses an acid
 * @param rejected rows of hives of which nothing can be said
 * @param counts washes and boards that were used
 */
record YardResult(
    YardKey key,
    String region,
    List<Line> lines,
    @Nullable RegionCount over,
    Map<String, RegionCount> lost,
    String waiting,
    boolean acid,
    List<RejectedRow> rejected,
    int counts)
    implements Serializable {
  /**
   * A hive.
   *
   * @param urgency its place on the sheet
   * @param cells its row
   */
  record Line(HiveUrgency urgency, TableRow cells) implements Serializable {}
}
