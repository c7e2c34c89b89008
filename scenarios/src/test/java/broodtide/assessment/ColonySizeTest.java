package broodtide.assessment;

import broodtide.colony.BeeRates;
import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;
import broodtide.lesson.Library;
import broodtide.pages.Check;
import broodtide.season.Curve;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Bees and brood of colonies without mites to speak of. */
@Tag("outside")
class ColonySizeTest {
  private static final String SCOTLAND = "McLellan 1978, Scotland; the paper gives no range";

  static Stream<Check> checks() {
    Stream<Check> sizes =
        Stream.of(
            scotland("adult bees on 25 May", 18_000, t -> adults(t, 5, 25)),
            scotland("most adult bees", 37_000, t -> peak(t.of(Quantity.ADULTS))),
            scotland("adult bees on 25 September", 13_000, t -> adults(t, 9, 25)),
            scotland("most brood", 24_000, ColonySizeTest::mostBrood),
            Check.within(
                "adult bees on 15 March, cold-continental",
                "13,274 +- 1,078",
                13_274 - 1078,
                13_274 + 1078,
                "Harris 2010, Manitoba",
                () -> adults(Untreated.year("cold-continental"), 3, 15)),
            Check.within(
                "adult bees on 15 August, warm-temperate",
                "24,808; 10 % either way by choice",
                0.9 * 24_808,
                1.1 * 24_808,
                "Delaplane & Hood 1997, south-east of the USA",
                () -> adults(Untreated.year("warm-temperate"), 8, 15)));
    Stream<Check> laying =
        Library.names(Library.Shelf.CLIMATES).stream()
            .map(
                climate ->
                    Check.within(
                        "eggs a day at the height of laying, " + climate,
                        "1,000 to 2,000",
                        1000,
                        2000,
                        "handbook figure, common practice",
                        () -> mostEggs(climate)));
    return Stream.concat(sizes, laying);
  }

  private static Check scotland(
      String what, double published, ToDoubleFunction<Trajectory> measured) {
    return Check.within(
        what + ", cool-maritime",
        String.format(Locale.ROOT, "%,.0f; 20 %% either way by choice", published),
        0.8 * published,
        1.2 * published,
        SCOTLAND,
        () -> measured.applyAsDouble(Untreated.year("cool-maritime")));
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  private static double adults(Trajectory t, int month, int day) {
    return t.at(Quantity.ADULTS, LocalDate.of(t.start().getYear(), month, day));
  }

  private static double mostBrood(Trajectory t) {
    double[] brood = new double[t.days()];
    double[] open = t.of(Quantity.OPEN_BROOD);
    double[] workers = t.of(Quantity.WORKER_CELLS);
    double[] drones = t.of(Quantity.DRONE_CELLS);
    Arrays.setAll(brood, day -> open[day] + workers[day] + drones[day]);
    return peak(brood);
  }

  private static double mostEggs(String climate) {
    Trajectory t = Untreated.year(climate);
    Curve potential = Library.climate(climate).laying();
    double half = BeeRates.defaults().halfLayingAdults();
    double[] adults = t.of(Quantity.ADULTS);
    return IntStream.range(0, t.days())
        .mapToDouble(
            day -> potential.at(t.start().plusDays(day)) * adults[day] / (adults[day] + half))
        .max()
        .orElseThrow();
  }

  private static double peak(double[] values) {
    return Arrays.stream(values).max().orElseThrow();
  }
}
