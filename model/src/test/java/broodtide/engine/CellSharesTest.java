package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.mite.CellLoad;
import broodtide.mite.MiteRates;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Shares over lanes against the closed forms, for the usual clumping and for others. */
class CellSharesTest {
  private static final double DEATH = 0.06;

  private final double[] load = {0, 0.01, 0.4, 3, 50};
  private final double[] cells = {100, 1, 2e5, 30, 7};
  private final double[] vigour = {1, 0.5, 2, 1, 0};
  private final double[] infectivity = {0.8, 0.3, 1, 0, 0.6};

  @ParameterizedTest
  @ValueSource(doubles = {0.7, 1, 2, 3, 40})
  void agreeWithTheClosedForms(double k) {
    Rows rows = new Rows(load.length);
    double[] mothers = rows.row();
    double[] some = Arrays.copyOf(cells, rows.width);
    for (int i = 0; i < load.length; i++) {
      mothers[i] = load[i] * cells[i];
    }
    MiteRates mites =
        MiteRates.with(Map.of("clumping", k, "workerCrowding", 0.1, "droneCrowding", 0.15));
    CellShares shares = CellShares.of(mites, DEATH, rows);
    double[] sound = rows.row();
    double[] overt = rows.row();
    double[] inWorker = rows.row();
    double[] inDrone = rows.row();
    double[] factor = Arrays.copyOf(vigour, rows.width);
    double[] virus = Arrays.copyOf(infectivity, rows.width);
    shares.workers(some, mothers, factor, virus, sound, overt, inWorker);
    shares.drones(some, mothers, factor, inDrone);
    for (int i = 0; i < load.length; i++) {
      double m = load[i];
      double alive = CellLoad.untouched(m, DEATH, k);
      double ill = CellLoad.overt(m, DEATH, infectivity[i], k);
      assertThat(overt[i] / cells[i]).isCloseTo(ill, within(1e-11));
      assertThat(sound[i] / cells[i]).isCloseTo(alive - ill, within(1e-11));
      assertThat(inWorker[i] / cells[i])
          .isCloseTo(m * vigour[i] * CellLoad.fecundity(m, 0.1, k), within(1e-10));
      assertThat(inDrone[i] / cells[i])
          .isCloseTo(m * vigour[i] * CellLoad.fecundity(m, 0.15, k), within(1e-10));
    }
  }

  @Test
  void noCellsAndNoMothersGiveNothing() {
    for (double k : new double[] {2, 3}) {
      Rows rows = new Rows(1);
      CellShares shares = CellShares.of(MiteRates.with(Map.of("clumping", k)), DEATH, rows);
      double[] none = rows.row();
      double[][] out = rows.rows(4);
      for (double[] row : out) {
        Arrays.fill(row, 7);
      }
      shares.workers(none, none, rows.row(), rows.row(), out[0], out[1], out[2]);
      shares.drones(none, none, rows.row(), out[3]);
      for (double[] row : out) {
        assertThat(row).containsOnly(0);
      }
    }
  }
}
