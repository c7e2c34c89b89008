package broodtide.fit;

import broodtide.measure.Unworkable;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;

/** Counts that no colony of the priors could have given. */
final class Unexplained extends Unworkable {
  private static final long serialVersionUID = 1L;

  /**
   * @param wash the first wash that cannot have come about
   */
  Unexplained(Wash wash) {
    super(
        "colony \""
            + wash.colony()
            + "\": no simulated colony is consistent with the wash of "
            + wash.date()
            + ", "
            + wash.mites()
            + (wash.mites() == 1 ? " mite in " : " mites in ")
            + Math.round(wash.beesOrAssumed())
            + " bees, after what came before. Check its counts and date, and whether a"
            + " treatment or a split is missing or misdated. Check what the study says of"
            + " the colony's size and mites");
  }

  /**
   * @param board the first board, where there is no wash
   */
  Unexplained(BoardCount board) {
    super(
        "colony \""
            + board.colony()
            + "\": no simulated colony is consistent with "
            + board.mites()
            + " mites on the board of "
            + board.date()
            + "; check its count and days, and whether a treatment is missing");
  }
}
