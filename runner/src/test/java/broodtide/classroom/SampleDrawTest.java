package broodtide.classroom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SampleDrawTest {
  /**
   * Mean n p and variance n p (1 - p) of a binomial count; in per cent of the mean the spread of a
   * sample of 300 bees is 57, 33 and 25 at 1, 3 and 5 mites per 100 bees (arithmetic).
   */
  @ParameterizedTest
  @Tag("outside")
  @CsvSource({"1, 57", "3, 33", "5, 25"})
  void countsSpreadAsChanceDoes(double infestation, double percent) {
    int[] counts = SampleDraw.of(infestation, 300, 20_000, 11).counts();
    double mean = Arrays.stream(counts).average().orElseThrow();
    double variance =
        Arrays.stream(counts).mapToDouble(c -> (c - mean) * (c - mean)).average().orElseThrow();
    assertThat(mean).isCloseTo(3 * infestation, within(0.1));
    assertThat(100 * Math.sqrt(variance) / mean).isCloseTo(percent, within(1.0));
  }

  /** R 4.2: qbinom(c(.05, .95), 300, .03) is 4 and 14. */
  @Test
  @Tag("outside")
  void nineInTen() {
    SampleDraw draw = SampleDraw.of(3, 300, 20, 1);
    assertThat(draw.low()).isEqualTo(4);
    assertThat(draw.high()).isEqualTo(14);
  }

  @Test
  void sameSeedSameWashes() {
    assertThat(SampleDraw.of(3, 300, 20, 5).counts())
        .isEqualTo(SampleDraw.of(3, 300, 20, 5).counts());
    assertThat(SampleDraw.of(3, 300, 20, 5).counts())
        .isNotEqualTo(SampleDraw.of(3, 300, 20, 6).counts());
  }

  @Test
  void ends() {
    assertThat(SampleDraw.of(0, 300, 20, 5).highest()).isZero();
    assertThat(SampleDraw.of(100, 300, 20, 5).lowest()).isEqualTo(300);
    assertThatThrownBy(() -> SampleDraw.of(101, 300, 20, 5)).isInstanceOf(OutOfRange.class);
  }
}
