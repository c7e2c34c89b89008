package broodtide.engine;

import broodtide.season.Climate;
import broodtide.season.Curve;
import broodtide.season.YearSpan;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;

/** Invented climates for tests of the model, which has no files of its own. */
public final class Places {
  private Places() {}

  /** A year with a broodless winter, a drone season and winter bees. */
  public static Climate seasonal() {
    return new Climate(
        "seasonal",
        "invented",
        curve(
            "01-10", 0, "02-05", 80, "03-15", 600, "05-10", 1700, "06-10", 1700, "08-10", 800,
            "10-05", 100, "10-25", 0),
        curve("03-20", 0, "04-15", 0.04, "07-20", 0.04, "08-20", 0),
        curve("02-25", 0, "08-10", 0, "09-20", 0.85, "10-15", 1, "01-05", 1),
        curve("02-01", 0, "04-05", 1, "06-20", 1, "07-15", 0),
        0.0045,
        curve("01-15", 4, "07-15", 25),
        new YearSpan(MonthDay.of(5, 1), MonthDay.of(7, 31)),
        new YearSpan(MonthDay.of(8, 15), MonthDay.of(10, 1)),
        false,
        List.of("invented"));
  }

  /** Every day the same: laying and drone share constant, no winter bees. */
  public static Climate constant(double laying, double droneShare) {
    return new Climate(
        "constant",
        "invented",
        Curve.constant(laying),
        Curve.constant(droneShare),
        Curve.constant(0),
        Curve.constant(1),
        0.0045,
        Curve.constant(20),
        new YearSpan(MonthDay.of(5, 1), MonthDay.of(7, 31)),
        new YearSpan(MonthDay.of(8, 15), MonthDay.of(10, 1)),
        false,
        List.of("invented"));
  }

  private static Curve curve(Object... pairs) {
    List<Curve.Knot> knots = new ArrayList<>();
    for (int i = 0; i < pairs.length; i += 2) {
      knots.add(
          new Curve.Knot(MonthDay.parse("--" + pairs[i]), ((Number) pairs[i + 1]).doubleValue()));
    }
    knots.sort((a, b) -> a.day().compareTo(b.day()));
    return Curve.through(knots);
  }
}
