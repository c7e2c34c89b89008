package broodtide.compare;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;
import java.time.LocalDate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How often all mites of an untreated colony multiply in a year when few have flown in. */
@Tag("outside")
class YearlyGrowthTest {
  /**
   * Boreal, 8.2 to 24.6 a year (Korpela et al. 1992, south-east Finland, no immigration). Cool
   * maritime, 5 to 6 doublings, 32 to 64 (Al Toufailia & Ratnieks, southern England). Long season,
   * "of the order of 300" (Kraus & Page 1995, California): 100 to 1,000 by choice.
   */
  @ParameterizedTest
  @CsvSource({"boreal,8.2,24.6", "cool-maritime,32,64", "warm-temperate,100,1000"})
  void publishedMultiplication(String climate, double low, double high) {
    LocalDate spring = LocalDate.of(2001, 3, 15);
    Trajectory year = Untreated.from(climate, spring, 365, Untreated.FEW);
    double times = year.at(Quantity.MITES, spring.plusDays(365)) / year.at(Quantity.MITES, spring);
    assertThat(times).isBetween(low, high);
  }
}
