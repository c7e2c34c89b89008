package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import broodtide.control.Plan;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The standard year comes back to where it began, also where mites multiply without a pause. */
class StandardYearTest {
  private static final LocalDate START = LocalDate.of(2026, 1, 1);

  @ParameterizedTest
  @ValueSource(doubles = {0.0, 0.04, 0.10})
  void aYearLaterTheColonyIsTheSame(double droneShare) {
    ColonyModel model = ColonyModel.in(Places.constant(1300, droneShare));
    StandardColony start = StandardColony.on(model, START);
    Trajectory year =
        DailyEngine.run(
            new Scenario(model, Plan.waiting("standard"), START, 365),
            new SimulatedColony(1, 1, 0, 1, 0, List.of()));
    double[] adults = year.of(Quantity.ADULTS);
    assertThat(adults[0]).isCloseTo(start.adults(), withinPercentage(1e-9));
    assertThat(adults[365]).isCloseTo(adults[0], withinPercentage(0.1));
  }
}
