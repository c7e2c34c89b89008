package broodtide.words;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Difference;
import broodtide.assessment.Outcome;
import broodtide.engine.SpringLow;
import java.time.LocalDate;

/** Outcomes in words. */
public final class OutcomeWords {
  private OutcomeWords() {}

  /**
   * {@return a value for a column of a table: {@code 3.2}, {@code 27 %}}
   *
   * @param outcome what plans are judged by
   * @param value the figure, in the unit of the outcome
   */
  public static String brief(Outcome outcome, double value) {
    return switch (outcome) {
      case INFESTATION -> Plain.level(value);
      case WINTER_BROOD -> Digits.percent(value);
      case LOST -> Digits.chance(value);
    };
  }

  /**
   * {@return a value with its name: {@code winter-bee brood with a mite 27 %}}
   *
   * @param outcome what plans are judged by
   * @param value the figure, in the unit of the outcome
   */
  public static String named(Outcome outcome, double value) {
    return switch (outcome) {
      case INFESTATION -> Plain.level(value) + " mites per 100 bees in autumn";
      case WINTER_BROOD -> "winter-bee brood with a mite " + Digits.percent(value);
      case LOST -> "winter loss " + Digits.chance(value);
    };
  }

  /**
   * {@return what it means that a colony is lost: as far as the forecast reaches}
   *
   * @param c the case
   */
  public static String meaning(ColonyCase c) {
    LocalDate day = c.springLow().map(SpringLow::day).orElse(c.until());
    return "dead or too weak by " + Plain.day(day) + ", from any cause";
  }

  /**
   * {@return an amount that is gained or lost, with its unit: {@code 2.1 mites per 100}}
   *
   * @param outcome what plans are judged by
   * @param value the figure, in the unit of the outcome
   */
  public static String amount(Outcome outcome, double value) {
    double size = Math.abs(value) * outcome.shownTimes();
    return switch (outcome) {
      case INFESTATION -> (size < 0.05 ? "next to no" : Digits.two(size)) + " mites per 100 bees";
      case WINTER_BROOD -> whole(size) + " in 100 winter-bee cells";
      case LOST -> whole(size) + " in 100 colonies";
    };
  }

  /** A number of a hundred things, no finer than one of them. */
  private static String whole(double size) {
    return size < 1 ? "less than 1" : String.valueOf(Math.round(size));
  }

  /**
   * {@return whether a difference is too small to speak of}
   *
   * @param outcome what plans are judged by
   * @param d the difference to waiting
   */
  public static boolean nothing(Outcome outcome, Difference d) {
    return Math.abs(d.mean()) * outcome.shownTimes() < 0.05;
  }

  /**
   * {@return what a later start costs}
   *
   * @param outcome what plans are judged by
   * @param later the difference that a week makes
   */
  public static String cost(Outcome outcome, Difference later) {
    String mean = amount(outcome, later.mean());
    if (nothing(outcome, later)) {
      return "makes next to no difference";
    }
    String verb = later.mean() > 0 ? "costs " : "gains ";
    return outcome == Outcome.LOST
        ? verb + mean
        : verb
            + mean
            + " on average (90 % interval "
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
