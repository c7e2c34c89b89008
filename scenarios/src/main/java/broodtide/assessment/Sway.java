package broodtide.assessment;

import broodtide.fit.UnknownSummary;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How far one unknown sways a forecast: the colonies that fit the washes are sorted by it, and the
 * forecasts of the lowest and the highest third are laid side by side. Nothing new is simulated.
 *
 * @param unknown the unknown
 * @param low middle infestation of the third in which the unknown is lowest, mites per 100 bees
 * @param high the same where it is highest
 */
public record Sway(UnknownSummary unknown, double low, double high) {
  /**
   * {@return sways of every unknown for a plan on a day, in the order of the unknowns}
   *
   * @param comparison the plans that were played
   * @param run the plan to look at
   * @param day the day on which its infestation is looked at
   */
  public static List<Sway> of(Comparison comparison, PlanRun run, LocalDate day) {
    double[][] z = comparison.posterior().sample().z();
    double[] infestation = run.infestation(day);
    List<UnknownSummary> unknowns = comparison.posterior().summaries();
    List<Sway> out = new ArrayList<>();
    for (int d = 0; d < unknowns.size(); d++) {
      int column = d;
      // The sort is stable, so that equals keep the order of the sample.
      int[] order =
          IntStream.range(0, z.length)
              .boxed()
              .sorted(Comparator.comparingDouble(i -> z[i][column]))
              .mapToInt(i -> i)
              .toArray();
      int third = z.length / 3;
      out.add(
          new Sway(
              unknowns.get(d),
              middle(infestation, order, 0, third),
              middle(infestation, order, z.length - third, z.length)));
    }
    return out;
  }

  /**
   * {@return how many times as large the larger of the two is; 1 when the unknown does not matter}
   */
  public double factor() {
    double least = Math.max(1e-9, Math.min(low, high));
    return Math.max(least, Math.max(low, high)) / least;
  }

  private static double middle(double[] values, int[] order, int from, int to) {
    return Spread.of(IntStream.range(from, to).mapToDouble(i -> values[order[i]]).toArray())
        .median();
  }
}
