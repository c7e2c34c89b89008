package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.LogNormalDistribution;
import org.junit.jupiter.api.Test;

/** Curves of unknowns, against the lognormal they come from. */
class DensityTest {
  private static final Prior PRIOR = Unknown.REPRODUCTION_FACTOR.usual();

  @Test
  void beforeIsTheLognormalOfThePrior() {
    Density before = Density.before(PRIOR);
    LogNormalDistribution lognormal =
        new LogNormalDistribution(null, Math.log(PRIOR.median()), PRIOR.logSd());
    for (int i = 0; i < before.values().length; i++) {
      assertThat(before.heights()[i])
          .isCloseTo(lognormal.density(before.values()[i]), within(1e-9));
    }
    assertThat(area(before)).as("two standard deviations").isCloseTo(0.9545, within(0.002));
  }

  /** Draws of half the spread, one standard deviation up, have their middle there. */
  @Test
  void afterStandsWhereTheDrawsAre() {
    SplittableRandom random = new SplittableRandom(3);
    double[] z =
        IntStream.range(0, 4000).mapToDouble(i -> 1 + 0.5 * random.nextGaussian()).toArray();
    Density after = Density.after(PRIOR, z);
    assertThat(area(after)).isBetween(0.98, 1.0);
    LogNormalDistribution truth =
        new LogNormalDistribution(null, Math.log(PRIOR.at(1)), 0.5 * PRIOR.logSd());
    double middle = PRIOR.at(1);
    int near =
        IntStream.range(0, after.values().length)
            .filter(i -> after.values()[i] >= middle)
            .findFirst()
            .orElseThrow();
    assertThat(after.heights()[near] / truth.density(after.values()[near]))
        .isCloseTo(1, within(0.08));
  }

  private static double area(Density d) {
    return IntStream.range(1, d.values().length)
        .mapToDouble(
            i -> (d.values()[i] - d.values()[i - 1]) * (d.heights()[i] + d.heights()[i - 1]) / 2)
        .sum();
  }
}
