package broodtide.mite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class RenewalTest {
  private static final Renewal BUSY = Renewal.of(MiteRates.defaults(), 1.0, 0.04, 0.037, 1);

  @Test
  @Tag("outside")
  void delayedRootSolvesTheEquationOfLotka() {
    // r + death + h = h_w R_w e^(-12 r) + h_d R_d e^(-14 r); reference solver: Hipparchus
    double reference =
        new BracketingNthOrderBrentSolver(1e-15, 5)
            .solve(
                500,
                r ->
                    BUSY.worker() * BUSY.workerReturn() * Math.exp(-12 * r)
                        + BUSY.drone() * BUSY.droneReturn() * Math.exp(-14 * r)
                        - (r + BUSY.death() + BUSY.worker() + BUSY.drone()),
                0,
                0.2);
    assertThat(BUSY.delayed()).isCloseTo(reference, within(1e-13));
  }

  @Test
  void longChainsApproachTheDelay() {
    double limit = BUSY.delayed();
    double error10 = BUSY.chained(10) - limit;
    double error100 = BUSY.chained(100) - limit;
    double error1000 = BUSY.chained(1000) - limit;
    assertThat(error10).isPositive();
    assertThat(error10 / error100).isCloseTo(10, within(0.5));
    assertThat(error100 / error1000).isCloseTo(10, within(0.1));
  }

  @Test
  void theDailyStepIsCloseToContinuousTime() {
    assertThat(Math.log(BUSY.daily())).isCloseTo(BUSY.delayed(), within(2e-4));
  }

  @Test
  void withoutBroodMitesDieAtTheirRate() {
    Renewal idle = new Renewal(0, 0, 0.006, 1.3, 2.6, 12, 14);
    assertThat(idle.delayed()).isCloseTo(-0.006, within(1e-12));
    assertThat(idle.chained(5)).isCloseTo(-0.006, within(1e-12));
    assertThat(idle.daily()).isCloseTo(Math.exp(-0.006), within(1e-12));
  }

  @Test
  void barrenMothersDieOut() {
    Renewal barren = new Renewal(0.2, 0.1, 0.006, 0.65, 0.75, 12, 14);
    assertThat(barren.delayed()).isNegative();
    assertThat(barren.chained(1)).isNegative();
    assertThat(barren.daily()).isLessThan(1);
  }
}
