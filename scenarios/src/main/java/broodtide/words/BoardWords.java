package broodtide.words;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.CountOutlook;
import broodtide.assessment.Decision;
import broodtide.assessment.QuantileSummary;
import broodtide.wash.BoardCount;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What is said of mites on boards under one colony. */
public final class BoardWords {
  /** What another count brings. */
  public static final String WASH_TELLS_MORE =
      "A board alone tells how many mites there are within a wide factor; one wash narrows it.";

  private BoardWords() {}

  /**
   * {@return the newest board in one or two sentences: mites that fell in a day, and the threshold
   * of the set where it names one in daily fall; none without a board}
   *
   * @param c the colony
   */
  public static List<String> sentences(ColonyCase c) {
    Optional<BoardCount> newest = c.boards().stream().max(Comparator.comparing(BoardCount::date));
    if (newest.isEmpty()) {
      return List.of();
    }
    BoardCount board = newest.get();
    return List.of(
        "The board of " + Plain.day(board.date()) + " shows " + perDay(board) + ".",
        c.stages()
            .fallOn(c.thresholds(), board.date())
            .map(
                fall ->
                    "That is "
                        + (board.perDay() > fall ? "over" : "not over")
                        + " the threshold of "
                        + Digits.plain(fall)
                        + " a day "
                        + c.thresholds().where()
                        + ".")
            .orElse(
                "What falls differs widely between hives, so it is read with a wide factor, and no"
                    + " threshold in daily fall is named "
                    + c.thresholds().where()
                    + "."));
  }

  /**
   * {@return what a board alone says of its colony, in sentences: the daily fall, the infestation
   * of the simulated colonies that fit it, and the odds of standing over the treatment threshold}
   *
   * @param outlook the colony of which this board alone is known
   */
  public static List<String> alone(CountOutlook outlook) {
    ColonyCase c = outlook.colony();
    List<String> out = new ArrayList<>();
    out.add(String.join(" ", sentences(c)));
    QuantileSummary today = outlook.today();
    out.add(
        "Simulated colonies consistent with it have about "
            + Plain.level(today.median())
            + " mites per 100 bees (90 % interval "
            + Plain.levels(today.q05(), today.q95())
            + ").");
    Decision decision = outlook.decision();
    out.add(
        decision.overThresholdToday().isEmpty()
            ? Answer.noThreshold(c.now(), c.thresholds()) + "."
            : "The treatment threshold "
                + c.thresholds().where()
                + " is "
                + Answer.thresholdWords(c.thresholds(), decision.threshold().orElseThrow())
                + ". "
                + Plain.capital(over(decision.overThresholdToday().getAsDouble()))
                + ".");
    return out;
  }

  private static String over(double chance) {
    String odds = Odds.words(chance);
    return Odds.nearlySure(chance)
        ? "the colony " + odds + " is above it"
        : "the odds that the colony is above it are " + odds;
  }

  /**
   * {@return what fell in a day: {@code 8.0 mites a day (24 in 3 days)}}
   *
   * @param board the board
   */
  public static String perDay(BoardCount board) {
    return Digits.two(board.perDay())
        + " mites a day ("
        + Digits.count(board.mites())
        + " in "
        + Digits.counted(board.days(), "day")
        + ")";
  }

  /**
   * {@return the threshold in daily fall on the day of a board: {@code 10 a day}; a dash where the
   * set names none}
   *
   * @param c the colony
   * @param board a board under it
   */
  public static String threshold(ColonyCase c, BoardCount board) {
    return c.stages()
        .fallOn(c.thresholds(), board.date())
        .map(fall -> Digits.plain(fall) + " a day")
        .orElse("-");
  }
}
