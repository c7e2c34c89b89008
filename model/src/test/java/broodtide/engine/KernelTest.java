package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.mite.CellLoad;
import org.junit.jupiter.api.Test;

class KernelTest {
  @Test
  void exponentialAgreesWithTheLibrary() {
    double[] x = new double[4096];
    for (int i = 0; i < x.length; i++) {
      x[i] = 40.0 * i / x.length;
    }
    double[] out = new double[x.length];
    Kernel.expOfMinus(out, x);
    for (int i = 0; i < x.length; i++) {
      double reference = StrictMath.exp(-x[i]);
      assertThat(out[i])
          .as("exp(-%s)", x[i])
          .isCloseTo(reference, within(1e-13 * reference + 1e-16));
    }
  }

  @Test
  void exponentialOfNothingIsOneAndOfHugeHazardsNothing() {
    double[] out = new double[2];
    Kernel.expOfMinus(out, new double[] {0, 1e9});
    assertThat(out[0]).isEqualTo(1);
    assertThat(out[1]).isBetween(0.0, 1e-20);
  }

  @Test
  void clumpedFormsAgreeWithTheClosedForms() {
    double[] m = {0, 0.01, 0.4, 3, 50};
    double[] out = new double[m.length];
    for (double k : new double[] {0.7, 1, 2, 3, 40}) {
      for (int i = 0; i < m.length; i++) {
        Kernel.clumped(out, m, 0.1, k, k + 1);
        assertThat(out[i]).isCloseTo(CellLoad.fecundity(m[i], 0.1, k), within(1e-14));
        Kernel.clumped(out, m, 1, k, k);
        assertThat(out[i]).isCloseTo(CellLoad.empty(m[i], k), within(1e-14));
      }
    }
  }
}
