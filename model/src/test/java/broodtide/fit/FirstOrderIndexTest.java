package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Shares of the spread, against functions whose shares are known on paper. */
class FirstOrderIndexTest {
  /** Of the function of Ishigami &amp; Homma 1990 with a = 7, b = 0.1. */
  private static final double[] ISHIGAMI = {0.3139, 0.4424, 0};

  @Test
  void ishigamiSharesAreThoseOnPaper() {
    double[][] x = uniform(1, 16_384);
    double[] y = ishigami(x);
    for (int d = 0; d < 3; d++) {
      FirstOrderIndex index = FirstOrderIndex.of(x[d], y);
      assertThat(index.share()).as("input " + (d + 1)).isCloseTo(ISHIGAMI[d], within(0.02));
      assertThat(index.differsFromZero()).as("input " + (d + 1)).isEqualTo(ISHIGAMI[d] > 0);
    }
  }

  @Test
  void nineInTenRangesHoldTheTruth() {
    int runs = 200;
    int[] held = new int[3];
    int toldFromNothing = 0;
    for (int r = 0; r < runs; r++) {
      double[][] x = uniform(100 + r, 4096);
      double[] y = ishigami(x);
      for (int d = 0; d < 3; d++) {
        FirstOrderIndex index = FirstOrderIndex.of(x[d], y);
        held[d] += index.range().holds(ISHIGAMI[d]) ? 1 : 0;
        toldFromNothing += d == 2 && index.differsFromZero() ? 1 : 0;
      }
    }
    // 180 of 200 are expected, give or take 4.2; ranges may be too wide, but not too narrow.
    for (int h : held) {
      assertThat(h).isGreaterThanOrEqualTo(167);
    }
    assertThat(toldFromNothing).isLessThanOrEqualTo(23);
  }

  @Test
  void onlyTheOrderOfTheUnknownCounts() {
    double[][] x = uniform(7, 1000);
    double[] y = ishigami(x);
    double[] stretched = IntStream.range(0, 1000).mapToDouble(i -> Math.exp(x[0][i])).toArray();
    assertThat(FirstOrderIndex.of(stretched, y)).isEqualTo(FirstOrderIndex.of(x[0], y));
  }

  @Test
  void anAnswerThatNeverChangesOwesNothingToAnyUnknown() {
    FirstOrderIndex index = FirstOrderIndex.of(uniform(1, 100)[0], new double[100]);
    assertThat(index.share()).isZero();
    assertThat(index.differsFromZero()).isFalse();
  }

  @Test
  void tooFewDrawsAreRefused() {
    assertThatThrownBy(() -> FirstOrderIndex.of(new double[63], new double[63]))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("63");
  }

  private static double[] ishigami(double[][] x) {
    return IntStream.range(0, x[0].length)
        .mapToDouble(
            i -> {
              double second = Math.sin(x[1][i]);
              return Math.sin(x[0][i]) * (1 + 0.1 * Math.pow(x[2][i], 4)) + 7 * second * second;
            })
        .toArray();
  }

  private static double[][] uniform(long seed, int n) {
    SplittableRandom random = new SplittableRandom(seed);
    return IntStream.range(0, 3)
        .mapToObj(d -> random.doubles(n, -Math.PI, Math.PI).toArray())
        .toArray(double[][]::new);
  }
}
