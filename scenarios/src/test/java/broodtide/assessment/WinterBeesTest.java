package broodtide.assessment;

import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;
import broodtide.pages.Check;
import java.time.LocalDate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What colonies with hardly a mite have left of their bees from October to April. */
@Tag("outside")
public class WinterBeesTest {
  private static final String LIEBIG =
      "Liebig 2024, imker-horgen.ch: Hohenheim, 3,258" + " colonies, 1989 to 2011";
  private static final String WELL_KEPT = "Aumeier & Liebig 2019: up to 20 % fewer, 50 % if cold";

  public static Stream<Check> checks() {
    return Stream.of(
        toMarch("cool-maritime"),
        toMarch("mild-maritime"),
        toMarch("temperate"),
        toMarch("boreal"),
        left("cold-continental", 31, "0.50; 0.1 either way by choice", 0.4, 0.6, WELL_KEPT),
        left("boreal", 31, "0.50 to 0.80", 0.5, 0.8, WELL_KEPT),
        left("cool-maritime", 31, "0.50 to 0.80", 0.5, 0.8, WELL_KEPT),
        left("mild-maritime", 31, "0.50 to 0.80", 0.5, 0.8, WELL_KEPT),
        left("temperate", 31, "0.50 to 0.80", 0.5, 0.8, WELL_KEPT),
        daily("cool-maritime", 0.0015, 0.003),
        daily("mild-maritime", 0.0015, 0.003),
        daily("temperate", 0.0015, 0.003),
        daily("boreal", 0.0015, 0.003),
        daily("cold-continental", 0.0036, 0.0056));
  }

  private static Check toMarch(String climate) {
    return left(climate, 5, "0.70; 0.07 either way by choice", 0.63, 0.77, LIEBIG);
  }

  private static Check left(
      String climate, int march, String published, double low, double high, String source) {
    return Check.within(
        "bees on " + march + " March as a share of those on 31 October, " + climate,
        published,
        low,
        high,
        source,
        () -> adults(climate, 2002, 3, march) / adults(climate, 2001, 10, 31));
  }

  private static Check daily(String climate, double low, double high) {
    String cold = "0.0046 in cold places; 0.001 either way by choice";
    return Check.within(
        "bees lost a day from 1 December to 20 January, as a share, " + climate,
        high > 0.003 ? cold : "0.0015 to 0.003 in central and mild places",
        low,
        high,
        "derived from Liebig 2024, Aumeier & Liebig 2019, Avitabile 1978 and Harris 2010",
        () -> Math.log(adults(climate, 2001, 12, 1) / adults(climate, 2002, 1, 20)) / 50);
  }

  private static double adults(String climate, int year, int month, int day) {
    Trajectory t = Untreated.from(climate, LocalDate.of(2001, 6, 1), 310, Untreated.FEW);
    return t.at(Quantity.ADULTS, LocalDate.of(year, month, day));
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }
}
