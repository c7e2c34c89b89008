package broodtide.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Arrays;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WashDrawsTest {
  private static final LocalDate DAY = LocalDate.of(2026, 6, 1);

  /** Against the quantiles of Commons Math. */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({"300,0.03", "300,0.0001", "300,0.5", "1000,0.93", "50,0.999"})
  void countsAreQuantilesOfTheBinomial(int bees, double p) {
    BinomialDistribution binomial = new BinomialDistribution(null, bees, p);
    for (double u = 0.0005; u < 1; u += 0.0137) {
      assertThat(WashDraws.binomial(bees, p, u))
          .isEqualTo(binomial.inverseCumulativeProbability(u));
    }
  }

  @Test
  void noMitesNoCountAndFullIsFull() {
    assertThat(WashDraws.binomial(300, 0, 0.999)).isZero();
    assertThat(WashDraws.binomial(300, 1, 0.001)).isEqualTo(300);
  }

  /**
   * Mean n p and, by the law of total variance for a gamma factor of size k, variance n p (1 - p) +
   * n (n - 1) p^2 / k; p is small enough that a factor never reaches p = 1.
   */
  @Test
  void meanAndVarianceOfCounts() {
    int members = 40_000;
    double[] sizes = new double[members];
    Arrays.fill(sizes, 5);
    WashRound round = new WashRound(DAY, DAY, 30, 300, 0.9, 0.2);
    WashDraws luck = WashDraws.of(round, sizes, 1, 7);
    double[] counts = new double[members];
    for (int m = 0; m < members; m++) {
      counts[m] = luck.count(0, m, 3);
    }
    double p = 0.027;
    double k = 1 / (1 / 5.0 + 0.04);
    double variance = 300 * p * (1 - p) + 300 * 299 * p * p / k;
    assertThat(StatUtils.mean(counts))
        .isCloseTo(300 * p, within(4 * Math.sqrt(variance / members)));
    assertThat(StatUtils.variance(counts)).isCloseTo(variance, within(0.05 * variance));
  }

  @Test
  void aMembersLuckDoesNotHangOnHowManyThereAre() {
    WashRound round = WashRound.usual(DAY, DAY.plusDays(60), 30, 300);
    WashDraws few = WashDraws.of(round, new double[] {5, 5}, 3, 7);
    WashDraws many = WashDraws.of(round, new double[] {5, 5, 5, 5}, 3, 7);
    for (int k = 0; k < 3; k++) {
      assertThat(few.count(k, 1, 4)).isEqualTo(many.count(k, 1, 4));
    }
  }
}
