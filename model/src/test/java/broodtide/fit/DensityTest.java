package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.Tag;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.LogNormalDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.stat.descriptive.moment.Variance;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Curves of unknowns, against the lognormal they come from. */
class DensityTest {
  private static final Prior PRIOR = Unknown.REPRODUCTION_FACTOR.usual();
  private static final Prior WIDE = new Prior("wide", 1.2, 0.5, 1e6, Tag.CHOICE, "invented");

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

  /** Half of the draws far apart, all in two places, and most in one place. */
  @ParameterizedTest
  @CsvSource({
    "-2 -1.1 -0.4 0 0.3 0.5 1.9",
    "-1 -1 -1 1 1 1",
    "0.2 0.2 0.2 0.2 0.2 0.2 3",
    "0.5 0.5 0.5"
  })
  void afterIsASumOfBells(String written) {
    double[] z = Arrays.stream(written.split(" ", -1)).mapToDouble(Double::parseDouble).toArray();
    int n = z.length;
    double sd = Math.sqrt(new Variance(false).evaluate(z));
    double middleHalf = quantile(z, 75) - quantile(z, 25);
    double spread = middleHalf > 0 ? Math.min(sd, middleHalf / 1.349) : sd;
    // Silverman 1986, section 3.4.2
    double width = Math.max(0.001, 0.9 * spread / Math.pow(n, 0.2));
    double from = quantile(z, 0.5) - width;
    double to = quantile(z, 99.5) + width;
    Density after = Density.after(WIDE, z);
    assertThat(after.values()).hasSize(121);
    for (int i = 0; i <= 120; i++) {
      double at = from + (to - from) * i / 120;
      double sum = 0;
      for (double draw : z) {
        sum += new NormalDistribution(null, draw, width).density(at) / n;
      }
      double value = 1.2 * Math.exp(0.5 * at);
      assertThat(after.values()[i]).isCloseTo(value, within(1e-9 * value));
      assertThat(after.heights()[i] * value * 0.5).isCloseTo(sum, within(1e-9 * (1 + sum)));
    }
  }

  private static double quantile(double[] z, double percent) {
    Percentile p = new Percentile().withEstimationType(Percentile.EstimationType.R_7);
    p.setData(z);
    return p.evaluate(percent);
  }

  /** What the model is never given has no height. */
  @Test
  void theCurveEndsBeforeTheMost() {
    Prior cut = new Prior("cut", 1, 0.5, Math.exp(0.5), Tag.CHOICE, "invented");
    Density before = Density.before(cut);
    // from minus two to one standard deviation, and not that one itself
    assertThat(before.values()).hasSize(90);
    assertThat(before.values()[89]).isLessThan(Math.exp(0.5));
  }

  /** Bells that the ends of 0 and 1 throw back, so that nothing lies beyond. */
  @ParameterizedTest
  @CsvSource({"0.02 0.1 0.4 0.93", "-0.2 0.5 1.3 1", "0.7 0.7 0.7"})
  void aShareIsASumOfBellsBetweenItsEnds(String written) {
    double[] draws =
        Arrays.stream(written.split(" ", -1)).mapToDouble(Double::parseDouble).toArray();
    double[] v = Arrays.stream(draws).map(d -> Math.min(1, Math.max(0, d))).toArray();
    double width =
        Math.max(0.01, 0.9 * Math.sqrt(new Variance(false).evaluate(v)) / Math.pow(v.length, 0.2));
    Density share = Density.ofShare(draws);
    assertThat(share.values()).hasSize(121);
    for (int i = 0; i <= 120; i++) {
      double x = i / 120.0;
      double sum = 0;
      for (double d : v) {
        for (double place : new double[] {d, -d, 2 - d}) {
          sum += new NormalDistribution(null, place, width).density(x) / v.length;
        }
      }
      assertThat(share.values()[i]).isCloseTo(x, within(1e-12));
      assertThat(share.heights()[i]).isCloseTo(sum, within(1e-9 * (1 + sum)));
    }
    assertThat(area(share)).isCloseTo(1, within(0.02));
  }

  private static double area(Density d) {
    return IntStream.range(1, d.values().length)
        .mapToDouble(
            i -> (d.values()[i] - d.values()[i - 1]) * (d.heights()[i] + d.heights()[i - 1]) / 2)
        .sum();
  }
}
