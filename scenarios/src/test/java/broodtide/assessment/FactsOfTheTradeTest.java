package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;
import broodtide.wash.Infestation;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What every course for beginners says. Common practice, no source. */
@Tag("outside")
class FactsOfTheTradeTest {
  static List<String> climates() {
    return Catalog.CLIMATES.names();
  }

  /**
   * Mites double about every month while the colony is full of brood. Late in the season the mites
   * per bee rise faster than the mites, for then bees dwindle and mites leave the brood.
   */
  @ParameterizedTest
  @ValueSource(strings = {"cold-continental", "cool-maritime", "temperate"})
  void mitesDoubleAboutEveryMonth(String climate) {
    Trajectory t = Untreated.from(climate, LocalDate.of(2001, 4, 20), 170, 0.3);
    double summer = monthly(t, Quantity.MITES, LocalDate.of(2001, 5, 1), LocalDate.of(2001, 8, 1));
    assertThat(summer).isBetween(1.7, 2.6);
    LocalDate august = LocalDate.of(2001, 8, 15);
    LocalDate autumn = LocalDate.of(2001, 9, 25);
    assertThat(monthly(t, Quantity.INFESTATION, august, autumn))
        .isGreaterThan(1.3 * monthly(t, Quantity.MITES, august, autumn));
  }

  private static double monthly(Trajectory t, Quantity quantity, LocalDate from, LocalDate to) {
    double months = (to.toEpochDay() - from.toEpochDay()) / 30.4;
    return Math.pow(t.at(quantity, to) / t.at(quantity, from), 1 / months);
  }

  /** Half a cup is 300 bees, so 12 mites are 4 per 100. */
  @Test
  void twelveInHalfACupAreFourPerHundred() {
    Wash wash = Wash.of(LocalDate.of(2001, 7, 1), "garden", 12, 300);
    assertThat(Infestation.of(wash).perHundred()).isCloseTo(4, within(1e-12));
    Wash uncounted = Wash.ofHalfCup(LocalDate.of(2001, 7, 1), "garden", 12);
    assertThat(Infestation.of(uncounted).perHundred()).isCloseTo(4, within(0.3));
  }

  /** Most mites are in capped cells for as long as the colony grows. */
  @ParameterizedTest
  @MethodSource("climates")
  void mostMitesAreUnderCappingsInTheSeason(String climate) {
    Trajectory t = Untreated.year(climate);
    double[] inCells = t.of(Quantity.SHARE_IN_CELLS);
    int may = LocalDate.of(2001, 5, 1).getDayOfYear();
    int august = LocalDate.of(2001, 8, 1).getDayOfYear();
    assertThat(IntStream.range(may, august).mapToObj(day -> inCells[day]))
        .allSatisfy(share -> assertThat(share).isGreaterThan(0.5));
  }

  /** Drone brood draws mites: many times as many per cell as worker brood, in every climate. */
  @ParameterizedTest
  @MethodSource("climates")
  void droneBroodHoldsFarMoreMitesPerCell(String climate) {
    Trajectory t = Untreated.year(climate);
    LocalDate june = LocalDate.of(2001, 6, 15);
    double inDrone = t.at(Quantity.MITES_IN_DRONE_CELLS, june);
    double inWorker = t.at(Quantity.MITES_IN_CELLS, june) - inDrone;
    double perDrone = inDrone / t.at(Quantity.DRONE_CELLS, june);
    double perWorker = inWorker / t.at(Quantity.WORKER_CELLS, june);
    assertThat(perDrone / perWorker).isBetween(5.0, 20.0);
  }
}
