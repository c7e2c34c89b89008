package broodtide.season;

import broodtide.measure.Unworkable;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;

/**
 * A quantity over the year: straight lines between knots, repeated every year.
 *
 * <p>Straight lines never overshoot their knots, so a curve is non-negative wherever its knots are,
 * and a reader can check any day by hand. Days count by their share of the year, so leap years move
 * a date by less than a day.
 */
public final class Curve {
  /**
   * One knot.
   *
   * @param day the day of the year; 29 February is not allowed
   * @param value the value on that day, finite
   */
  public record Knot(MonthDay day, double value) {
    /** Checks the knot. */
    public Knot {
      if (day.getMonthValue() == 2 && day.getDayOfMonth() == 29) {
        throw new Unworkable("a knot cannot lie on 02-29; use 02-28 or 03-01");
      }
      if (!Double.isFinite(value)) {
        throw new Unworkable("the knot on " + day + " has the value " + value);
      }
    }
  }

  private static final int COMMON_YEAR = 2001;

  private final List<Knot> knots;
  private final double shift;
  private final double[] phase;
  private final double[] value;

  private Curve(List<Knot> knots, double shift) {
    this.knots = List.copyOf(knots);
    this.shift = shift;
    phase = new double[knots.size()];
    value = new double[knots.size()];
    for (int i = 0; i < phase.length; i++) {
      phase[i] = phase(knots.get(i).day().atYear(COMMON_YEAR));
      value[i] = knots.get(i).value();
      if (i > 0 && phase[i] <= phase[i - 1]) {
        throw new Unworkable(
            "knots must rise through the year; " + knots.get(i).day() + " does not follow");
      }
    }
    if (knots.isEmpty()) {
      throw new Unworkable("a curve needs at least one knot");
    }
  }

  /**
   * {@return a curve through knots}
   *
   * @param knots at least one, in the order of the year, no day twice
   * @throws Unworkable when the order is wrong or there is no knot
   */
  public static Curve through(List<Knot> knots) {
    return new Curve(knots, 0);
  }

  /**
   * {@return the same value all year}
   *
   * @param value the value, finite
   */
  public static Curve constant(double value) {
    return through(List.of(new Knot(MonthDay.of(1, 1), value)));
  }

  /** {@return the curve half a year later: the same season south of the equator} */
  public Curve southern() {
    return new Curve(knots, (shift + 0.5) % 1.0);
  }

  /** {@return the knots as given, before any shift} */
  public List<Knot> knots() {
    return knots;
  }

  /** {@return the points of the year at which the curve bends, as shares of the year gone by} */
  public double[] bends() {
    double[] out = new double[phase.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = phase[i] - shift - Math.floor(phase[i] - shift);
    }
    return out;
  }

  /**
   * {@return the value on a day}
   *
   * @param day any day of any year
   */
  public double at(LocalDate day) {
    return at(phase(day));
  }

  /**
   * {@return the value at a point of the year}
   *
   * @param yearShare share of the year gone by, any finite number; whole years do not matter
   */
  public double at(double yearShare) {
    double x = yearShare + shift;
    x -= Math.floor(x);
    int last = phase.length - 1;
    int right = 0;
    while (right <= last && phase[right] <= x) {
      right++;
    }
    int l = right == 0 ? last : right - 1;
    int r = right > last ? 0 : right;
    double from = right == 0 ? phase[l] - 1 : phase[l];
    double to = right > last ? phase[r] + 1 : phase[r];
    return value[l] + (value[r] - value[l]) * ((x - from) / (to - from));
  }

  /**
   * {@return the values on consecutive days}
   *
   * @param from the first day
   * @param days how many, 0 or more
   */
  public double[] daily(LocalDate from, int days) {
    double[] out = new double[days];
    for (int i = 0; i < days; i++) {
      out[i] = at(from.plusDays(i));
    }
    return out;
  }

  /** {@return the largest value of the year, which lies on a knot} */
  public double peak() {
    double top = value[0];
    for (double v : value) {
      top = Math.max(top, v);
    }
    return top;
  }

  /** {@return the smallest value of the year, which lies on a knot} */
  public double lowest() {
    double low = value[0];
    for (double v : value) {
      low = Math.min(low, v);
    }
    return low;
  }

  /**
   * {@return the share of the year gone by at the start of a day, 0 inclusive to 1 exclusive}
   *
   * @param day the day
   */
  public static double phase(LocalDate day) {
    return (day.getDayOfYear() - 1.0) / day.lengthOfYear();
  }
}
