package broodtide.cli;

import broodtide.compare.Difference;
import broodtide.compare.Outcome;
import broodtide.report.Digits;
import java.util.Arrays;

/** Outcomes in words. */
final class OutcomeWords {
  private OutcomeWords() {}

  /** The outcome that a word of the command line means. */
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

  /** A value for a column of a table: {@code 3.2}, {@code 27 %}. */
  static String brief(Outcome outcome, double value) {
    return outcome.shownTimes() == 100 ? Digits.percent(value) : Digits.two(value);
  }

  /** A value in a sentence: {@code 27 % of the winter brood has a mite}. */
  static String value(Outcome outcome, double value) {
    return switch (outcome) {
      case INFESTATION ->
          Digits.two(value) + " mites per 100 bees when the winter bees have been raised";
      case WINTER_BROOD -> Digits.percent(value) + " of the winter brood with a mite";
      case LOST -> Digits.percent(value) + " chance that the colony is lost";
    };
  }

  /** An amount that is gained or lost, with its unit: {@code 2.1 mites per 100}. */
  static String amount(Outcome outcome, double value) {
    double size = Math.abs(value) * outcome.shownTimes();
    String digits = size < 0.05 ? "next to no" : Digits.two(size);
    return switch (outcome) {
      case INFESTATION -> digits + " mites per 100 bees";
      case WINTER_BROOD -> digits + " in 100 cells of the winter brood";
      case LOST -> digits + " in 100 colonies";
    };
  }

  /** Whether a difference is too small to speak of. */
  static boolean nothing(Outcome outcome, Difference d) {
    return Math.abs(d.mean()) * outcome.shownTimes() < 0.05;
  }

  /** What a later start costs. */
  static String cost(Outcome outcome, Difference later) {
    String mean = amount(outcome, later.mean());
    if (nothing(outcome, later)) {
      return "makes next to no difference";
    }
    String verb = later.mean() > 0 ? "costs " : "gains ";
    return outcome == Outcome.LOST
        ? verb + mean
        : verb
            + mean
            + " on average (nine in ten seasons like yours: "
            + signed(outcome, later.band().q05(), later.mean())
            + " to "
            + signed(outcome, later.band().q95(), later.mean())
            + ")";
  }

  /** With the sign turned so that what the verb says counts as positive. */
  private static String signed(Outcome outcome, double value, double mean) {
    double turned = mean > 0 ? value : -value;
    return Digits.two(turned * outcome.shownTimes());
  }
}
