package broodtide.mite;

import broodtide.measure.OutOfRange;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;

/**
 * Mites that arrive on drifting and robbing bees.
 *
 * @param windows stretches of the year with their rates; where they overlap the rates add
 */
public record Immigration(List<Window> windows) {
  /**
   * One stretch.
   *
   * @param span when
   * @param perDay mites per day, 0 to 1,000
   */
  public record Window(YearSpan span, double perDay) {
    /** Checks the rate. */
    public Window {
      OutOfRange.check("perDay", perDay, 0, 1000, "mites/day");
    }
  }

  /**
   * The late season in the north, in which colonies collapse and are robbed: most mites arrive, and
   * how many differs most between places and years (Frey and Rosenkranz 2014, J. Econ. Entomol.).
   */
  public static final YearSpan LATE = new YearSpan(MonthDay.of(8, 1), MonthDay.of(11, 30));

  /** No mite arrives. */
  public static final Immigration NONE = new Immigration(List.of());

  /** Copies the list. */
  public Immigration {
    windows = List.copyOf(windows);
  }

  /**
   * {@return mites that arrive on a day}
   *
   * @param day the day
   */
  public double on(LocalDate day) {
    double sum = 0;
    for (Window w : windows) {
      if (w.span().holds(day)) {
        sum += w.perDay();
      }
    }
    return sum;
  }

  /** {@return the same half a year later, for a place south of the equator} */
  public Immigration inSouth() {
    return new Immigration(
        windows.stream().map(w -> new Window(w.span().southern(), w.perDay())).toList());
  }
}
