package broodtide.words;

import broodtide.assessment.ColonyCase;
import broodtide.wash.BoardCount;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What is said of mites on boards under one colony. */
public final class BoardWords {
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
