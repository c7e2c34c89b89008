package broodtide.fit;

import broodtide.measure.Unworkable;
import broodtide.wash.Wash;

/** Washes that no colony of the priors could have given. */
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
}
