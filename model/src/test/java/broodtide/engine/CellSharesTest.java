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
    CellShares shares = CellShares.of(rows, mites, DEATH);
    shares.prepare(some, mothers, some, mothers);
    shares.denominators().forEach(CellSharesTest::invert);
    double[] sound = rows.row();
    double[] harmed = rows.row();
    double[] inWorker = rows.row();
    double[] inDrone = rows.row();
    shares.bees(sound, harmed);
    shares.daughters(inWorker, inDrone, Arrays.copyOf(vigour, rows.width));
    for (int i = 0; i < load.length; i++) {
      double m = load[i];
      double empty = CellLoad.empty(m, k);
      double alive = CellLoad.untouched(m, DEATH, k);
      assertThat(sound[i] / cells[i]).isCloseTo(empty, within(1e-11));
      assertThat(harmed[i] / cells[i]).isCloseTo(alive - empty, within(1e-11));
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
      CellShares shares = CellShares.of(rows, MiteRates.with(Map.of("clumping", k)), DEATH);
      double[] none = rows.row();
      shares.prepare(none, none, none, none);
      shares.denominators().forEach(CellSharesTest::invert);
      double[] a = rows.row();
      double[] b = rows.row();
      Arrays.fill(a, 7);
      Arrays.fill(b, 7);
      shares.bees(a, b);
      assertThat(new double[] {a[0], b[0]}).containsExactly(0, 0);
      shares.daughters(a, b, rows.row());
      assertThat(new double[] {a[0], b[0]}).containsExactly(0, 0);
    }
  }

  private static void invert(double[] x) {
    for (int l = 0; l < x.length; l++) {
      x[l] = 1 / x[l];
    }
  }
}
