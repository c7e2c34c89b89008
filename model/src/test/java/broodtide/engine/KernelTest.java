package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

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
  void theShortExponentialAgreesUpToOne() {
    for (int i = 0; i <= 1024; i++) {
      double x = i / 1024.0;
      assertThat(Kernel.expOfMinusUpToOne(x))
          .isCloseTo(StrictMath.exp(-x), withinPercentage(1e-11));
    }
  }
}
