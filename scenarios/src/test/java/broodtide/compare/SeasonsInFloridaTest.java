package broodtide.compare;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;
import java.time.LocalDate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Months from 0.25 mites per 100 bees to 3 in the subtropical climate (Jack et al. 2023, Front.
 * Ecol. Evol. 11:1102457, north central Florida): 4 to 5 from winter and spring, under 3 from
 * summer and autumn. The days on which the trials' seasons began were not seen; tried here are the
 * first of the month and the solstice or equinox of each season. Nothing flies in.
 */
@Tag("outside")
class SeasonsInFloridaTest {
  private static final double MONTH = 365.25 / 12;

  @ParameterizedTest
  @ValueSource(strings = {"12-01", "12-21", "01-15", "02-01", "03-01", "03-20"})
  void slowFromWinterAndSpring(String start) {
    assertThat(monthsToThree(start)).isBetween(4.0, 5.0);
  }

  @ParameterizedTest
  @ValueSource(strings = {"06-01", "06-21", "08-01", "09-01", "09-22"})
  void fastFromSummerAndAutumn(String start) {
    assertThat(monthsToThree(start)).isLessThan(3);
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
