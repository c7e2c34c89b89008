package broodtide.decision;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.UsualPlans;
import broodtide.catalog.ControlTemplate;
import broodtide.control.Plan;
import broodtide.measure.Unworkable;
import broodtide.study.Study;
import java.util.List;
import java.util.Optional;

/**
 * Which plans are compared: the usual ones or those of a study, with plans of one's own beside them
 * or in their place. The same words mean the same on one machine and on a cluster.
 *
 * @param with what to use on each date of the usual plans; empty for what is usual
 * @param own plans of one's own
 * @param only whether to compare these with waiting alone
 * @since 0.2.0
 */
public record PlanChoice(Optional<ControlTemplate> with, List<Plan> own, boolean only) {
  /**
   * Checks that the parts go together.
   *
   * @throws Unworkable when a control is named beside plans, or there are no plans to be the only
   *     ones
   */
  public PlanChoice {
    own = List.copyOf(own);
    if (with.isPresent() && !own.isEmpty()) {
      throw new Unworkable(
          "--with and --plan cannot stand together: a plan names its own controls");
    }
    if (only && own.isEmpty()) {
      throw new Unworkable(
          "--only is for plans of your own; name them with --plan, or leave it out");
    }
  }

  /**
   * {@return the plans of a colony, waiting first}
   *
   * @param c the colony
   * @param study its study, whose plans stand in place of the usual ones; empty without one
   */
  public List<Plan> of(ColonyCase c, Optional<Study> study) {
    return UsualPlans.with(beside(c, study), own);
  }

  private List<Plan> beside(ColonyCase c, Optional<Study> study) {
    if (only) {
      return List.of(Plan.waiting(UsualPlans.WAIT));
    }
    return with.isEmpty() && study.isPresent()
        ? UsualPlans.besideWaiting(study.get().plans())
        : UsualPlans.of(c, with);
  }
}
