package broodtide.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Plan;
import broodtide.engine.ColonyBlock;
import broodtide.engine.ColonyModel;
import broodtide.engine.MiteLedger;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.Schedule;
import broodtide.engine.StandardColony;
import broodtide.engine.Trajectory;
import broodtide.measure.OutOfRange;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A season of the flow engine against plain steps through the model's page. */
class FlowEngineTest {
  private static final int STAGES = 3;

  /** Steps of a day; at half as many the figures move by less than a tenth of what is allowed. */
  private static final int STEPS = 16;

  private static final double SHARE = 2e-6;

  @Test
  void aSeasonGoesAsThePageSays() {
    ColonyModel model = FlowSeason.usual();
    Scenario scenario = FlowSeason.scenario(model);
    FlowEngine.Run run = FlowEngine.run(scenario, FlowSeason.member(), STAGES, 1e-9);
    ColonyBlock block =
        StandardColony.on(model, FlowSeason.START).colonies(List.of(FlowSeason.member()));
    Schedule schedule = Schedule.of(scenario);
    PlainFlow plain = new PlainFlow(model, schedule, FlowSeason.member(), STAGES);
    FlowState at = FlowState.of(block, STAGES, model.mites().clumping());
    PlainFlow.State s = plain.start(block);
    double begin = s.mites();
    Trajectory t = run.trajectory();
    assertThat(t.days()).isEqualTo(FlowSeason.DAYS);
    for (int day = 0; day <= FlowSeason.DAYS; day++) {
      compare(day, t, s, begin);
      if (day < FlowSeason.DAYS) {
        plain.morning(s, day);
        s = plain.day(s, day, STEPS, at);
      }
    }
    assertThat(run.evaluations()).isGreaterThan(FlowSeason.DAYS);
    assertThat(run.deepestNegative()).isBetween(-1e-6, 0.0);
    MiteLedger ledger = t.ledger();
    assertThat(ledger.cutOut()).isPositive();
    assertThat(ledger.movedAway()).isPositive();
  }

  private static void compare(int day, Trajectory t, PlainFlow.State s, double begin) {
    Map<Quantity, Double> expected =
        Map.of(
            Quantity.ADULTS,
            s.adults(),
            Quantity.WORKER_CELLS,
            PlainFlow.total(s.cappedWorker),
            Quantity.DRONE_CELLS,
            PlainFlow.total(s.cappedDrone),
            Quantity.MITES,
            s.mites(),
            Quantity.MITES_ON_BEES,
            s.onBees);
    expected.forEach((what, value) -> near(day + ": " + what, t.of(what)[day], value));
    MiteLedger ledger = t.ledger(day);
    near(day + ": start", ledger.start(), begin);
    near(day + ": daughters", ledger.daughters(), s.daughters);
    near(day + ": immigrants", ledger.immigrants(), s.immigrants);
    near(day + ": died on bees", ledger.diedOnBees(), s.diedOnBees);
    near(day + ": died in cells", ledger.diedInCells(), s.diedInCells);
    near(day + ": killed", ledger.killed(), s.killed);
    near(day + ": cut out", ledger.cutOut(), s.cutOut);
    near(day + ": moved away", ledger.movedAway(), s.movedAway);
  }

  private static void near(String what, double actual, double expected) {
    assertThat(actual).as(what).isCloseTo(expected, within(SHARE * (1 + Math.abs(expected))));
  }

  @Test
  void stagesAndToleranceHaveTheirRange() {
    Scenario day = new Scenario(FlowSeason.usual(), Plan.waiting("wait"), FlowSeason.START, 1);
    for (int stages : new int[] {0, 401}) {
      assertThatThrownBy(() -> FlowEngine.run(day, FlowSeason.member(), stages, 1e-9))
          .isInstanceOf(OutOfRange.class)
          .hasMessageContaining("stages");
    }
    for (double tolerance : new double[] {0.9e-13, 1.1e-3}) {
      assertThatThrownBy(() -> FlowEngine.run(day, FlowSeason.member(), 1, tolerance))
          .isInstanceOf(OutOfRange.class)
          .hasMessageContaining("tolerance");
    }
    assertThat(FlowEngine.run(day, FlowSeason.member(), 1, 1e-3).trajectory().days()).isEqualTo(1);
  }
}
