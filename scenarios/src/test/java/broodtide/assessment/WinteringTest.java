package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.engine.ColonyModel;
import broodtide.engine.SpringLow;
import broodtide.engine.Survival;
import broodtide.engine.Wintering;
import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.Map;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WinteringTest {
  private static final LocalDate WASH = LocalDate.of(2025, 9, 5);
  private static final Survival TEMPERATE = Survival.in(Shipped.model("temperate"));

  /**
   * Python 3, {@code statistics.NormalDist().cdf(log(x / 2200) / sqrt(.73))} for three x, luck of
   * the yard averaged.
   */
  @ParameterizedTest
  @CsvSource({"2200, 0.5", "22000, 0.99648", "1100, 0.20861", "0, 0"})
  void enoughBees(double adults, double chance) {
    assertThat(TEMPERATE.enough(adults)).isCloseTo(chance, within(1e-4));
  }

  /** The mean over the yard's luck, summed in small steps, is what the closed form says. */
  @Test
  void theLuckOfAYardIsAveragedOver() {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double few = 0;
    double spared = 0;
    double fewByLuck = 0;
    double sparedByLuck = 0;
    LocalDate june = LocalDate.of(2026, 6, 1);
    for (double u = -9; u <= 9; u += 0.01) {
      double weight = 0.01 * normal.density(u);
      few += weight * normal.cumulativeProbability((Math.log(3000.0 / 2200) - 0.8 * u) / 0.3);
      spared += weight / (1 + Math.exp(Math.log(0.1 / 0.9) + 1.2 * u));
      fewByLuck += weight * TEMPERATE.enough(3000, u);
      sparedByLuck += weight * TEMPERATE.spared(WASH, june, u);
    }
    assertThat(TEMPERATE.enough(3000)).isCloseTo(few, within(1e-6));
    assertThat(TEMPERATE.spared(WASH, june)).isCloseTo(spared, within(1e-6));
    assertThat(fewByLuck).isCloseTo(few, within(1e-6));
    assertThat(sparedByLuck).isCloseTo(spared, within(1e-6));
  }

  @Test
  void winterPassesOnceAYear() {
    LocalDate october = LocalDate.of(2025, 11, 20);
    assertThat(TEMPERATE.spared(WASH, WASH.plusDays(5))).isEqualTo(1);
    double partly = TEMPERATE.spared(WASH, october);
    double once = TEMPERATE.spared(WASH, LocalDate.of(2026, 6, 1));
    double twice = TEMPERATE.spared(WASH, LocalDate.of(2027, 6, 1));
    assertThat(partly).isBetween(once, 1.0);
    assertThat(twice).isBetween(once * once, once);
  }

  @Test
  void aColonyThatWasAliveIsLostByItsFewestBees() {
    assertThat(TEMPERATE.alive(20_000, 20_000, WASH, WASH)).isEqualTo(1);
    assertThat(TEMPERATE.alive(20_000, 1000, WASH, WASH))
        .isCloseTo(TEMPERATE.enough(1000) / TEMPERATE.enough(20_000), within(1e-12));
  }

  @Test
  void rangesAreChecked() {
    assertThatThrownBy(() -> Wintering.with(Map.of("otherLosses", 1.0)))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("otherLosses");
  }

  /**
   * Standard years are smallest as winter ends: later where it lasts longer. Common practice. In
   * the subtropics there is no winter to speak of, only a lull of the brood until March.
   */
  @ParameterizedTest
  @CsvSource({
    "boreal,2022-04-15,2022-05-15",
    "cold-continental,2022-04-05,2022-05-05",
    "temperate,2022-03-01,2022-04-05",
    "cool-maritime,2022-02-20,2022-03-31",
    "warm-temperate,2022-01-10,2022-02-15",
    "subtropical,2022-01-15,2022-03-31"
  })
  void theLowComesAsWinterEnds(String climate, LocalDate from, LocalDate to) {
    LocalDate autumn = LocalDate.of(2021, 9, 25);
    SpringLow low = SpringLow.after(Shipped.model(climate), autumn);
    assertThat(low.day()).isBetween(from, to);
    assertThat(low.adults()).isBetween(3_000.0, 15_000.0);
  }

  @Test
  void theLowIsHalfAYearLaterInTheSouth() {
    ColonyModel north = Shipped.model("temperate");
    ColonyModel south = ColonyModel.in(north.climate().inSouth());
    SpringLow there = SpringLow.after(south, LocalDate.of(2022, 3, 27));
    SpringLow here = SpringLow.after(north, LocalDate.of(2021, 9, 25));
    assertThat(there.day()).isBetween(here.day().plusDays(182), here.day().plusDays(183));
    assertThat(there.adults()).isCloseTo(here.adults(), within(20.0));
  }
}
