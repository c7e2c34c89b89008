package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.MiteLedger;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.wash.BoardCount;
import broodtide.wash.Interval;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One board read by itself. */
class BoardReadingTest {
  private static final ColonyModel MODEL = ColonyModel.in(Catalog.climate("temperate"));
  private static final LocalDate IN = LocalDate.of(2025, 7, 10);
  private static final int DAYS = 7;

  /** A colony whose board shows the usual share of its deaths is read as it is. */
  @ParameterizedTest
  @ValueSource(doubles = {2, 5})
  void aBoardOfAKnownColonyGivesItsInfestation(double infestation) {
    double[] seen = new double[2];
    Scenario season = new Scenario(MODEL, Plan.waiting("known"), IN, DAYS);
    DailyEngine.of(
            season, StandardColony.on(MODEL, IN), List.of(SimulatedColony.average(infestation)))
        .run(
            (day, view) -> {
              if (day == DAYS) {
                MiteLedger ledger = view.ledger(0);
                seen[0] = ledger.diedOnBees() + ledger.diedInCells();
                seen[1] = Quantity.INFESTATION.of(view, 0);
              }
            });
    int fell = (int) Math.round(BoardCount.SHOWN * seen[0]);
    double read = reading(fell).infestation().median();
    assertThat(read).isCloseTo(seen[1], within(0.05 * seen[1]));
  }

  /** The doubt about what boards show stays, however many mites fell. */
  @Test
  void manyMitesLeaveTheDoubtAboutBoards() {
    Interval many = reading(1_000).infestation().interval(0.9);
    double logSd = Math.log(many.high() / many.low()) / (2 * 1.6449);
    assertThat(logSd).isBetween(BoardCount.LOG_SD, BoardCount.LOG_SD + BoardCount.BETWEEN_BOARDS);
    assertThat(reading(0).infestation().interval(0.9).low()).isBetween(0.0, 0.01);
  }

  private static BoardReading reading(int mites) {
    return BoardReading.of(new BoardCount(IN, IN.plusDays(DAYS), "A", mites), MODEL);
  }
}
