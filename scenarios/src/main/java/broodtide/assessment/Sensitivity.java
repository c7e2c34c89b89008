package broodtide.assessment;

import broodtide.engine.Workers;
import broodtide.fit.FirstOrderIndex;
import broodtide.fit.PriorSensitivity;
import broodtide.fit.TotalIndex;
import broodtide.fit.UnknownSummary;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which unknown matters: what share of the spread of a forecast one unknown accounts for, among the
 * colonies that fit the washes, for which nothing new is simulated; and what share it would account
 * for, by itself and together with others, if there were no washes. The forecast is the logarithm
 * of the infestation, for a few heavily infested colonies would else hide all others.
 *
 * @param unknown the unknown
 * @param index its share
 * @param beforehand its total index if there were no washes
 */
public record Sensitivity(UnknownSummary unknown, FirstOrderIndex index, TotalIndex beforehand) {
  /** Below this many mites per 100 bees colonies count as alike; choice. */
  private static final double ALIKE = 0.01;

  /** What is believed beforehand is the same for all seeds of a run. */
  private static final long SEED = 1;

  /**
   * {@return the share of every unknown for a plan on a day, in the order of the unknowns}
   *
   * @param comparison the plans that were played, by {@value FirstOrderIndex#LEAST} colonies or
   *     more
   * @param run the plan to look at
   * @param day the day on which its infestation is looked at
   * @param workers threads; their number does not change the result
   */
  public static List<Sensitivity> of(
      Comparison comparison, PlanRun run, LocalDate day, Workers workers) {
    double[] forecast = Arrays.stream(run.infestation(day)).map(Sensitivity::answer).toArray();
    List<PriorSensitivity> prior =
        PriorSensitivity.of(
            comparison.colony().season(run.plan()),
            comparison.posterior(),
            day,
            Sensitivity::answer,
            SEED,
            workers);
    List<Sensitivity> out = new ArrayList<>();
    for (UnknownSummary unknown : comparison.posterior().summaries()) {
      double[] draws = comparison.posterior().draws(unknown);
      TotalIndex total =
          prior.stream()
              .filter(p -> of(p, unknown))
              .map(PriorSensitivity::index)
              .findFirst()
              .orElseThrow();
      out.add(new Sensitivity(unknown, FirstOrderIndex.of(draws, forecast), total));
    }
    return out;
  }

  private static boolean of(PriorSensitivity p, UnknownSummary u) {
    return p.unknown() == u.unknown() && p.course() == u.course() && p.season() == u.season();
  }

  private static double answer(double perHundred) {
    return StrictMath.log(Math.max(ALIKE, perHundred));
  }
}
