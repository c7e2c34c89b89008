package broodtide.words;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.CourseEfficacy;
import broodtide.assessment.PlanRun;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What the treatments of plans take where they were tried, in words. */
public final class EfficacyWords {
  private EfficacyWords() {}

  /**
   * {@return one sentence for all plans; empty when none treats with a miticide of the library}
   *
   * @param comparison the plans that were played
   */
  public static Optional<String> sentence(Comparison comparison) {
    ColonyCase c = comparison.colony();
    List<CourseEfficacy> all =
        comparison.runs().stream()
            .flatMap(run -> CourseEfficacy.of(run.plan(), c.priors()).stream())
            .distinct()
            .toList();
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Share of all mites killed in trials, with 90 % interval: "
                + all.stream().map(EfficacyWords::spelled).collect(Collectors.joining("; "))
                + ". The plans above also take brood, season and weather into account.");
  }

  private static String spelled(CourseEfficacy e) {
    return e.control()
        + " takes "
        + middle(e)
        + " ("
        + range(e)
        + "; "
        + (e.resisted()
            ? "where mites resist it"
            : e.trials() == 0 ? "from memory" : Digits.counted(e.trials(), "trial"))
        + ")";
  }

  /**
   * {@return what each miticide of a plan takes, in the order of the plan; empty when it treats
   * with none of the library}
   *
   * @param run a plan that was played
   */
  public static List<CourseEfficacy> of(PlanRun run) {
    return CourseEfficacy.of(run.plan(), run.colony().priors());
  }

  /** {@return the share in the middle: {@code 87 %}} */
  public static String middle(CourseEfficacy e) {
    return Digits.percent(e.share());
  }

  /** {@return the range of nine in ten: {@code 46 to 98 %}} */
  public static String range(CourseEfficacy e) {
    return Digits.percents(e.low(), e.high());
  }
}
