package broodtide.assessment;

import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;
import broodtide.pages.Check;
import java.time.LocalDate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** How often all mites of an untreated colony multiply in a year when few have flown in. */
@Tag("outside")
class YearlyGrowthTest {
  static Stream<Check> checks() {
    return Stream.of(
        multiplication(
            "boreal",
            "8.2 to 24.6",
            8.2,
            24.6,
            "Korpela et al. 1992, south-east Finland, no mites from outside"),
        multiplication(
            "cool-maritime",
            "5 to 6 doublings",
            32,
            64,
            "Al Toufailia & Ratnieks, southern England"),
        multiplication(
            "warm-temperate",
            "of the order of 300; range by choice",
            100,
            1000,
            "Kraus & Page 1995, California"),
        Check.within(
            "share of mites lost from 15 October to 5 April, boreal",
            "0.398; 0.1 either way by choice",
            0.298,
            0.498,
            "Korpela et al. 1992, south-east Finland",
            () -> {
              Trajectory t = Untreated.from("boreal", LocalDate.of(2001, 6, 1), 320, Untreated.FEW);
              return 1
                  - t.at(Quantity.MITES, LocalDate.of(2002, 4, 5))
                      / t.at(Quantity.MITES, LocalDate.of(2001, 10, 15));
            }));
  }

  private static Check multiplication(
      String climate, String published, double low, double high, String source) {
    return Check.within(
        "mites multiply in a year, " + climate,
        published,
        low,
        high,
        source,
        () -> {
          LocalDate spring = LocalDate.of(2001, 3, 15);
          Trajectory year = Untreated.from(climate, spring, 365, Untreated.FEW);
          return year.at(Quantity.MITES, spring.plusDays(365)) / year.at(Quantity.MITES, spring);
        });
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }
}
