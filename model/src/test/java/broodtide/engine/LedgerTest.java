package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.flow.FlowEngine;
import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import org.junit.jupiter.api.Test;

class LedgerTest {
  private static final LocalDate START = LocalDate.of(2026, 3, 1);

  private final ColonyModel model =
      ColonyModel.in(Places.seasonal())
          .with(
              new Immigration(
                  List.of(
                      new Immigration.Window(
                          new YearSpan(MonthDay.of(7, 1), MonthDay.of(11, 30)), 3))));

  @Test
  void balancesEveryDayWhateverIsDone() {
    Scenario everything = new Scenario(model, Plans.everything(START), START, 600);
    Trajectory daily = DailyEngine.run(everything, SimulatedColony.average(2));
    for (int day = 0; day <= 600; day++) {
      assertThat(daily.ledger(day).imbalance()).as("day %d", day).isLessThan(1e-9);
    }
    Trajectory flow = FlowEngine.run(everything, SimulatedColony.average(2), 12, 1e-9).trajectory();
    for (int day = 0; day <= 600; day++) {
      assertThat(flow.ledger(day).imbalance()).as("flow, day %d", day).isLessThan(1e-9);
    }
  }

  @Test
  void everyCauseIsBooked() {
    MiteLedger l =
        DailyEngine.run(
                new Scenario(model, Plans.everything(START), START, 300),
                SimulatedColony.average(2))
            .ledger();
    assertThat(l.start()).isPositive();
    assertThat(l.daughters()).isPositive();
    assertThat(l.immigrants()).isPositive();
    assertThat(l.diedOnBees()).isPositive();
    assertThat(l.diedInCells()).isPositive();
    assertThat(l.killed()).isPositive();
    assertThat(l.cutOut()).isPositive();
    assertThat(l.movedAway()).isPositive();
  }

  @Test
  void immigrantsAreTheWindowsDaysTimesItsRate() {
    MiteLedger l =
        DailyEngine.run(
                new Scenario(model, broodtide.control.Plan.waiting("w"), START, 360),
                SimulatedColony.average(1))
            .ledger();
    assertThat(l.immigrants()).isEqualTo(153 * 3.0);
  }
}
