package broodtide.assessment;

import broodtide.fit.FirstOrderIndex;
import broodtide.fit.UnknownSummary;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which unknown matters: what share of the spread of a forecast one unknown accounts for, among the
 * colonies that fit the washes. Nothing new is simulated. The forecast is the logarithm of the
 * infestation, for a few heavily infested colonies would else hide all others.
 *
 * @param unknown the unknown
 * @param index its share
 */
public record Sensitivity(UnknownSummary unknown, FirstOrderIndex index) {
  /** Below this many mites per 100 bees colonies count as alike; choice. */
  private static final double ALIKE = 0.01;

  /**
   * {@return the share of every unknown for a plan on a day, in the order of the unknowns}
   *
   * @param comparison the plans that were played, by {@value FirstOrderIndex#LEAST} colonies or
   *     more
   * @param run the plan to look at
   * @param day the day on which its infestation is looked at
   */
  public static List<Sensitivity> of(Comparison comparison, PlanRun run, LocalDate day) {
    double[] forecast =
        Arrays.stream(run.infestation(day)).map(v -> StrictMath.log(Math.max(ALIKE, v))).toArray();
    List<Sensitivity> out = new ArrayList<>();
    for (UnknownSummary unknown : comparison.posterior().summaries()) {
      double[] draws = comparison.posterior().draws(unknown);
      out.add(new Sensitivity(unknown, FirstOrderIndex.of(draws, forecast)));
    }
    return out;
  }
}
