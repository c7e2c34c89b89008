package broodtide.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.engine.AdultClass;
import broodtide.engine.ColonyBlock;
import broodtide.engine.MiteLedger;
import broodtide.engine.StandardColony;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How brood of whole days is laid out in stages, and how a state is read as a colony. */
class FlowStateTest {
  private final ColonyBlock block =
      StandardColony.on(FlowSeason.usual(), FlowSeason.START)
          .colonies(List.of(FlowSeason.member()));

  /** Days hold 1, 2, 3 and so on from the oldest. */
  private static void count(double[][] ring, double times) {
    for (int i = 0; i < ring.length; i++) {
      ring[i][0] = times * (i + 1);
    }
  }

  private double[] chain(FlowState s, int first) {
    return Arrays.copyOfRange(s.vector(), first, first + s.stages);
  }

  @Test
  void daysOfBroodFallIntoTheirStages() {
    count(block.openWorker, 1);
    count(block.openDrone, 1);
    count(block.cappedWorker, 1);
    count(block.cappedDrone, 1);
    count(block.workerMothers, 10);
    count(block.droneMothers, 10);
    FlowState one = FlowState.of(block, 1, 2);
    assertThat(chain(one, one.openWorker)).containsExactly(new double[] {45}, within(1e-12));
    FlowState two = FlowState.of(block, 2, 2);
    // nine days: the youngest four and a half are 9, 8, 7, 6 and half of 5
    assertThat(chain(two, two.openWorker))
        .containsExactly(new double[] {32.5, 12.5}, within(1e-12));
    assertThat(chain(two, two.openDrone)).containsExactly(new double[] {40, 15}, within(1e-12));
    assertThat(chain(two, two.cappedDrone)).containsExactly(new double[] {77, 28}, within(1e-12));
    assertThat(chain(two, two.droneMothers)).containsExactly(new double[] {770, 280}, within(1e-9));
    FlowState four = FlowState.of(block, 4, 2);
    assertThat(chain(four, four.cappedWorker))
        .containsExactly(new double[] {33, 24, 15, 6}, within(1e-12));
    assertThat(chain(four, four.workerMothers))
        .containsExactly(new double[] {330, 240, 150, 60}, within(1e-9));
    FlowState many = FlowState.of(block, 24, 2);
    double[] halves = new double[24];
    for (int k = 0; k < 24; k++) {
      halves[k] = (12 - k / 2) / 2.0;
    }
    assertThat(chain(many, many.cappedWorker)).containsExactly(halves, within(1e-12));
  }

  @Test
  void aDayIsPassedAtTheRateOfItsStages() {
    FlowState s = FlowState.of(block, 6, 2);
    assertThat(s.openWorkerRate()).isEqualTo(6 / 9.0);
    assertThat(s.openDroneRate()).isEqualTo(6 / 10.0);
    assertThat(s.cappedWorkerRate()).isEqualTo(6 / 12.0);
    assertThat(s.cappedDroneRate()).isEqualTo(6 / 14.0);
  }

  @Test
  void aStateIsReadAsAColony() {
    FlowState s = FlowState.of(block, 2, 2);
    double before = block.mites(0);
    double[] y = new double[s.vector().length];
    for (AdultClass each : AdultClass.ALL) {
      y[each.ordinal()] = 100 + each.ordinal();
    }
    y[FlowState.PHORETIC] = 31;
    y[FlowState.DAUGHTERS] = 1;
    y[FlowState.IMMIGRANTS] = 2;
    y[FlowState.DIED_ON_BEES] = 3;
    y[FlowState.DIED_IN_CELLS] = 4;
    y[FlowState.KILLED] = 5;
    y[FlowState.CUT_OUT] = 6;
    y[FlowState.MOVED_AWAY] = 7;
    set(y, s.openWorker, 11, 12);
    set(y, s.openDrone, 2, 3);
    set(y, s.cappedWorker, 40, 20);
    set(y, s.cappedDrone, 10, 0);
    set(y, s.workerMothers, 80, 0);
    set(y, s.droneMothers, 20, 5);
    assertThat(s.over(y)).isSameAs(s);
    assertThat(s.vector()).isSameAs(y);
    assertThat(s.lanes()).isEqualTo(1);
    for (AdultClass each : AdultClass.ALL) {
      assertThat(s.bees(each, 0)).isEqualTo(100 + each.ordinal());
    }
    assertThat(s.openBrood(0)).isEqualTo(28);
    assertThat(s.workerCells(0)).isEqualTo(60);
    assertThat(s.droneCells(0)).isEqualTo(10);
    assertThat(s.mitesOnBees(0)).isEqualTo(31);
    assertThat(s.mitesInWorkerCells(0)).isEqualTo(80);
    assertThat(s.mitesInDroneCells(0)).isEqualTo(25);
    // two mothers per cell, clumped with size 2: (1 + 2 / 2)^-2 of the cells are empty
    assertThat(s.infestedWorkerCells(0)).isCloseTo(40 * 0.75, within(1e-12));
    // and where there is no cell, none is infested
    assertThat(s.infestedDroneCells(0)).isCloseTo(10 * 0.75, within(1e-12));
    assertThat(s.ledger(0)).isEqualTo(new MiteLedger(before, 1, 2, 3, 4, 5, 6, 7, 136));
  }

  private static void set(double[] y, int first, double... values) {
    System.arraycopy(values, 0, y, first, values.length);
  }

  @Test
  void lessThanNothingIsReadAsNothing() {
    FlowState s = FlowState.of(block, 2, 2);
    double[] y = new double[s.vector().length];
    Arrays.fill(y, -1);
    s.over(y);
    assertThat(s.bees(AdultClass.WINTER, 0)).isZero();
    assertThat(s.openBrood(0)).isZero();
    assertThat(s.infestedWorkerCells(0)).isZero();
    assertThat(s.infestedDroneCells(0)).isZero();
    assertThat(s.mites(0)).isZero();
  }

  @Test
  void aShareOfAChainOrOfTheBeesGoes() {
    FlowState s = FlowState.of(block, 3, 2);
    double[] y = new double[s.vector().length];
    Arrays.fill(y, 8);
    s.over(y).scale(s.cappedDrone, 0.25);
    s.scaleBees(0.5);
    double[] expected = new double[y.length];
    Arrays.fill(expected, 8);
    Arrays.fill(expected, s.cappedDrone, s.cappedDrone + 3, 2);
    Arrays.fill(expected, 0, AdultClass.ALL.size() + 1, 4);
    assertThat(y).containsExactly(expected);
  }
}
