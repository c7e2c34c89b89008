package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Count distributions against SciPy 1.17.1 and hand-worked cases. */
class CountDistributionTest {
  private static final double[] MEANS = {1, 4, 20};
  private static final double[] SIZES = {5, 10, 2};

  /** {@code scipy.stats.nbinom.logpmf(y, k, k / (k + mu))}. */
  @ParameterizedTest
  @Tag("outside")
  @CsvSource({
    "3.2, 10, 0, -2.776317365982795",
    "3.2, 10, 3, -1.6338878789903664",
    "3.2, 10, 11, -6.332562448837752",
    "60, 2.5, 0, -8.047189562170502",
    "60, 2.5, 60, -4.608767154343184",
    "60, 2.5, 182, -7.945200750674158",
    "0.4, 0.7, 1, -1.6846654422373522",
    "0.4, 0.7, 3, -3.9757467107499123",
    "250, 50, 1, -85.85827201276855",
    "250, 50, 752, -45.15106959274732",
    "35, 1e6, 40, -3.106724754700622",
    "2, 0.05, 400, -18.72355355755038"
  })
  void logProbability(double mu, double k, int y, double expected) {
    assertThat(WashModel.logProbability(y, mu, k))
        .isCloseTo(expected, within(2e-9 * Math.abs(expected)));
  }

  /** {@code scipy.stats.poisson.logpmf(40, 35)}: the limit of a large size. */
  @Test
  @Tag("outside")
  void largeSizeIsPoisson() {
    assertThat(WashModel.logProbability(40, 35, 1e9)).isCloseTo(-3.106717255180854, within(1e-8));
  }

  /** {@code [nbinom.ppf(q, k, k / (k + mu)) for q in (.05, .25, .5, .75, .95)]} and the cdf. */
  @ParameterizedTest
  @Tag("outside")
  @CsvSource({
    "3.2, 10, 0, 2, 3, 4, 7, 3, 0.6096562968830026",
    "60, 2.5, 13, 32, 52, 80, 134, 60, 0.5891052473760858",
    "0.4, 0.7, 0, 0, 0, 1, 2, 0, 0.7287754736808634",
    "250, 50, 190, 223, 248, 275, 317, 250, 0.5240247000433798"
  })
  void quantiles(
      double mu, double k, int q05, int q25, int q50, int q75, int q95, int at, double cdf) {
    CountDistribution d = CountDistribution.mixture(new double[] {mu}, new double[] {k});
    assertThat(quantiles(d)).containsExactly(q05, q25, q50, q75, q95);
    assertThat(d.atMost(at)).isCloseTo(cdf, within(1e-9));
  }

  /** Mean of the three {@code nbinom.cdf}. */
  @Test
  @Tag("outside")
  void mixtureOfThree() {
    CountDistribution d = CountDistribution.mixture(MEANS, SIZES);
    assertThat(d.atMost(0)).isCloseTo(0.14823788261999538, within(1e-9));
    assertThat(d.atMost(3)).isCloseTo(0.5013074801208978, within(1e-9));
    assertThat(d.atMost(10)).isCloseTo(0.7624318911629618, within(1e-9));
    assertThat(d.atMost(40)).isCloseTo(0.9683488632530732, within(1e-9));
    assertThat(quantiles(d)).containsExactly(0, 1, 3, 10, 34);
  }

  /**
   * {@code quad(lambda z: poisson.cdf(y, 6 * exp(.5 * z)) * norm.pdf(z), -9, 9)}; the mixture has
   * 400 parts of equal weight.
   */
  @ParameterizedTest
  @Tag("outside")
  @CsvSource({
    "0, 0.014519262845853753",
    "3, 0.23423122053846657",
    "6, 0.5567238731324513",
    "15, 0.9540640908252294",
    "40, 0.9998605903494806"
  })
  void logNormalPoisson(int y, double cdf) {
    assertThat(CountDistribution.logNormalPoisson(6, 0.5).atMost(y)).isCloseTo(cdf, within(2e-4));
  }

  /**
   * The other form of the score, E|X - x| - E|X - X'| / 2 on log counts (Gneiting & Raftery 2007,
   * eq. 21), summed in NumPy over the same mixture.
   */
  @ParameterizedTest
  @Tag("outside")
  @CsvSource({
    "0, 0.979983538082609",
    "3, 0.27784920003461144",
    "25, 1.0973183505845046",
    "200," + " 3.0694792664309523"
  })
  void scoreInItsOtherForm(int count, double expected) {
    assertThat(CountDistribution.mixture(MEANS, SIZES).crpsOfLog(count))
        .isCloseTo(expected, within(1e-7));
  }

  @Test
  void scoreByHand() {
    CountDistribution none = CountDistribution.mixture(new double[] {0}, new double[] {1});
    assertThat(none.crpsOfLog(0)).isZero();
    // all the chance at 0, 3 seen: the distance from log 1 to log 4
    assertThat(none.crpsOfLog(3)).isCloseTo(Math.log(4), within(1e-12));
  }

  /** The score is proper: on average nobody does better than the truth. Draws from the mixture. */
  @Test
  void scoreByMonteCarlo() {
    CountDistribution truth = CountDistribution.mixture(MEANS, SIZES);
    CountDistribution narrow = CountDistribution.mixture(new double[] {4}, new double[] {10});
    SplittableRandom random = new SplittableRandom(7);
    int[] x = random.doubles(4000).mapToInt(truth::quantile).toArray();
    double own = Arrays.stream(x).mapToDouble(truth::crpsOfLog).average().orElseThrow();
    double other = Arrays.stream(x).mapToDouble(narrow::crpsOfLog).average().orElseThrow();
    double halfSpread =
        IntStream.range(1, x.length)
            .mapToDouble(i -> Math.abs(Math.log1p(x[i]) - Math.log1p(x[i - 1])) / 2)
            .average()
            .orElseThrow();
    // the expected score of the truth is half the mean distance of two draws
    assertThat(own).isCloseTo(halfSpread, within(0.025));
    assertThat(own).isLessThan(other);
  }

  @Test
  void levelsNoughtAndOneAndTiesAreFinite() {
    CountDistribution d = CountDistribution.mixture(MEANS, SIZES);
    assertThat(d.quantile(0)).isZero();
    assertThat(d.quantile(1)).isBetween(100, 10_000);
    assertThat(d.holds(3, 1)).isTrue();
    double exactly = d.atMost(3);
    assertThat(d.quantile(exactly)).isEqualTo(3);
    assertThat(d.place(0)).isEqualTo(d.atMost(0) / 2);
    assertThat(d.place(1_000_000)).isEqualTo(1);
    assertThat(d.crpsOfLog(1_000_000)).isFinite();
    CountDistribution same = CountDistribution.mixture(new double[] {5, 5}, new double[] {3, 3});
    assertThat(same.crpsOfLog(5)).isFinite().isPositive();
  }

  @Test
  void partsBeyondEveryCountKeepTheirWeight() {
    CountDistribution d = CountDistribution.mixture(new double[] {2, 1e12}, new double[] {10, 10});
    assertThat(d.atMost(1000)).isCloseTo(0.5, within(1e-3));
    CountDistribution all = CountDistribution.mixture(new double[] {1e12}, new double[] {0.5});
    assertThat(all.quantile(0.5)).isGreaterThan(1000);
    assertThat(all.crpsOfLog(10)).isFinite();
  }

  /** Draws against their own mean and variance, mu and mu + mu^2 / k. */
  @ParameterizedTest
  @CsvSource({"3, 10", "40, 2", "0.5, 1e6"})
  void drawsHaveTheirMoments(double mu, double k) {
    var random = new org.apache.commons.math3.random.Well19937c(5);
    int n = 40_000;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double y = WashModel.draw(mu, k, random);
      sum += y;
      squares += y * y;
    }
    double variance = mu + mu * mu / k;
    assertThat(sum / n).isCloseTo(mu, within(4 * Math.sqrt(variance / n)));
    assertThat(squares / n - sum / n * (sum / n)).isCloseTo(variance, within(0.06 * variance));
  }

  private static int[] quantiles(CountDistribution d) {
    return new int[] {
      d.quantile(0.05), d.quantile(0.25), d.quantile(0.5), d.quantile(0.75), d.quantile(0.95)
    };
  }
}
