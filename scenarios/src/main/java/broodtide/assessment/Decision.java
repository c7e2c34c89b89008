package broodtide.assessment;

import broodtide.control.Plan;
import broodtide.engine.Survival;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * The one answer to "what now?" for a colony, the same whatever is asked of it: where it stands on
 * the decision date, what waiting leads to, and the plan that helps most or cannot be told from it.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param date the day from which plans may begin
 * @param thresholdSet name of the set of treatment thresholds
 * @param threshold the treatment threshold on that day, mites per 100 adult bees as a wash shows
 *     them; empty where the set has none
 * @param overThresholdToday chance that a wash would on average show more than it, 0 to 1; empty
 *     without a threshold
 * @param winterLossTold whether winter losses can be told in the climate; where not, they are not
 *     to be shown
 * @param reachesSpring whether the forecast reaches the spring that shows whether a colony came
 *     through; where not, losses are those by its last day
 * @param reachesWinterBees whether the forecast reaches the day on which the winter bees have been
 *     raised; where not, infestations are those of its last day
 * @param waiting what waiting leads to
 * @param ranking the plans in order; empty where no plans were laid
 */
public record Decision(
    LocalDate date,
    String thresholdSet,
    OptionalDouble threshold,
    OptionalDouble overThresholdToday,
    boolean winterLossTold,
    boolean reachesSpring,
    boolean reachesWinterBees,
    PlanSummary waiting,
    Optional<PlanRanking> ranking) {
  /**
   * {@return the decision that a comparison leads to}
   *
   * @param comparison plans that were played, waiting among them
   */
  static Decision of(Comparison comparison) {
    ColonyCase c = comparison.colony();
    PlanRun waiting = comparison.reference();
    Optional<Double> threshold = c.stages().thresholdOn(c.thresholds(), c.now());
    return new Decision(
        c.now(),
        c.thresholds().name(),
        threshold.map(OptionalDouble::of).orElseGet(OptionalDouble::empty),
        threshold
            .map(t -> OptionalDouble.of(waiting.chanceOver(t, c.now())))
            .orElseGet(OptionalDouble::empty),
        Survival.hasWinter(c.model().climate()),
        c.springLow().isPresent(),
        !c.stages().winterBeesRaised(c.now()).isAfter(c.until()),
        waiting.summary(),
        Optional.of(PlanRanking.of(comparison.runs())));
  }

  /**
   * {@return the decision of a colony for which no plans are laid: the same figures of waiting as
   * beside plans}
   *
   * @param waiting waiting alone, of a case that looks ahead {@linkplain ColonyCase#throughWinter
   *     as far} as beside plans
   */
  static Decision ofWaiting(Comparison waiting) {
    Decision d = waiting.decision();
    return new Decision(
        d.date,
        d.thresholdSet,
        d.threshold,
        d.overThresholdToday,
        d.winterLossTold,
        d.reachesSpring,
        d.reachesWinterBees,
        d.waiting,
        Optional.empty());
  }

  /** {@return whether the winter losses of its plans are known} */
  public boolean knowsWinterLoss() {
    return winterLossTold && reachesSpring;
  }

  /**
   * {@return whether a colony is over a treatment threshold: whether an alcohol wash of it would
   * show more on average}
   *
   * @param infestation its mites per 100 adult bees
   * @param threshold mites per 100 adult bees
   */
  public static boolean over(double infestation, double threshold) {
    return PlanRun.SHOWN_BY_A_WASH * infestation > threshold;
  }

  /**
   * {@return the infestation, in mites per 100 adult bees, of which an alcohol wash shows a
   * treatment threshold on average: where the threshold lies in a picture of infestations}
   *
   * @param threshold mites per 100 adult bees as a wash shows them
   */
  public static double infestationAt(double threshold) {
    return threshold / PlanRun.SHOWN_BY_A_WASH;
  }

  /** {@return the plan to name first, which may be waiting; waiting where no plans were laid} */
  public PlanSummary best() {
    return ranking.map(PlanRanking::best).orElse(waiting);
  }

  /** {@return the best plan and those that are tied with it} */
  public Stream<Plan> named() {
    return Stream.concat(
            Stream.of(best()), ranking.stream().flatMap(ranked -> ranked.tied().stream()))
        .map(PlanSummary::plan);
  }

  /** {@return names of the plans that are tied with the best} */
  public List<String> tied() {
    return ranking.stream().flatMap(r -> r.tied().stream()).map(s -> s.plan().name()).toList();
  }
}
