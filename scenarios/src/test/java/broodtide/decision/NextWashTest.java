package broodtide.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.Invented;
import broodtide.assessment.Outcome;
import broodtide.assessment.UsualPlans;
import broodtide.assessment.WashGain;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.ExpectedWashes;
import broodtide.wash.Wash;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a wash of a hive is worth before the apiary is decided. */
class NextWashTest {
  /** Of a colony that is known already, a wash tells nothing. */
  @Test
  void aWashOfAKnownColonyIsWorthNothing() {
    WashGain gain = NextWash.of(compared(Invented.known(1.5), 32, true)).orElseThrow();
    assertThat(gain.gain()).isCloseTo(0, within(1e-9));
    assertThat(gain.changes()).isCloseTo(0, within(1e-9));
    assertThat(gain.worthIt()).isFalse();
  }

  @Test
  void nothingIsChosenBetweenWhereOneWaitsOnlyOrSpringIsNotSeen() {
    assertThat(NextWash.of(compared(Invented.colony(), 32, false))).isEmpty();
    ColonyCase brief = Invented.colony();
    try (Workers workers = new Workers(2)) {
      Comparison untilDecember =
          Comparison.of(
              brief,
              Invented.posterior(brief, 32, workers),
              UsualPlans.of(brief),
              workers,
              Progress.NONE);
      assertThat(NextWash.of(untilDecember)).isEmpty();
    }
  }

  /** Summed up in plain loops, count by count: choose the plan of the least expected loss. */
  @Test
  void eachCountIsAnsweredByItsBestPlan() {
    ColonyCase c = Invented.colony().throughWinter();
    Comparison comparison = compared(c, 256, true);
    double[] truth = comparison.reference().infestation(c.now());
    double[][] counts =
        ExpectedWashes.byCount(
            comparison.posterior(), truth, Wash.of(c.now(), c.colony(), 0, NextWash.BEES));
    int n = truth.length;
    double washed = 0;
    double blind = Double.POSITIVE_INFINITY;
    double known = 0;
    double[][] loss = new double[comparison.runs().size()][];
    for (int a = 0; a < loss.length; a++) {
      loss[a] = Outcome.LOST.of(comparison.runs().get(a));
      int applications =
          comparison.runs().get(a).plan().controls().stream()
              .mapToInt(control -> control.applications())
              .sum();
      double mean = 0;
      for (int s = 0; s < n; s++) {
        loss[a][s] += 0.02 * applications;
        mean += loss[a][s] / n;
      }
      blind = Math.min(blind, mean);
    }
    for (int s = 0; s < n; s++) {
      double least = Double.POSITIVE_INFINITY;
      for (double[] l : loss) {
        least = Math.min(least, l[s]);
      }
      known += least / n;
    }
    for (double[] count : counts) {
      double least = Double.POSITIVE_INFINITY;
      for (double[] l : loss) {
        double sum = 0;
        for (int s = 0; s < n; s++) {
          sum += count[s] * l[s] / n;
        }
        least = Math.min(least, sum);
      }
      washed += least;
    }
    WashGain gain = NextWash.of(comparison).orElseThrow();
    assertThat(gain.gain()).isCloseTo(blind - washed, within(1e-9));
    assertThat(gain.gain()).isBetween(0.0, blind - known);
    assertThat(gain.changes()).isBetween(0.0, 1.0);
  }

  private static Comparison compared(ColonyCase colony, int members, boolean plans) {
    ColonyCase c = colony.throughWinter();
    try (Workers workers = new Workers(2)) {
      List<Plan> laid = plans ? UsualPlans.of(c) : List.of(Plan.waiting(UsualPlans.WAIT));
      return Comparison.of(
          c, Invented.posterior(c, members, workers), laid, workers, Progress.NONE);
    }
  }
}
