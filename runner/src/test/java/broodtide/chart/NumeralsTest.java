package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.words.Digits;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NumeralsTest {
  /** A picture and the text beside it must not give one figure in two ways. */
  @Test
  void readAsInTheTextBesideThePicture() {
    Random random = new Random(4);
    for (int i = 0; i < 2000; i++) {
      double v = (random.nextBoolean() ? 1 : -1) * Math.exp(20 * random.nextDouble() - 8);
      assertThat(Numerals.two(v)).isEqualTo(Digits.two(v));
      assertThat(Numerals.plain(v)).isEqualTo(Digits.plain(v));
      assertThat(Numerals.range(v, v * 1.01)).isEqualTo(Digits.range(v, v * 1.01));
    }
    for (double v : new double[] {0, Double.NaN, Double.POSITIVE_INFINITY, 0.985, 2.5, 25}) {
      assertThat(Numerals.two(v)).isEqualTo(Digits.two(v));
    }
  }

  @Test
  void infestationsAndSharesThatNoWashCanShow() {
    assertThat(Numerals.infestation(0.083, 0.00071, 0.72))
        .isEqualTo("under 0.1 (under 0.1 to 0.72)");
    assertThat(Numerals.infestation(47, 28, 81)).isEqualTo("47 (28 to more than 50)");
    assertThat(Numerals.infestation(0, 0, 1.04)).isEqualTo("0 (0 to 1.0)");
    assertThat(Numerals.percent(0.463)).isEqualTo("46 %");
    assertThat(Numerals.percent(0.002)).isEqualTo("under 1 %");
    assertThat(Numerals.percent(0)).isEqualTo("0 %");
  }
}
