package broodtide.assessment;

import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;
import broodtide.pages.Check;
import java.time.LocalDate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Months from 0.25 mites per 100 bees to 3 in the subtropical climate. The days on which the
 * trials' seasons began were not seen; tried here are the first of the month and the solstice or
 * equinox of each season. Nothing flies in.
 */
@Tag("outside")
class SeasonsInFloridaTest {
  private static final double MONTH = 365.25 / 12;
  private static final String SOURCE =
      "Jack et al. 2023, Front. Ecol. Evol. 11:1102457, north central Florida";

  static Stream<Check> checks() {
    return Stream.concat(
        Stream.of("12-01", "12-21", "01-15", "02-01", "03-01", "03-20")
            .map(start -> months(start, "4 to 5 from winter and spring", 4, 5)),
        Stream.of("06-01", "06-21", "08-01", "09-01", "09-22")
            .map(start -> months(start, "under 3 from summer and autumn", 0, 3)));
  }

  private static Check months(String start, String published, double low, double high) {
    return Check.within(
        "months from 0.25 to 3 per 100 bees from " + start + ", subtropical",
        published,
        low,
        high,
        SOURCE,
        () -> monthsToThree(start));
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  private static double monthsToThree(String start) {
    LocalDate from = LocalDate.parse("2001-" + start);
    Trajectory t = Untreated.from("subtropical", from, 300, 0.25);
    double[] infestation = t.of(Quantity.INFESTATION);
    int day = 0;
    while (infestation[day] < 3) {
      day++;
    }
    return day / MONTH;
  }
}
