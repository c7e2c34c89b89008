package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.engine.AdultClass;
import broodtide.engine.ColonyView;
import broodtide.engine.MiteLedger;
import broodtide.wash.BoardCount;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Boards under colonies whose deaths are given, against a fine sum over what a board shows. */
class BoardTallyTest {
  private static final BoardCount FIRST = board(3, 8, 12);
  private static final BoardCount SECOND = board(8, 20, 40);

  private static BoardCount board(int from, int to, int mites) {
    return new BoardCount(Invented.START.plusDays(from), Invented.START.plusDays(to), "A", mites);
  }

  /** Colonies of which so many mites have died by a day, a third of them in cells. */
  private record Dying(double... byLane) implements ColonyView {
    @Override
    public MiteLedger ledger(int lane) {
      double dead = byLane[lane];
      return new MiteLedger(9e4, 1, 2, dead * 2 / 3, dead / 3, 70, 80, 90, 1e4);
    }

    @Override
    public int lanes() {
      return byLane.length;
    }

    @Override
    public double bees(AdultClass of, int lane) {
      return 1;
    }

    @Override
    public double openBrood(int lane) {
      return 1;
    }

    @Override
    public double workerCells(int lane) {
      return 1;
    }

    @Override
    public double droneCells(int lane) {
      return 1;
    }

    @Override
    public double infestedWorkerCells(int lane) {
      return 1;
    }

    @Override
    public double infestedDroneCells(int lane) {
      return 1;
    }

    @Override
    public double mitesOnBees(int lane) {
      return 1;
    }

    @Override
    public double mitesInWorkerCells(int lane) {
      return 1;
    }

    @Override
    public double mitesInDroneCells(int lane) {
      return 1;
    }
  }

  /**
   * Log of the chance of counts whose colony shows a share of its dead, lognormal around a half.
   */
  private static double expected(double[] died, int[] counts, double dispersion) {
    double size = 1 / (1 / dispersion + 0.3 * 0.3);
    double sum = 0;
    double step = 0.01;
    for (double z = -6; z <= 6; z += step) {
      double log = -z * z / 2 - Math.log(2 * Math.PI) / 2;
      for (int b = 0; b < counts.length; b++) {
        double mean = 0.5 * Math.exp(0.7 * z) * died[b];
        log += Invented.logChance(counts[b], mean, size);
      }
      sum += Math.exp(log) * step;
    }
    return Math.log(sum);
  }

  @Test
  void boardsOfAColonyShowOneShareOfItsDead() {
    BoardLikelihood boards = new BoardLikelihood(Invented.season(30), List.of(FIRST, SECOND));
    assertThat(boards.last()).isEqualTo(20);
    BoardLikelihood.Tally tally = boards.new Tally(2);
    double[] sizes = {-1, 6, 2.5};
    double[] out = {100, 10, 20};
    for (int day = 0; day <= 25; day++) {
      // each lane from a start of its own, five and two a day
      tally.see(day, new Dying(1000 + 5 * day, 50 + 2 * day), 2, 1, sizes, out);
      if (day < 20) {
        assertThat(out).containsExactly(100, 10, 20);
      }
    }
    assertThat(out[0]).isEqualTo(100);
    double[] first = {5 * 5, 5 * 12};
    double[] second = {2 * 5, 2 * 12};
    int[] counts = {12, 40};
    assertThat(out[1] - 10).isCloseTo(expected(first, counts, 6), within(2e-3));
    assertThat(out[2] - 20).isCloseTo(expected(second, counts, 2.5), within(5e-3));
  }

  @Test
  void onlyTheLanesInUseAreRead() {
    BoardLikelihood boards = new BoardLikelihood(Invented.season(30), List.of(FIRST));
    BoardLikelihood.Tally tally = boards.new Tally(4);
    double[] out = new double[4];
    double[] sizes = new double[4];
    Arrays.fill(sizes, 3);
    tally.see(3, new Dying(0, 0), 2, 0, sizes, out);
    tally.see(8, new Dying(30, 24), 2, 0, sizes, out);
    assertThat(out[0]).isCloseTo(expected(new double[] {30}, new int[] {12}, 3), within(2e-3));
    assertThat(out[1]).isCloseTo(expected(new double[] {24}, new int[] {12}, 3), within(2e-3));
    assertThat(out[2]).isZero();
    assertThat(out[3]).isZero();
  }

  @Test
  void whereNoMiteDiedNoneIsFound() {
    BoardLikelihood boards =
        new BoardLikelihood(Invented.season(30), List.of(FIRST, board(8, 9, 0)));
    BoardLikelihood.Tally tally = boards.new Tally(1);
    double[] out = {0};
    for (int day : new int[] {3, 8, 9}) {
      tally.see(day, new Dying(7), 1, 0, new double[] {5}, out);
    }
    assertThat(out[0]).isEqualTo(Double.NEGATIVE_INFINITY);
    BoardLikelihood none = new BoardLikelihood(Invented.season(30), List.of());
    assertThat(none.last()).isEqualTo(-1);
    BoardLikelihood empty = new BoardLikelihood(Invented.season(30), List.of(board(8, 9, 0)));
    BoardLikelihood.Tally still = empty.new Tally(1);
    double[] sure = {0};
    still.see(8, new Dying(7), 1, 0, new double[] {5}, sure);
    still.see(9, new Dying(7), 1, 0, new double[] {5}, sure);
    assertThat(sure[0]).as("nothing died and nothing was found").isCloseTo(0, within(1e-12));
  }
}
