package broodtide.decision;

import broodtide.measure.OutOfRange;
import broodtide.wash.Frame;
import broodtide.wash.WashMethod;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * Washes at regular intervals, and how they are taken.
 *
 * @param first day of the first one
 * @param last no wash after this day
 * @param every days from one to the next, 7 to 120
 * @param bees bees in each, 50 to 1,000
 * @param recovery share of the mites on the bees that a wash finds, 0.01 to 1
 * @param spread standard deviation over mean of what washes find beyond the chance of the wash:
 *     method and frame; 0 for chance alone
 */
public record WashRound(
    LocalDate first, LocalDate last, int every, int bees, double recovery, double spread) {
  /** Checks ranges. */
  public WashRound {
    OutOfRange.check("every", every, 7, 120, "days");
    OutOfRange.check("bees", bees, 50, 1000, "bees");
    OutOfRange.check("recovery", recovery, 0.01, 1, "1");
    OutOfRange.check("spread", spread, 0, 2, "1");
    if (last.isBefore(first)) {
      throw new OutOfRange("last", last.toString(), first + " or later");
    }
  }

  /**
   * {@return alcohol washes of bees from mixed frames, as in the records of washes}
   *
   * @param first day of the first one
   * @param last no wash after this day
   * @param every days from one to the next, 7 to 120
   * @param bees bees in each, 50 to 1,000
   */
  public static WashRound usual(LocalDate first, LocalDate last, int every, int bees) {
    var recovery = WashMethod.ALCOHOL.recovery();
    var frame = Frame.MIXED.factor();
    return new WashRound(
        first,
        last,
        every,
        bees,
        recovery.mean() * frame.mean(),
        Math.hypot(recovery.sd() / recovery.mean(), frame.sd() / frame.mean()));
  }

  /** {@return the days} */
  public List<LocalDate> days() {
    List<LocalDate> out = new ArrayList<>();
    for (LocalDate d = first; !d.isAfter(last); d = d.plusDays(every)) {
      out.add(d);
    }
    return out;
  }
}
