package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.flow.AdaptiveFlow;
import broodtide.pages.Check;
import broodtide.pages.Figures;
import java.util.function.DoubleSupplier;
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The colony equations of Khoury, Myerscough & Barron 2011, PLoS ONE 6:e18491, run through the
 * integrator of the flow engine: dH/dt = L N/(w + N) - H R, dF/dt = H R - m F, R = alpha - sigma
 * F/N, N = H + F, with L 2000, w 27000, alpha 0.25, sigma 0.75. The critical forager death rate
 * 0.355 is the paper's; the equilibrium follows in closed form; the transients were computed from
 * the same equations outside the project.
 */
@Tag("outside")
public class PublishedColonyTest {
  private static final double LAYING = 2000;
  private static final double HALF = 27_000;
  private static final double ALPHA = 0.25;
  private static final double SIGMA = 0.75;

  private static final String PAPER = "Khoury, Myerscough & Barron 2011, PLoS ONE 6:e18491";
  private static final String OUTSIDE = "the paper's equations, computed outside the project";

  /** Checks for the page, too. */
  public static Stream<Check> checks() {
    return Stream.of(
        Check.within(
            "forager death at which the published colony just holds, 1/day",
            "0.355",
            0.3545,
            0.3555,
            PAPER,
            PublishedColonyTest::critical),
        close("its hive bees at rest, forager death 0.24", 6470.04, 0.01, () -> atRest()[0]),
        close("its foragers at rest, forager death 0.24", 1987.76, 0.01, () -> atRest()[1]),
        close(
            "its bees 100 days after 24,000, forager death 0.24",
            10_352.931,
            1e-3,
            () -> adultsAfter(0.24, 100, 16_000, 8_000)),
        close(
            "its bees 100 days after 24,000, forager death 0.40",
            2440.951,
            1e-3,
            () -> adultsAfter(0.40, 100, 16_000, 8_000)));
  }

  private static Check close(
      String what, double published, double within, DoubleSupplier measured) {
    return Check.within(
        what, Figures.of(published, 8), published - within, published + within, OUTSIDE, measured);
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  @Test
  void coloniesHoldBelowTheCriticalRateAndDieAboveIt() {
    assertThat(critical()).isCloseTo(0.35519669, within(1e-7));
    assertThat(adultsAfter(critical() + 0.03, 3000, 16_000, 8_000)).isLessThan(1);
    assertThat(adultsAfter(critical() - 0.03, 3000, 16_000, 8_000)).isGreaterThan(1000);
  }

  private static double[] atRest() {
    double[] y = {16_000, 8_000};
    new AdaptiveFlow(1e-9, 1e-12).run(colony(0.24), 0, 4000, y, (day, state) -> {});
    return y;
  }

  /** The colony just holds when laying per bee, L/w at N = 0, replaces what its foragers lose. */
  private static double critical() {
    return new BrentSolver(1e-12).solve(200, PublishedColonyTest::excess, 0.3, 0.45);
  }

  /** Growth rate of a very small colony: the largest root of its linear part, by its own ratio. */
  private static double excess(double m) {
    // with x = F/N constant along the eigenvector: x' = (1-x) R - m x - x g = 0, g = L/w - m x
    double g0 = LAYING / HALF;
    double x =
        new BrentSolver(1e-14)
            .solve(200, v -> (1 - v) * (ALPHA - SIGMA * v) - m * v - v * (g0 - m * v), 0, 0.6);
    return g0 - m * x;
  }

  private static double adultsAfter(double m, int days, double hive, double foragers) {
    double[] y = {hive, foragers};
    new AdaptiveFlow(1e-9, 1e-12).run(colony(m), 0, days, y, (day, state) -> {});
    return y[0] + y[1];
  }

  private static FirstOrderDifferentialEquations colony(double m) {
    return new FirstOrderDifferentialEquations() {
      @Override
      public int getDimension() {
        return 2;
      }

      @Override
      public void computeDerivatives(double t, double[] y, double[] rate) {
        double n = y[0] + y[1];
        double recruitment = ALPHA - SIGMA * y[1] / n;
        rate[0] = LAYING * n / (HALF + n) - y[0] * recruitment;
        rate[1] = y[0] * recruitment - m * y[1];
      }
    };
  }
}
