package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.colony.BeeRates;
import broodtide.control.Plan;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Constant laying E, survival s and mean adult life T give E s T adults and 12 E s capped worker
 * cells. Source: Little, J. D. C. 1961, A proof for the queuing formula L = lambda W, Operations
 * Research 9:383.
 */
@Tag("outside")
class LittlesLawTest {
  @Test
  void bothEnginesKeepTheLaw() {
    BeeRates bees = BeeRates.with(Map.of("halfLayingAdults", 0.0));
    ColonyModel model = ColonyModel.in(Places.constant(1200, 0)).with(bees);
    Scenario scenario = new Scenario(model, Plan.waiting("wait"), LocalDate.of(2026, 1, 1), 400);
    double adults = 1200 * bees.workerSurvival() * bees.summerLife();
    double cells = 12 * 1200 * bees.workerSurvival();
    for (Trajectory t :
        new Trajectory[] {
          DailyEngine.run(scenario, Member.average(0)),
          FlowEngine.run(scenario, Member.average(0), 7, 1e-10).trajectory()
        }) {
      assertThat(t.of(Quantity.ADULTS)[400]).isCloseTo(adults, within(adults * 1e-8));
      assertThat(t.of(Quantity.WORKER_CELLS)[400]).isCloseTo(cells, within(cells * 1e-8));
    }
  }
}
