package broodtide.engine;

import broodtide.colony.BeeRates;
import broodtide.control.Plan;
import broodtide.flow.FlowEngine;
import broodtide.pages.Check;
import broodtide.pages.Figures;
import java.time.LocalDate;
import java.util.Map;
import java.util.function.DoubleSupplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Constant laying E, survival s and mean adult life T give E s T adults and 12 E s capped worker
 * cells. Source: Little, J. D. C. 1961, A proof for the queuing formula L = lambda W, Operations
 * Research 9:383.
 */
@Tag("outside")
public class LittlesLawTest {
  private static final BeeRates BEES = BeeRates.with(Map.of("halfLayingAdults", 0.0));
  private static final Scenario STEADY =
      new Scenario(
          ColonyModel.in(Places.constant(1200, 0)).with(BEES),
          Plan.waiting("wait"),
          LocalDate.of(2026, 1, 1),
          400);

  /** Checks for the page, too. */
  public static Stream<Check> checks() {
    double adults = 1200 * BEES.workerSurvival() * BEES.summerLife();
    double cells = 12 * 1200 * BEES.workerSurvival();
    return Stream.of(
        law("adults, daily engine", adults, () -> last(daily(), Quantity.ADULTS)),
        law("adults, flow engine", adults, () -> last(flow(), Quantity.ADULTS)),
        law("capped worker cells, daily engine", cells, () -> last(daily(), Quantity.WORKER_CELLS)),
        law("capped worker cells, flow engine", cells, () -> last(flow(), Quantity.WORKER_CELLS)));
  }

  private static Check law(String what, double expected, DoubleSupplier measured) {
    return Check.within(
        "steady laying of 1,200 a day: " + what,
        Figures.of(expected, 9) + " by arithmetic",
        expected * (1 - 1e-8),
        expected * (1 + 1e-8),
        "Little 1961, Operations Research 9:383",
        measured);
  }

  @ParameterizedTest
  @MethodSource("checks")
  void bothEnginesKeepTheLaw(Check check) {
    check.verify();
  }

  private static Trajectory daily() {
    return DailyEngine.run(STEADY, SimulatedColony.average(0));
  }

  private static Trajectory flow() {
    return FlowEngine.run(STEADY, SimulatedColony.average(0), 7, 1e-10).trajectory();
  }

  private static double last(Trajectory t, Quantity what) {
    return t.of(what)[400];
  }
}
