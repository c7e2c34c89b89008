package broodtide.assessment;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.Quantity;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The figures of one plan that decisions rest on, worked out once. Tables, sentences, pictures and
 * files only format them.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param plan the plan, without what was already done
 * @param from the day on which its first measure begins; empty for waiting
 * @param winterLoss chance that the colony is lost, 0 to 1: see {@link PlanRun#losses()}
 * @param infestedWinterBrood median share of capped worker cells with a mite while winter bees are
 *     raised, of colonies that live to see it, 0 to 1; empty when none are raised in the forecast
 * @param infestation median mites per 100 adult bees of living colonies when the winter bees have
 *     been raised
 * @param courses miticide courses and other measures in it
 * @param daysWithSupers days on which one of its miticides acts while supers are usually on
 * @param lastControl the control that it uses last; empty for waiting
 */
public record PlanSummary(
    Plan plan,
    Optional<LocalDate> from,
    double winterLoss,
    OptionalDouble infestedWinterBrood,
    double infestation,
    int courses,
    int daysWithSupers,
    Optional<String> lastControl) {
  /**
   * {@return the figures of a plan that was played}
   *
   * @param run the plan
   */
  static PlanSummary of(PlanRun run) {
    List<Control> controls =
        run.plan().controls().stream().sorted(Comparator.comparing(Control::from)).toList();
    double brood = run.winterBrood().median();
    return new PlanSummary(
        run.plan(),
        controls.stream().map(Control::from).findFirst(),
        Arrays.stream(run.losses()).average().orElseThrow(),
        Double.isNaN(brood) ? OptionalDouble.empty() : OptionalDouble.of(brood),
        run.on(Quantity.INFESTATION, run.colony().winterBeesRaised()).median(),
        controls.size(),
        run.daysTreatedWithSupers(),
        controls.isEmpty()
            ? Optional.empty()
            : Optional.of(controls.get(controls.size() - 1).name()));
  }

  /** {@return whether the plan does nothing} */
  public boolean waits() {
    return plan.controls().isEmpty();
  }

  /** {@return whether a miticide is part of the plan} */
  public boolean treats() {
    return !plan.courses().isEmpty();
  }
}
