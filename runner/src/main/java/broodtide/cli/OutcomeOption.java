package broodtide.cli;

import broodtide.assessment.Outcome;

/** The word for what is judged. */
final class OutcomeOption {
  private OutcomeOption() {}

  /** The outcome that a word of the command line means. */
  static Outcome named(String word) {
    return KnownWords.read("--outcome", word, Outcome.values(), Outcome::word);
  }
}
