package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import java.util.Arrays;
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

  /** Seventy draws make four classes of 17 or 18; variances between and within them by hand. */
  @Test
  void aFewDrawsByHand() {
    int n = 70;
    SplittableRandom random = new SplittableRandom(8);
    double[] x = new double[n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      // in another order than they rise in
      x[i] = (i * 31 + 11) % n;
      y[i] = 5 + 0.05 * x[i] + random.nextDouble();
    }
    int[] ends = {0, 17, 35, 52, 70};
    double mean = Arrays.stream(y).average().orElseThrow();
    double all = 0;
    double within = 0;
    double[] ofClass = new double[n];
    for (int c = 0; c < 4; c++) {
      int from = ends[c];
      int to = ends[c + 1];
      double middle =
          IntStream.range(0, n)
              .filter(i -> x[i] >= from && x[i] < to)
              .mapToDouble(i -> y[i])
              .average()
              .orElseThrow();
      for (int i = 0; i < n; i++) {
        if (x[i] >= from && x[i] < to) {
          ofClass[i] = middle - mean;
          within += (y[i] - middle) * (y[i] - middle);
        }
      }
    }
    for (double v : y) {
      all += (v - mean) * (v - mean);
    }
    FirstOrderIndex index = FirstOrderIndex.of(x, y);
    double share = 1 - within / 66 / (all / 69);
    assertThat(index.share()).isCloseTo(share, within(1e-12));
    double squares = 0;
    for (int i = 0; i < n; i++) {
      // a draw adds its part between classes and its square; the ratio moves by both
      double square = (y[i] - mean) * (y[i] - mean);
      double away = y[i] - mean - ofClass[i];
      double between = square - away * away;
      squares += Math.pow((between - (1 - within / all) * square) / (all / n), 2);
    }
    double error = 1.6449 * Math.sqrt(squares) / n;
    assertThat(index.range().low()).isCloseTo(share - error, within(1e-12));
    assertThat(index.range().high()).isCloseTo(Math.min(1, share + error), within(1e-12));
    assertThat(share).isBetween(0.3, 0.95);
    double[] byClass = Arrays.stream(x).map(v -> v < 17 ? 1 : v < 35 ? 5 : 2).toArray();
    FirstOrderIndex whole = FirstOrderIndex.of(x, byClass);
    assertThat(whole.share()).isCloseTo(1, within(1e-12));
    assertThat(whole.range().high()).as("never more than all").isLessThanOrEqualTo(1);
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
