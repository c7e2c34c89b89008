package broodtide.cli;

import broodtide.compare.Outcome;
import java.util.Arrays;

/** The outcome that a word of the command line means. */
final class OutcomeOption {
  private OutcomeOption() {}

  static Outcome named(String word) {
    return Arrays.stream(Outcome.values())
        .filter(o -> o.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new Refusal(
                    "--outcome is \""
                        + word
                        + "\"; allowed are "
                        + String.join(
                            ", ", Arrays.stream(Outcome.values()).map(Outcome::word).toList())));
  }
}
