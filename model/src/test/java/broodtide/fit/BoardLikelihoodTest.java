package broodtide.fit;

import static broodtide.fit.Invented.START;
import static broodtide.fit.Invented.season;
import static broodtide.fit.Invented.wash;
import static org.assertj.core.api.Assertions.assertThat;

import broodtide.engine.Ensemble;
import broodtide.engine.EnsembleRun;
import broodtide.engine.MiteLedger;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Trajectory;
import broodtide.engine.Workers;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Mites on boards beside washes. */
class BoardLikelihoodTest {
  private static final int LAST = 75;
  private static final Scenario PAST = season(LAST);

  /** An invented colony that nobody infers: 1 mite per 100 bees on the first day. */
  private static Trajectory truth() {
    Trajectory.Recorder recorder = new Trajectory.Recorder(START, LAST);
    try (Workers workers = new Workers(1)) {
      Ensemble.run(
          PAST,
          StandardColony.on(PAST.model(), START),
          List.of(new SimulatedColony(1, 1, 1, 1, 1, List.of())),
          (first, lanes) -> recorder,
          workers,
          Progress.NONE);
    }
    return recorder.trajectory();
  }

  private static double deaths(Trajectory truth, int from, int to) {
    MiteLedger before = truth.ledger(from);
    MiteLedger after = truth.ledger(to);
    return after.diedOnBees() + after.diedInCells() - before.diedOnBees() - before.diedInCells();
  }

  private static BoardCount board(int from, int to, double mites) {
    return new BoardCount(START.plusDays(from), START.plusDays(to), "A", (int) Math.round(mites));
  }

  private static double[] infestation(List<Wash> washes, List<BoardCount> boards, int threads) {
    try (Workers workers = new Workers(threads)) {
      SeasonPosterior posterior =
          SeasonPosterior.of(
              PAST,
              washes,
              boards,
              Priors.defaults(),
              new SeasonPosterior.SamplerSettings(1024, 2, 5),
              workers,
              Progress.NONE);
      EnsembleRun run = posterior.run(PAST, Set.of(Quantity.INFESTATION), workers, Progress.NONE);
      return run.values(Quantity.INFESTATION, START.plusDays(LAST));
    }
  }

  private static double logWidth(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return Math.log(EnsembleRun.quantile(sorted, 0.95) / EnsembleRun.quantile(sorted, 0.05));
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return EnsembleRun.quantile(sorted, 0.5);
  }

  /** A wash and boards of one invented colony lead to one posterior, sharper than the wash's. */
  @Test
  void aBoardAndAWashGiveOnePosterior() {
    Trajectory truth = truth();
    double perBee = truth.of(Quantity.INFESTATION)[30] / 100;
    Wash early = wash(30, (int) Math.round(perBee * 0.9 * 300), 300);
    BoardCount board = board(LAST - 3, LAST, BoardCount.SHOWN * deaths(truth, LAST - 3, LAST));
    assertThat(board.mites()).isGreaterThan(10);
    double[] alone = infestation(List.of(early), List.of(), 1);
    double[] both = infestation(List.of(early), List.of(board), 1);
    double real = truth.of(Quantity.INFESTATION)[LAST];
    assertThat(logWidth(both)).isLessThan(0.95 * logWidth(alone));
    assertThat(Math.abs(Math.log(median(both) / real))).isLessThan(0.7);
    assertThat(infestation(List.of(early), List.of(board), 2)).isEqualTo(both);
    BoardCount tenfold = board(LAST - 3, LAST, 10.0 * board.mites());
    assertThat(median(infestation(List.of(early), List.of(tenfold), 1)))
        .isGreaterThan(1.4 * median(both));
  }

  /** What this colony shows on boards is one unknown: six boards do not count as six. */
  @Test
  void manyBoardsOfOneColonyStayLessSureThanAWash() {
    Trajectory truth = truth();
    Wash early = wash(30, 3, 300);
    List<BoardCount> boards =
        List.of(57, 60, 63, 66, 69, 72).stream()
            .map(d -> board(d, d + 3, BoardCount.SHOWN * deaths(truth, d, d + 3)))
            .toList();
    Wash late = wash(LAST, (int) Math.round(truth.of(Quantity.INFESTATION)[LAST] * 0.9 * 3), 300);
    assertThat(logWidth(infestation(List.of(early), boards, 2)))
        .isGreaterThan(logWidth(infestation(List.of(early, late), List.of(), 2)));
  }

  /** A board alone finds the invented colony, and is less sure of it than a wash alone. */
  @Test
  void aBoardAloneHoldsTheColonyWithinAWideFactor() {
    Trajectory truth = truth();
    double real = truth.of(Quantity.INFESTATION)[LAST];
    BoardCount board = board(LAST - 3, LAST, BoardCount.SHOWN * deaths(truth, LAST - 3, LAST));
    double[] found = infestation(List.of(), List.of(board), 2);
    Arrays.sort(found);
    assertThat(real)
        .isBetween(EnsembleRun.quantile(found, 0.05), EnsembleRun.quantile(found, 0.95));
    Wash wash = wash(LAST, (int) Math.round(real * 0.9 * 3), 300);
    assertThat(logWidth(found))
        .isGreaterThan(1.2 * logWidth(infestation(List.of(wash), List.of(), 2)));
    assertThat(logWidth(found))
        .as("narrower than what is believed without any count")
        .isLessThan(0.8 * logWidth(infestation(List.of(), List.of(), 2)));
    assertThat(infestation(List.of(), List.of(board), 1))
        .isEqualTo(infestation(List.of(), List.of(board), 2));
  }
}
