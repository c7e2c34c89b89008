package broodtide.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class PreposteriorTest {
  /**
   * The wildcatter of Raiffa 1968, Decision Analysis (from memory): a well is dry, wet or soaking
   * with chances 0.5, 0.3, 0.2 and brings -70, 50 or 200; soundings show no, open or closed
   * structure. Drilling is worth 20, drilling by the soundings 32.5, perfect information 55.
   */
  @Tag("outside")
  @Test
  void theWildcatter() {
    double[] weight = {0.5, 0.3, 0.2};
    double[][] loss = {{70, -50, -200}, {0, 0, 0}};
    double[][] soundings = {{0.6, 0.3, 0.1}, {0.3, 0.4, 0.4}, {0.1, 0.3, 0.5}};
    Preposterior p = Preposterior.of(soundings, weight, loss);

    assertThat(Preposterior.blind(weight, loss)).isCloseTo(-20, within(1e-9));
    assertThat(Preposterior.bestBlind(weight, loss)).isZero();
    assertThat(p.value()).isCloseTo(-32.5, within(1e-9));
    assertThat(p.best()).containsExactly(1, 0, 0);
    assertThat(p.chance()).containsExactly(new double[] {0.41, 0.35, 0.24}, within(1e-9));
    assertThat(Preposterior.knowing(weight, loss)).isCloseTo(-55, within(1e-9));
  }
}
