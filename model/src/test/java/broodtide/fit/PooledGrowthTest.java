package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.wash.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;

/** Growth over the hives of a table, on invented apiaries whose truth is known. */
class PooledGrowthTest {
  private static final double ERROR = 0.008;
  private static final double BETWEEN = 0.006;
  private static final double TRUE = 0.022;

  private static Growth seen(double rate, double error) {
    double reach = Prior.NINE_IN_TEN * error;
    return new Growth(OptionalDouble.of(rate), new Interval(rate - reach, rate + reach, 0.9));
  }

  /** The mean lies in its 90 % interval as often as said. */
  @Test
  void theIntervalHoldsWhatItSays() {
    int apiaries = 1000;
    int mean = 0;
    Well19937c random = new Well19937c(7);
    for (int a = 0; a < apiaries; a++) {
      List<Growth> hives = new ArrayList<>();
      for (int h = 0; h < 8; h++) {
        double own = TRUE + BETWEEN * random.nextGaussian();
        hives.add(seen(own + ERROR * random.nextGaussian(), ERROR));
      }
      PooledGrowth together = PooledGrowth.of(hives).orElseThrow();
      mean += together.perDayInterval().holds(TRUE) ? 1 : 0;
    }
    assertThat(mean / (double) apiaries).isBetween(0.87, 0.95);
  }

  @Test
  void hivesThatAgreeAreOneGrowthWithALesserError() {
    List<Growth> hives = List.of(seen(0.02, 0.01), seen(0.02, 0.01), seen(0.02, 0.01));
    PooledGrowth together = PooledGrowth.of(hives).orElseThrow();
    assertThat(together.perDay()).isCloseTo(0.02, within(1e-12));
    assertThat(together.between()).isCloseTo(0, within(1e-6));
    // t with two degrees of freedom, 95 %: 2.920, from handbook tables
    assertThat(together.perDayInterval().high())
        .isCloseTo(0.02 + 2.920 * 0.01 / Math.sqrt(3), within(2e-5));
  }

  @Test
  void hivesThatDoNotBoundTheirGrowthAreLeftOutAndTwoAreTooFew() {
    Growth open =
        new Growth(OptionalDouble.empty(), new Interval(0.01, Double.POSITIVE_INFINITY, 0.9));
    List<Growth> two = List.of(seen(0.02, 0.01), seen(0.03, 0.01), open);
    assertThat(PooledGrowth.of(two)).isEmpty();
    List<Growth> three = new ArrayList<>(two);
    three.add(seen(0.025, 0.01));
    assertThat(PooledGrowth.of(three).orElseThrow().hives()).isEqualTo(3);
  }
}
