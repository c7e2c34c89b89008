package broodtide.cluster;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.HiveRow;
import broodtide.control.Plan;
import broodtide.engine.Workers;
import broodtide.fit.SeasonBanks;
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
   * @param banks seasons that hives of one place and start share
   * @param workers one thread
   */
  HiveRow of(ColonyCase c, List<Plan> plans, Question question, SeasonBanks banks, Workers workers);
}
