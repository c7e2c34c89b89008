package broodtide.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.junit.jupiter.api.Test;

/** The integrator on equations whose solutions are known. */
class AdaptiveFlowTest {
  /** One equation that keeps the times at which it was asked. */
  private static final class Asked implements FirstOrderDifferentialEquations {
    final List<Double> times = new ArrayList<>();
    private final DoubleBinaryOperator rate;

    Asked(DoubleBinaryOperator rate) {
      this.rate = rate;
    }

    @Override
    public int getDimension() {
      return 1;
    }

    @Override
    public void computeDerivatives(double t, double[] y, double[] out) {
      times.add(t);
      out[0] = rate.applyAsDouble(t, y[0]);
    }
  }

  private final List<Integer> days = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();

  private void seen(int day, double[] state) {
    days.add(day);
    values.add(state[0]);
  }

  @Test
  void everyDayIsShownOnceWithItsState() {
    Asked decay = new Asked((t, y) -> -0.3 * y);
    double[] state = {2};
    AdaptiveFlow flow = new AdaptiveFlow(1e-13, 1e-13);
    flow.run(decay, 3, 9, state, this::seen);
    assertThat(days).containsExactly(4, 5, 6, 7, 8, 9);
    for (int i = 0; i < days.size(); i++) {
      assertThat(values.get(i)).isCloseTo(2 * Math.exp(-0.3 * (i + 1)), within(1e-9));
    }
    assertThat(state[0]).isEqualTo(values.get(5));
    assertThat(flow.evaluations()).isEqualTo(decay.times.size());
    flow.run(decay, 9, 10, state, this::seen);
    assertThat(days).endsWith(9, 10).hasSize(7);
    assertThat(flow.evaluations()).isEqualTo(decay.times.size());
  }

  /**
   * A rate with kinks at 0.25, 2, 2.5 and 3.75, straight in between: each leg is exact however
   * loose the tolerance, a step across a kink would not be. Days between two bends, and one that
   * falls on a bend, are shown all the same.
   */
  @Test
  void noStepIsTakenAcrossABend() {
    double[] bends = {0.25, 2, 2.5, 3.75};
    Asked kinked =
        new Asked(
            (t, y) -> {
              double rate = 0;
              for (double bend : bends) {
                rate += Math.abs(t - bend);
              }
              return rate;
            });
    double[] state = {10};
    new AdaptiveFlow(1, 1, bends).run(kinked, 0, 5, state, this::seen);
    assertThat(days).containsExactly(1, 2, 3, 4, 5);
    for (int i = 0; i < days.size(); i++) {
      double expected = 10;
      for (double bend : bends) {
        double after = Math.max(0, days.get(i) - bend);
        double left = Math.max(0, bend - days.get(i));
        // the triangle before the bend, less what is left of it, and the one after it
        expected += bend * bend / 2 - left * left / 2 + after * after / 2;
      }
      assertThat(values.get(i)).as("day %d", i + 1).isCloseTo(expected, within(1e-10));
    }
    for (double bend : bends) {
      int at = kinked.times.indexOf(bend);
      assertThat(at).as("asked at %f", bend).isNotNegative();
      assertThat(kinked.times.subList(0, at)).allMatch(t -> t < bend);
    }
  }

  /** A bend at an end or beyond is none. */
  @Test
  void bendsAtAndBeyondTheEndsChangeNothing() {
    Asked growth = new Asked((t, y) -> 0.2 * y);
    double[] plain = {1};
    new AdaptiveFlow(1e-9, 1e-9).run(growth, 2, 6, plain, this::seen);
    Asked same = new Asked((t, y) -> 0.2 * y);
    double[] state = {1};
    new AdaptiveFlow(1e-9, 1e-9, -3, 1, 2, 2 + 1e-7, 6 - 1e-7, 6, 6.5, 40)
        .run(same, 2, 6, state, this::seen);
    assertThat(same.times).isEqualTo(growth.times);
    assertThat(state).containsExactly(plain);
  }

  @Test
  void aTighterToleranceIsNearerAndAsksMore() {
    Asked loose = new Asked((t, y) -> Math.sin(t) * y);
    Asked tight = new Asked((t, y) -> Math.sin(t) * y);
    double exact = Math.exp(1 - Math.cos(20));
    double[] a = {1};
    double[] b = {1};
    new AdaptiveFlow(1e-2, 1e-2).run(loose, 0, 20, a, this::seen);
    new AdaptiveFlow(1e-11, 1e-11).run(tight, 0, 20, b, this::seen);
    assertThat(Math.abs(b[0] - exact)).isLessThan(1e-8).isLessThan(Math.abs(a[0] - exact));
    assertThat(tight.times.size()).isGreaterThan(2 * loose.times.size());
  }

  /** The first step is half a day, which these equations allow. */
  @Test
  void theFirstStepIsHalfADay() {
    Asked steady = new Asked((t, y) -> 7);
    double[] state = {0};
    new AdaptiveFlow(1e-9, 1e-9).run(steady, 10, 20, state, this::seen);
    assertThat(steady.times.subList(0, 12)).allMatch(t -> t <= 10.5).contains(10.5);
    assertThat(state[0]).isCloseTo(70, within(1e-9));
    assertThat(values).hasSize(10);
    assertThat(values.get(2)).isCloseTo(21, within(1e-9));
  }
}
