package broodtide.assessment;

import broodtide.control.Control;
import broodtide.engine.Survival;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.stat.StatUtils;

/**
 * Plans of one colony in order, by winter loss alone. A plan is tied with the one of lowest winter
 * loss unless its loss is higher in at least {@value #CLEARLY} of 100 simulated colonies, each with
 * its own draw of efficacy, and the mean losses differ by at least {@value #APART}. Among tied
 * plans the first is the one with less infested winter-bee brood where more than {@value
 * #BROOD_APART} apart, then the one with fewer measures, then the one with no supers in the way,
 * then the one that does not use the control used last. The thresholds are choices.
 *
 * <p>In climates whose winter losses nothing published tells, plans are ranked by infested winter
 * brood in the same way.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param best the plan to name first; it may be waiting
 * @param tied the other plans that the simulated colonies cannot tell from it, in their order
 */
public record PlanRanking(PlanSummary best, List<PlanSummary> tied) {
  /** Simulated colonies of 100 in which a plan must lose more to be called worse. */
  static final int CLEARLY = 80;

  /** Least difference of mean losses that is one. */
  public static final double APART = 0.02;

  /** Least difference of infested winter-bee brood that is one. */
  static final double BROOD_APART = 0.01;

  /** Copies the list. */
  public PlanRanking {
    tied = List.copyOf(tied);
  }

  /** A plan with its losses. */
  @SuppressWarnings("ArrayRecordComponent") // thousands of figures, read only, never compared
  private record Candidate(PlanSummary summary, double[] losses) {
    double mean() {
      return Arrays.stream(losses).average().orElseThrow();
    }
  }

  /**
   * {@return the ranking of plans that the same simulated colonies played}
   *
   * @param runs at least one plan, all of one colony
   */
  public static PlanRanking of(List<PlanRun> runs) {
    ColonyCase c = runs.get(0).colony();
    boolean winter = Survival.hasWinter(c.model().climate()) || !c.raisesWinterBees();
    return of(
        runs,
        PlanRun::summary,
        winter ? PlanRun::losses : PlanRun::winterBroodInfested,
        lastUsed(c));
  }

  /** The control that was used last of those already given. */
  private static Optional<String> lastUsed(ColonyCase c) {
    return c.given().stream().max(Comparator.comparing(Control::from)).map(Control::name);
  }

  static PlanRanking of(
      List<PlanRun> runs,
      Function<PlanRun, PlanSummary> summary,
      Function<PlanRun, double[]> losses,
      Optional<String> usedLast) {
    List<Candidate> all =
        runs.stream().map(r -> new Candidate(summary.apply(r), losses.apply(r))).toList();
    Candidate lowest = all.stream().min(Comparator.comparingDouble(Candidate::mean)).orElseThrow();
    List<PlanSummary> level =
        all.stream().filter(c -> !worse(c, lowest)).map(Candidate::summary).toList();
    PlanSummary first = first(level, usedLast);
    return new PlanRanking(first, level.stream().filter(s -> s != first).toList());
  }

  private static boolean worse(Candidate c, Candidate lowest) {
    return clearlyHigher(c.losses(), lowest.losses(), APART);
  }

  /**
   * {@return whether figures are so much higher than others that the two are not tied: higher in
   * mean by at least a margin and in at least {@value #CLEARLY} of 100 simulated colonies}
   *
   * @param figures by member
   * @param lowest figures of the same members
   * @param apart the margin, in the unit of the figures
   */
  public static boolean clearlyHigher(double[] figures, double[] lowest, double apart) {
    return StatUtils.mean(figures) - StatUtils.mean(lowest) >= apart
        && shareHigher(figures, lowest) >= CLEARLY / 100.0;
  }

  private static double shareHigher(double[] a, double[] b) {
    int higher = 0;
    for (int m = 0; m < a.length; m++) {
      higher += a[m] > b[m] ? 1 : 0;
    }
    return (double) higher / a.length;
  }

  /** The first among equals. */
  private static PlanSummary first(List<PlanSummary> level, Optional<String> usedLast) {
    List<PlanSummary> left = new ArrayList<>(level);
    keep(left, s -> s.infestedWinterBrood().orElse(0), BROOD_APART);
    keep(left, PlanSummary::courses, 0);
    keep(left, s -> s.daysWithSupers() > 0 ? 1 : 0, 0);
    keep(left, s -> s.lastControl().isPresent() && s.lastControl().equals(usedLast) ? 1 : 0, 0);
    return left.get(0);
  }

  /** Keeps the plans that are within a margin of the least. */
  private static void keep(
      List<PlanSummary> left, ToDoubleFunction<PlanSummary> figure, double margin) {
    double least = left.stream().mapToDouble(figure).min().orElseThrow();
    left.removeIf(s -> figure.applyAsDouble(s) > least + margin);
  }
}
