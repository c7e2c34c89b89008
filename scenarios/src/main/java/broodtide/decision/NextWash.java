package broodtide.decision;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.Outcome;
import broodtide.assessment.PlanRun;
import broodtide.assessment.WashGain;
import broodtide.engine.Survival;
import broodtide.fit.ExpectedWashes;
import broodtide.wash.Wash;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Which hive to wash next: what a wash of {@value #BEES} bees on the decision date is worth for the
 * choice between plans that were played already. Every count weighs the same simulated colonies
 * anew, the best plan after it is chosen, and all is averaged over the counts; nothing is simulated
 * again. Each treatment costs what {@link Outcome#LOST} says, as in {@link WashWorth}.
 *
 * <p>Hives are read alone, so that what washes of several are worth adds up.
 */
public final class NextWash {
  /** Bees in the wash. */
  public static final int BEES = 300;

  /** Simulated colonies that are weighed. */
  private static final int ENOUGH = 1000;

  private NextWash() {}

  /**
   * {@return what a wash on the decision date is worth; empty where there is one plan only, or
   * where winter losses are not known}
   *
   * @param comparison plans that were played
   */
  public static Optional<WashGain> of(Comparison comparison) {
    ColonyCase c = comparison.colony();
    List<PlanRun> runs = comparison.runs();
    if (runs.size() < 2 || c.springLow().isEmpty() || !Survival.hasWinter(c.model().climate())) {
      return Optional.empty();
    }
    int n = Math.min(ENOUGH, comparison.posterior().members().size());
    double[][] losses = new double[runs.size()][];
    for (int a = 0; a < losses.length; a++) {
      double trouble = Outcome.LOST.usualCost() * WashWorth.measures(runs.get(a).plan());
      losses[a] = Arrays.stream(Outcome.LOST.of(runs.get(a)), 0, n).map(v -> v + trouble).toArray();
    }
    double[] weight = new double[n];
    Arrays.fill(weight, 1.0 / n);
    double[] truth = Arrays.copyOf(comparison.reference().infestation(c.now()), n);
    Wash wash = Wash.of(c.now(), c.colony(), 0, BEES);
    Preposterior washed =
        Preposterior.of(
            ExpectedWashes.byCount(comparison.posterior(), truth, wash), weight, losses);
    int blind = Preposterior.bestBlind(weight, losses);
    double changes = 0;
    for (int y = 0; y < washed.best().length; y++) {
      changes += washed.best()[y] == blind ? 0 : washed.chance()[y];
    }
    double gain = Preposterior.blind(weight, losses) - washed.value();
    return Optional.of(new WashGain(Math.max(0, gain), Math.min(1, changes)));
  }
}
