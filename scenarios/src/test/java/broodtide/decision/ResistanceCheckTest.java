package broodtide.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.EfficacyTrial;
import broodtide.catalog.NaturalFall;
import broodtide.fit.Prior;
import broodtide.measure.Tag;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

/** What strengths say of resistance, held against Bayes' rule for normal likelihoods. */
class ResistanceCheckTest {
  private static final Prior USUAL = prior(1, 0.6);
  private static final Prior RESISTED = prior(0.2, 0.9);

  private static Prior prior(double median, double logSd) {
    return new Prior("strength", median, logSd, 5, Tag.CHOICE, "invented");
  }

  /** Evenly spread members of a normal. */
  private static double[] members(double mean, double sd) {
    NormalDistribution normal = new NormalDistribution(null, mean, sd);
    return IntStream.range(0, 20_000)
        .mapToDouble(i -> normal.inverseCumulativeProbability((i + 0.5) / 20_000))
        .toArray();
  }

  /** The chance that a measurement of a strength gives, written down directly. */
  private static double byRule(double measured, double error) {
    double resisted =
        new NormalDistribution(null, Math.log(0.2), Math.hypot(0.9, error)).density(measured);
    double usual = new NormalDistribution(null, 0, Math.hypot(0.6, error)).density(measured);
    return resisted / (resisted + usual);
  }

  @Test
  void washesThatSayNothingLeaveTheOddsEven() {
    assertThat(ResistanceCheck.chance(members(0, TreatmentCheck.OPEN), 1, USUAL, RESISTED))
        .isCloseTo(0.5, within(0.01));
  }

  @Test
  void aMeasuredStrengthGivesTheChanceOfBayesRule() {
    for (double measured : new double[] {-2, -1, -0.5, 0, 0.3}) {
      double error = 0.5;
      double open = TreatmentCheck.OPEN * TreatmentCheck.OPEN;
      double variance = 1 / (1 / open + 1 / (error * error));
      double[] posterior = members(variance * measured / (error * error), Math.sqrt(variance));
      assertThat(ResistanceCheck.chance(posterior, 1, USUAL, RESISTED))
          .as("measured %s", measured)
          .isCloseTo(byRule(measured, error), within(0.01));
    }
  }

  @Test
  void oneMeasuredStrengthGivesTheSameChance() {
    for (double measured : new double[] {-2, -1, -0.5, 0, 0.3}) {
      assertThat(ResistanceCheck.chance(measured, 0.5, USUAL, RESISTED))
          .as("measured %s", measured)
          .isCloseTo(byRule(measured, 0.5), within(1e-12));
    }
  }

  /** The range that is told holds every untreated group that the library's trials name. */
  @Test
  void theNaturalFallIsThatOfTheTrials() {
    assertThat(
            Catalog.CONTROLS.names().stream()
                .map(Catalog::control)
                .map(ControlTemplate::efficacy)
                .flatMap(Optional::stream)
                .flatMap(e -> e.trials().stream())
                .map(EfficacyTrial::untreated)
                .flatMap(Optional::stream))
        .isNotEmpty()
        .allSatisfy(u -> assertThat(u).isBetween(NaturalFall.LEAST, NaturalFall.MOST));
  }
}
