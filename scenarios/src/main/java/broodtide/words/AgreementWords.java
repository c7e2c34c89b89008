package broodtide.words;

import broodtide.fit.Agreement;
import java.util.Optional;

/** What a beekeeper should do about washes that do not fit the model. */
final class AgreementWords {
  private AgreementWords() {}

  /**
   * {@return what to look for; empty when washes and model agree}
   *
   * @param agreement how they agree
   */
  public static Optional<String> of(Agreement agreement) {
    if (!agreement.contradicts()) {
      return Optional.empty();
    }
    String what =
        agreement.allSurprising()
            ? "These washes do not fit the model: every one lies far from what it expects."
            : "These washes do not fit the model: fewer than 1 in "
                + Math.round(1 / Agreement.RARE)
                + " simulated colonies give a record as odd as this.";
    return Optional.of(
        what
            + " Look for a miscount, a wrong date, or a treatment or split that is not in the"
            + " record. Robbing, drifting bees or another kind of frame can do it too. Until that"
            + " is cleared up, trust the last wash more than the forecast.");
  }
}
