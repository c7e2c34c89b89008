package broodtide.wash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Sums over the nodes against the moments that the distributions have by definition. */
class DivisorTest {
  private static double moment(Divisor divisor, int power) {
    double sum = 0;
    for (int i = 0; i < divisor.values.length; i++) {
      sum += divisor.weights[i] * Math.pow(divisor.values[i], power);
    }
    return sum;
  }

  @ParameterizedTest
  @EnumSource
  void aShareHasItsMeanAndDeviation(WashMethod method) {
    double mean = method.recovery().mean();
    double sd = method.recovery().sd();
    Divisor share = Divisor.known(1).timesShare(mean, sd);
    assertThat(moment(share, 0)).isCloseTo(1, within(1e-12));
    assertThat(moment(share, 1)).isCloseTo(mean, within(1e-4));
    // A thousandth of a recovery is far below what any trial of it could tell.
    assertThat(Math.sqrt(moment(share, 2) - mean * mean)).isCloseTo(sd, within(0.001));
    assertThat(Arrays.stream(share.values)).allMatch(v -> v > 0 && v < 1);
  }

  /** A lognormal of mean 1 has the second moment exp(v) and the third exp(3 v). */
  @ParameterizedTest
  @CsvSource({"0.01", "0.04", "0.09"})
  void aLognormalHasItsMoments(double logVariance) {
    Divisor factor = Divisor.known(1).timesLognormal(logVariance);
    assertThat(moment(factor, 0)).isCloseTo(1, within(1e-12));
    assertThat(moment(factor, 1)).isCloseTo(1, within(1e-6));
    assertThat(moment(factor, 2)).isCloseTo(Math.exp(logVariance), within(1e-5));
    assertThat(moment(factor, 3)).isCloseTo(Math.exp(3 * logVariance), within(1e-4));
  }

  /** Means of independent factors multiply. */
  @Test
  void factorsMultiply() {
    Divisor all = Divisor.known(300).times(0.01).timesShare(0.9, 0.05).timesLognormal(0.04);
    assertThat(moment(all, 0)).isCloseTo(1, within(1e-12));
    assertThat(moment(all, 1)).isCloseTo(300 * 0.01 * 0.9, within(1e-5));
  }
}
