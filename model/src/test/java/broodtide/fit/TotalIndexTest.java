package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Total indices, against a function whose indices are known on paper. */
class TotalIndexTest {
  /**
   * Of the function of Ishigami &amp; Homma 1990 with a = 7, b = 0.1; by hand from its partial
   * variances 4.3460, 6.1250 and 3.3738 (of 1 and 3 together) of 13.8446.
   */
  private static final double[] ISHIGAMI = {0.5576, 0.4424, 0.2437};

  @Test
  void ishigamiTotalsAreThoseOnPaper() {
    TotalIndex[] found = totals(1, 16_384);
    for (int d = 0; d < 3; d++) {
      assertThat(found[d].share()).as("input " + (d + 1)).isCloseTo(ISHIGAMI[d], within(0.02));
      assertThat(found[d].differsFromZero()).as("input " + (d + 1)).isTrue();
    }
    assertThat(found[3].share()).as("an input that does nothing").isZero();
    assertThat(found[3].differsFromZero()).isFalse();
  }

  @Test
  void nineInTenRangesHoldTheTruth() {
    int runs = 200;
    int[] held = new int[3];
    for (int r = 0; r < runs; r++) {
      TotalIndex[] found = totals(100 + r, 512);
      for (int d = 0; d < 3; d++) {
        held[d] += found[d].range().holds(ISHIGAMI[d]) ? 1 : 0;
      }
    }
    // 180 of 200 are expected, give or take 4.2; three of these either way.
    for (int h : held) {
      assertThat(h).isBetween(167, 193);
    }
  }

  @Test
  void tooFewDrawsAreRefused() {
    assertThatThrownBy(() -> TotalIndex.of(new double[63], new double[63]))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("63");
  }

  /** The function has a fourth input, which it does not look at. */
  private static TotalIndex[] totals(long seed, int n) {
    double[][] a = uniform(2 * seed, n);
    double[][] b = uniform(2 * seed + 1, n);
    double[] base = new double[n];
    double[][] anew = new double[4][n];
    for (int i = 0; i < n; i++) {
      base[i] = ishigami(a[i]);
      for (int d = 0; d < 4; d++) {
        double[] mixed = a[i].clone();
        mixed[d] = b[i][d];
        anew[d][i] = ishigami(mixed);
      }
    }
    TotalIndex[] out = new TotalIndex[4];
    for (int d = 0; d < 4; d++) {
      out[d] = TotalIndex.of(base, anew[d]);
    }
    return out;
  }

  private static double ishigami(double[] x) {
    double second = Math.sin(x[1]);
    return Math.sin(x[0]) * (1 + 0.1 * Math.pow(x[2], 4)) + 7 * second * second;
  }

  private static double[][] uniform(long seed, int n) {
    SplittableRandom random = new SplittableRandom(seed);
    double[][] out = new double[n][];
    for (int i = 0; i < n; i++) {
      out[i] = random.doubles(4, -Math.PI, Math.PI).toArray();
    }
    return out;
  }
}
