package broodtide.wash;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;

/**
 * Mites that fell on a board under one colony, counted on the day on which it was taken out.
 *
 * <p>They are mites that died: those that came out of cells dead or dying, and those that died on
 * bees. Live mites that drop are taken for part of them. What a board shows of these deaths hangs
 * on bees that clean it or carry mites off, on the mesh and on ants, so it is known within a wide
 * factor alone. Immutable.
 *
 * @param from the day on which the clean board went in
 * @param date the day on which it came out, {@value #FEWEST_DAYS} to {@value #MOST_DAYS} days later
 * @param colony the colony's name, not blank
 * @param mites mites counted, 0 to {@value #MOST_MITES}
 */
public record BoardCount(LocalDate from, LocalDate date, String colony, int mites) {
  /** Fewest days that a board lies. */
  public static final int FEWEST_DAYS = 1;

  /** Most days that a board lies; later ants and cleaning leave little to count. Choice. */
  public static final int MOST_DAYS = 28;

  /** Most mites on a board. */
  public static final int MOST_MITES = 50_000;

  /**
   * Median of mites counted over mites that died in the colony. A choice: no ratio of the daily
   * fall to all mites with a sample behind it was found.
   */
  public static final double SHOWN = 0.5;

  /**
   * Standard deviation of its logarithm between colonies, the same for all boards of one colony. A
   * wide choice; about half of fallen mites still lived (Lobb and Martin 1997, Apidologie 28:367),
   * so grooming and cleaning can move it far.
   */
  public static final double LOG_SD = 0.7;

  /** Standard deviation from board to board of one colony, as a share of the mean. Choice. */
  public static final double BETWEEN_BOARDS = 0.3;

  /** Checks the days and the count; throws {@link OutOfRange} that names the column. */
  public BoardCount {
    if (colony.isBlank()) {
      throw new OutOfRange("colony", "blank", "a name");
    }
    long days = date.toEpochDay() - from.toEpochDay();
    if (days < FEWEST_DAYS || days > MOST_DAYS) {
      throw new OutOfRange(
          "board_days", Long.toString(days), FEWEST_DAYS + " to " + MOST_DAYS + " days");
    }
    OutOfRange.check("mites", mites, 0, MOST_MITES, "mites");
  }

  /** {@return days for which it lay} */
  public int days() {
    return Math.toIntExact(date.toEpochDay() - from.toEpochDay());
  }

  /** {@return mites that fell in a day} */
  public double perDay() {
    return (double) mites / days();
  }
}
