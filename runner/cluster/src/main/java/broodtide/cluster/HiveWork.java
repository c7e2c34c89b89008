package broodtide.cluster;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.HiveRow;
import broodtide.control.Plan;
import broodtide.engine.Workers;
import java.io.Serializable;
import java.util.List;

/** Works out one hive. */
@FunctionalInterface
interface HiveWork extends Serializable {
  /**
   * {@return the hive's row of the sheet}
   *
   * @param c the hive in its yard
   * @param plans what to play
   * @param question what is asked
   * @param workers one thread
   */
  HiveRow of(ColonyCase c, List<Plan> plans, Question question, Workers workers);
}
