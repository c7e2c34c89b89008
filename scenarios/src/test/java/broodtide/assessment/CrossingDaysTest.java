package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class CrossingDaysTest {
  private static final LocalDate NOW = LocalDate.of(2026, 7, 20);

  /** By hand: five members of six pass it. */
  @Test
  void allAlive() {
    CrossingDays days = alive(4, 9, -1, 0, 30, 12);
    assertThat(days.share()).isCloseTo(5 / 6.0, within(1e-12));
    assertThat(days.shareWithin(9)).isEqualTo(0.5);
    assertThat(days.dayFor(0.05)).contains(NOW);
    assertThat(days.medianDay()).contains(NOW.plusDays(9));
    assertThat(days.dayFor(5 / 6.0)).contains(NOW.plusDays(30));
    assertThat(days.dayFor(0.95)).isEmpty();
    assertThat(alive(-1, -1).medianDay()).isEmpty();
  }

  /** Of those that pass on day 9 and later three in four are dead by then. */
  @Test
  void theDeadDoNotPass() {
    CrossingDays days =
        new CrossingDays(NOW, new int[] {0, 9, 9, -1}, new double[] {1, 0.25, 0.25, 0});
    assertThat(days.share()).isCloseTo(1.5 / 4, within(1e-12));
    assertThat(days.medianDay()).isEmpty();
    assertThat(days.dayFor(0.3)).contains(NOW.plusDays(9));
  }

  private static CrossingDays alive(int... days) {
    double[] weights = new double[days.length];
    Arrays.fill(weights, 1);
    return new CrossingDays(NOW, days, weights);
  }
}
