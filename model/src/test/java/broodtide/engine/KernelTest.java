package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
  void theQuickExponentialAgrees() {
    for (int i = 0; i <= 4096; i++) {
      double x = i / 64.0;
      double reference = StrictMath.exp(-x);
      double share = x <= 4 ? 1e-10 : 0;
      assertThat(Kernel.expOfMinus(x))
          .as("exp(-%s)", x)
          .isCloseTo(reference, within(share * reference + (x <= 4 ? 0 : 1e-10)));
    }
    assertThat(Kernel.expOfMinus(0)).isEqualTo(1);
    assertThat(Kernel.expOfMinus(1e9)).isBetween(0.0, 1e-20);
  }
}
