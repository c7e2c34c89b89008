package broodtide.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import broodtide.colony.BeeRates;
import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;
import broodtide.season.Curve;
import broodtide.study.Library;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Bees and brood of colonies without mites to speak of. */
@Tag("outside")
class ColonySizeTest {
  static List<String> climates() {
    return Library.names(Library.Shelf.CLIMATES);
  }

  /**
   * Scotland: 18,000 adults in late May, a peak of 37,000, 13,000 in late September, brood peak of
   * 24,000 (McLellan 1978). Within 20 % by choice: the paper's figures come without a range.
   */
  @Test
  void scotland() {
    Trajectory t = Untreated.year("cool-maritime");
    double[] brood = new double[t.days()];
    double[] open = t.of(Quantity.OPEN_BROOD);
    double[] workers = t.of(Quantity.WORKER_CELLS);
    double[] drones = t.of(Quantity.DRONE_CELLS);
    Arrays.setAll(brood, day -> open[day] + workers[day] + drones[day]);
    assertThat(t.at(Quantity.ADULTS, LocalDate.of(2001, 5, 25)))
        .isCloseTo(18_000, withinPercentage(20));
    assertThat(peak(t.of(Quantity.ADULTS))).isCloseTo(37_000, withinPercentage(20));
    assertThat(t.at(Quantity.ADULTS, LocalDate.of(2001, 9, 25)))
        .isCloseTo(13_000, withinPercentage(20));
    assertThat(peak(brood)).isCloseTo(24_000, withinPercentage(20));
  }

  /** Manitoba: 13,274 +- 1,078 adults in March (Harris 2010). */
  @Test
  void manitobaInMarch() {
    Trajectory t = Untreated.year("cold-continental");
    assertThat(t.at(Quantity.ADULTS, LocalDate.of(2001, 3, 15))).isCloseTo(13_274, within(1078.0));
  }

  /** South-east of the USA: 24,808 adults in mid-August (Delaplane & Hood 1997); 10 % by choice. */
  @Test
  void southEastInMidAugust() {
    Trajectory t = Untreated.year("warm-temperate");
    assertThat(t.at(Quantity.ADULTS, LocalDate.of(2001, 8, 15)))
        .isCloseTo(24_808, withinPercentage(10));
  }

  /** At their peak queens lay 1,000 to 2,000 eggs a day. Handbook figure, common practice. */
  @ParameterizedTest
  @MethodSource("climates")
  void layingAtItsPeak(String climate) {
    Trajectory t = Untreated.year(climate);
    Curve potential = Library.climate(climate).laying();
    double half = BeeRates.defaults().halfLayingAdults();
    double[] adults = t.of(Quantity.ADULTS);
    double most =
        IntStream.range(0, t.days())
            .mapToDouble(
                day -> potential.at(t.start().plusDays(day)) * adults[day] / (adults[day] + half))
            .max()
            .orElseThrow();
    assertThat(most).isBetween(1000.0, 2000.0);
  }

  private static double peak(double[] values) {
    return Arrays.stream(values).max().orElseThrow();
  }
}
