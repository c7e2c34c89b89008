package broodtide.assessment;

import java.util.ArrayList;
import java.util.List;

/**
 * One plan for some hives of an apiary while the others wait.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param whom which hives it is given to
 * @param plan name of the plan
 * @param treated hives it is given to; those that cannot carry it out wait
 * @param lost how many hives of the apiary are lost by spring, from any cause
 * @param saved how many fewer these are than if all wait
 * @param mitesInLost mites in hives of the apiary when they are lost, on average: the most that
 *     robbers can carry to other colonies
 */
public record ApiaryPlan(
    Whom whom, String plan, int treated, ApiaryCount lost, ApiarySaving saved, double mitesInLost) {
  /** Which hives a plan is given to. */
  public enum Whom {
    /** None: all wait. */
    NONE("none"),
    /** Those that are probably over the treatment threshold today. */
    THOSE_OVER("those-over"),
    /** All. */
    ALL("all");

    private final String id;

    Whom(String id) {
      this.id = id;
    }

    /** {@return the word in files} */
    public String id() {
      return id;
    }

    boolean takes(HiveRow row) {
      return this == ALL || (this == THOSE_OVER && row.probablyOver());
    }
  }

  /**
   * {@return one plan for some hives of an apiary}
   *
   * @param whom which hives it is given to
   * @param plan name of the plan
   * @param rows the hives; those of which losses are not known are not counted
   */
  public static ApiaryPlan of(Whom whom, String plan, List<HiveRow> rows) {
    List<HiveLoss> lost = new ArrayList<>();
    List<ApiarySaving.Hive> treated = new ArrayList<>();
    for (HiveRow row : rows) {
      HiveLoss waiting = row.lost().get(row.decision().waiting().plan().name());
      HiveLoss with = whom.takes(row) ? row.lost().get(plan) : null;
      if (waiting == null) {
        continue;
      }
      lost.add(with == null ? waiting : with);
      if (with != null) {
        treated.add(new ApiarySaving.Hive(waiting.chance(), with.chance()));
      }
    }
    return new ApiaryPlan(
        whom,
        plan,
        treated.size(),
        ApiaryCount.of(lost.stream().map(HiveLoss::chance).toList()),
        ApiarySaving.of(treated),
        lost.stream().mapToDouble(HiveLoss::mites).sum());
  }
}
