package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.fit.CountRegression.Fit;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.special.Gamma;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Maxima that are known on paper: means of groups, their chances and their errors. */
class CountRegressionTest {
  private static final int[] SCATTERED = {0, 1, 9, 3, 22, 2, 0, 5, 14, 1};

  private static double[][] ones(int n) {
    return IntStream.range(0, n).mapToObj(i -> new double[] {1}).toArray(double[][]::new);
  }

  private static CountRegression alike(int[] y, boolean scatter) {
    return new CountRegression(y, new double[y.length], ones(y.length), scatter);
  }

  private static double mean(int... y) {
    return Arrays.stream(y).average().orElseThrow();
  }

  private static double logChance(int[] y, double mean, double alpha) {
    return Arrays.stream(y).mapToDouble(c -> Invented.logChance(c, mean, 1 / alpha)).sum();
  }

  private static double poisson(int[] y, double mean) {
    return Arrays.stream(y)
        .mapToDouble(c -> c * Math.log(mean) - mean - Gamma.logGamma(c + 1.0))
        .sum();
  }

  /** The rate is all counts over all exposure, and its error one over the root of the counts. */
  @Test
  void poissonRatesAreCountsOverExposure() {
    int[] y = {3, 0, 7, 12};
    double[] exposure = {1, 0.5, 2, 4};
    double[] offset = Arrays.stream(exposure).map(Math::log).toArray();
    CountRegression model = new CountRegression(y, offset, ones(4), false);
    double rate = 22 / 7.5;
    double logLik = 0;
    for (int i = 0; i < 4; i++) {
      double mu = rate * exposure[i];
      logLik += y[i] * Math.log(mu) - mu - Gamma.logGamma(y[i] + 1.0);
    }
    for (Fit fit : new Fit[] {model.fit(), model.fitNear(0.5), model.fitAt(0)}) {
      assertThat(fit.beta()).hasSize(1);
      assertThat(fit.beta()[0]).isCloseTo(Math.log(rate), within(1e-10));
      assertThat(fit.alpha()).isZero();
      assertThat(fit.logLik()).isCloseTo(logLik, within(1e-9));
      assertThat(model.standardError(fit, 0)).isCloseTo(1 / Math.sqrt(22), within(1e-9));
      assertThat(model.adjusted(fit)).isCloseTo(logLik - Math.log(22) / 2, within(1e-9));
    }
  }

  /** Where all are exposed alike the mean is the best whatever the scatter. */
  @ParameterizedTest
  @ValueSource(doubles = {1e-6, 0.03, 0.7, 4, 50})
  void ofAGivenScatterTheMeanIsBest(double alpha) {
    CountRegression model = alike(SCATTERED, true);
    double mean = mean(SCATTERED);
    Fit fit = model.fitAt(alpha);
    assertThat(fit.alpha()).isEqualTo(alpha);
    assertThat(fit.beta()[0]).isCloseTo(Math.log(mean), within(1e-9));
    double logLik = logChance(SCATTERED, mean, alpha);
    assertThat(fit.logLik()).isCloseTo(logLik, within(1e-6));
    double information = 10 * mean / (1 + alpha * mean);
    assertThat(model.standardError(fit, 0)).isCloseTo(1 / Math.sqrt(information), within(1e-9));
    assertThat(model.adjusted(fit)).isCloseTo(logLik - Math.log(information) / 2, within(1e-6));
  }

  /** The likeliest scatter, sought by another search, from wherever one begins. */
  @Test
  void scatterIsTheLikeliest() {
    double mean = mean(SCATTERED);
    double expected =
        new BrentOptimizer(1e-10, 1e-12)
            .optimize(
                new MaxEval(500),
                GoalType.MAXIMIZE,
                new UnivariateObjectiveFunction(a -> logChance(SCATTERED, mean, a)),
                new SearchInterval(1e-3, 20))
            .getPoint();
    CountRegression model = alike(SCATTERED, true);
    Fit whole = model.fit();
    assertThat(whole.alpha()).isCloseTo(expected, within(1e-4)).isBetween(0.5, 3.0);
    assertThat(whole.logLik()).isCloseTo(logChance(SCATTERED, mean, expected), within(1e-9));
    for (double hint : new double[] {1e-9, 1e-6, 0.01, 0.9 * expected, expected, 5, 50, 1e9}) {
      Fit near = model.fitNear(hint);
      assertThat(near.alpha()).isCloseTo(whole.alpha(), within(1e-6));
      assertThat(near.beta()[0]).isCloseTo(Math.log(mean), within(1e-9));
      assertThat(near.logLik()).isCloseTo(whole.logLik(), within(1e-10));
    }
  }

  /** Counts that scatter less than a Poisson have no scatter of their own. */
  @Test
  void evenCountsHaveNoScatter() {
    int[] even = {5, 6, 5, 4, 5, 6, 4, 5};
    CountRegression model = alike(even, true);
    for (Fit fit : new Fit[] {model.fit(), model.fitNear(0.3), model.fitNear(1e-6)}) {
      assertThat(fit.alpha()).isZero();
      assertThat(fit.beta()[0]).isCloseTo(Math.log(5), within(1e-10));
      assertThat(fit.logLik()).isCloseTo(poisson(even, 5), within(1e-9));
    }
  }

  /** One count of hundreds among none scatters more than is believed. */
  @Test
  void scatterEndsAtItsMost() {
    int[] wild = new int[40];
    wild[7] = 900;
    CountRegression model = alike(wild, true);
    for (Fit fit : new Fit[] {model.fit(), model.fitNear(0.3), model.fitNear(50)}) {
      assertThat(fit.alpha()).isCloseTo(CountRegression.MOST_ALPHA, within(1e-9));
      assertThat(fit.beta()[0]).isCloseTo(Math.log(22.5), within(1e-6));
      assertThat(fit.logLik()).isCloseTo(logChance(wild, 22.5, 50), within(1e-6));
    }
  }

  private static final int[] TWO = {2, 4, 3, 11, 20, 8, 13};
  private static final double[][] GROUPS = {
    {1, 0, 0.5}, {1, 0, 0.5}, {1, 0, 0.5}, {1, 1, 0.5}, {1, 1, 0.5}, {1, 1, 0.5}, {1, 1, 0.5}
  };

  private static double[][] columns(int... columns) {
    return Arrays.stream(GROUPS)
        .map(row -> Arrays.stream(columns).mapToDouble(c -> row[c]).toArray())
        .toArray(double[][]::new);
  }

  /** Two groups: their means, and errors that add up as variances. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.2})
  void groupsHaveTheirOwnMeans(double alpha) {
    CountRegression model = new CountRegression(TWO, new double[7], columns(0, 1), true);
    Fit fit = model.fitAt(alpha);
    assertThat(fit.beta()[0]).isCloseTo(Math.log(3), within(1e-9));
    assertThat(fit.beta()[1]).isCloseTo(Math.log(13 / 3.0), within(1e-9));
    double first = 3 * 3 / (1 + alpha * 3);
    double second = 4 * 13 / (1 + alpha * 13);
    assertThat(model.standardError(fit, 0)).isCloseTo(Math.sqrt(1 / first), within(1e-9));
    assertThat(model.standardError(fit, 1))
        .isCloseTo(Math.sqrt(1 / first + 1 / second), within(1e-9));
    // the determinant of [[a + b, b], [b, b]] is a b
    assertThat(model.adjusted(fit))
        .isCloseTo(fit.logLik() - Math.log(first * second) / 2, within(1e-9));
  }

  /** A coefficient that is held is a part of the exposure. */
  @Test
  void aHeldCoefficientIsExposure() {
    double[] offset = {0.1, 0.2, 0, -0.1, 0, 0.3, 0};
    CountRegression model = new CountRegression(TWO, offset, columns(2, 0, 1), false);
    double[] moved = offset.clone();
    for (int i = 0; i < 7; i++) {
      moved[i] += GROUPS[i][1] * 0.8;
    }
    Fit last = model.held(2, 0.8).held(0, 0).fit();
    Fit expected = new CountRegression(TWO, moved, columns(0), false).fit();
    assertThat(last.beta()).containsExactly(expected.beta(), within(1e-10));
    assertThat(last.logLik()).isCloseTo(expected.logLik(), within(1e-9));
    // half of 0.6 in all exposures takes as much from the first mean
    Fit half = model.held(0, 0.6).fit();
    Fit none = model.held(0, 0).fit();
    assertThat(half.beta()[0]).isCloseTo(none.beta()[0] - 0.3, within(1e-9));
    assertThat(half.beta()[1]).isCloseTo(none.beta()[1], within(1e-9));
    Fit middle = model.held(1, 0.4).held(0, 0).fit();
    assertThat(middle.beta()).hasSize(1);
    double scored = 0;
    for (int i = 3; i < 7; i++) {
      scored += TWO[i] - Math.exp(offset[i] + 0.4 + middle.beta()[0]);
    }
    assertThat(scored).isCloseTo(0, within(1e-7));
    CountRegression scattered =
        new CountRegression(SCATTERED, new double[10], ones2(), true).held(1, 0);
    assertThat(scattered.fit().alpha()).as("still free").isPositive();
    assertThat(offset[3]).as("left alone").isEqualTo(-0.1);
  }

  private static double[][] ones2() {
    return IntStream.range(0, 10).mapToObj(i -> new double[] {1, i}).toArray(double[][]::new);
  }

  /** At the best slope what is left of the counts has no more to do with the covariate. */
  @ParameterizedTest
  @ValueSource(doubles = {0, 0.3, 10})
  void whatIsLeftHasNothingToDoWithTheCovariates(double alpha) {
    int[] y = {1, 0, 4, 3, 12, 8, 40, 31, 2, 90};
    double[][] x =
        IntStream.range(0, 10)
            .mapToObj(i -> new double[] {1, i - 2.5, i % 3 == 0 ? 2 : -1})
            .toArray(double[][]::new);
    double[] offset = IntStream.range(0, 10).mapToDouble(i -> 0.05 * i * i - 1).toArray();
    CountRegression model = new CountRegression(y, offset, x, true);
    Fit fit = model.fitAt(alpha);
    double[] score = new double[3];
    double[][] information = new double[3][3];
    for (int i = 0; i < 10; i++) {
      double eta = offset[i];
      for (int j = 0; j < 3; j++) {
        eta += fit.beta()[j] * x[i][j];
      }
      double mu = Math.exp(eta);
      for (int j = 0; j < 3; j++) {
        score[j] += (y[i] - mu) / (1 + alpha * mu) * x[i][j];
        for (int k = 0; k < 3; k++) {
          information[j][k] +=
              mu * (1 + alpha * y[i]) / Math.pow(1 + alpha * mu, 2) * x[i][j] * x[i][k];
        }
      }
    }
    assertThat(score).containsExactly(new double[] {0, 0, 0}, within(1e-6));
    LUDecomposition parted = new LUDecomposition(new Array2DRowRealMatrix(information));
    double[][] covariance = parted.getSolver().getInverse().getData();
    double determinant = parted.getDeterminant();
    for (int j = 0; j < 3; j++) {
      assertThat(model.standardError(fit, j)).isCloseTo(Math.sqrt(covariance[j][j]), within(1e-9));
    }
    assertThat(model.adjusted(fit))
        .isCloseTo(fit.logLik() - Math.log(determinant) / 2, within(1e-8));
  }

  @Test
  void countsOfNothingAreSure() {
    Fit none = alike(new int[5], true).fit();
    assertThat(none.logLik()).isCloseTo(0, within(1e-6));
    assertThat(Math.exp(none.beta()[0])).isLessThan(1e-6);
  }
}
