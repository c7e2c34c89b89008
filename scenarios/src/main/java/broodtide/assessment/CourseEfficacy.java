package broodtide.assessment;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.ControlTemplate.Efficacy;
import broodtide.catalog.EfficacyTrial;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.fit.Prior;
import broodtide.fit.Priors;
import java.util.List;
import java.util.Optional;

/**
 * What a miticide of the library takes where it was tried: one colony in one trial. At another
 * place its brood, season and weather decide, which the simulated colonies take into account.
 * Immutable.
 *
 * @param control short name of the control
 * @param share share of all mites that it takes in the middle, 0 to 1
 * @param low share that nineteen colonies of twenty exceed
 * @param high share that one colony of twenty exceeds
 * @param trials trials behind it; 0 where it is a figure without one
 * @param resisted whether mites are taken to resist it
 */
public record CourseEfficacy(
    String control, double share, double low, double high, int trials, boolean resisted) {
  /**
   * {@return what each miticide of a plan takes, in the order of the plan, each once}
   *
   * @param plan the plan
   * @param priors what is believed at the place; says which miticides are resisted
   */
  public static List<CourseEfficacy> of(Plan plan, Priors priors) {
    return plan.courses().stream()
        .map(course -> of(course, priors))
        .flatMap(Optional::stream)
        .distinct()
        .toList();
  }

  private static Optional<CourseEfficacy> of(MiticideCourse course, Priors priors) {
    String name = course.substance().name();
    if (!Catalog.CONTROLS.names().contains(name)) {
      return Optional.empty();
    }
    ControlTemplate template = Catalog.control(name);
    boolean resisted = priors.efficacies().containsKey(name);
    return template
        .efficacy()
        .map(
            e ->
                resisted && e.resistant().isPresent()
                    ? new CourseEfficacy(
                        name,
                        e.resistant().get().share(),
                        e.resistant().get().share(-Prior.NINE_IN_TEN),
                        e.resistant().get().share(Prior.NINE_IN_TEN),
                        1,
                        true)
                    : new CourseEfficacy(
                        name,
                        e.share(),
                        e.share(-Prior.NINE_IN_TEN),
                        e.share(Prior.NINE_IN_TEN),
                        trials(e),
                        false));
  }

  private static int trials(Efficacy efficacy) {
    return (int) efficacy.trials().stream().filter(EfficacyTrial::pooled).count();
  }
}
