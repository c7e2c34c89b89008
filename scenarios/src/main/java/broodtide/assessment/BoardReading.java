package broodtide.assessment;

import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.MiteLedger;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.mite.Immigration;
import broodtide.wash.BoardCount;
import broodtide.wash.RatePosterior;
import java.util.List;

/**
 * One board read by itself, as a wash is: the infestation at which a usual colony of the place and
 * season loses as many mites as fell, with the wide doubt about what boards show. Answers are not
 * made of it; they read all counts of a colony together.
 *
 * <p>Immutable, and safe to share between threads.
 *
 * @param board the board
 * @param infestation mites per 100 adult bees on the day on which it came out
 * @since 0.2.0
 */
public record BoardReading(BoardCount board, RatePosterior infestation) {
  /** Mites per 100 bees of the colony whose deaths are followed: few, so that all goes by share. */
  private static final double FEW = 1;

  /**
   * {@return what a board says}
   *
   * @param board the board
   * @param model rates and place; mites from outside are left out
   */
  public static BoardReading of(BoardCount board, ColonyModel model) {
    Scenario season =
        new Scenario(
            model.with(Immigration.NONE), Plan.waiting("board"), board.from(), board.days());
    double[] deaths = new double[1];
    DailyEngine.of(
            season,
            StandardColony.on(season.model(), board.from()),
            List.of(SimulatedColony.average(FEW)))
        .run(
            (day, view) -> {
              if (day == board.days()) {
                MiteLedger ledger = view.ledger(0);
                deaths[0] =
                    (ledger.diedOnBees() + ledger.diedInCells()) / Quantity.INFESTATION.of(view, 0);
              }
            });
    return new BoardReading(board, RatePosterior.ofBoard(board, deaths[0]));
  }
}
