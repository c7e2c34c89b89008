package broodtide.wash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SamplePlanTest {
  private final SamplePlan plan = SamplePlan.usual();

  /** By hand: sqrt((1 - p) / (300 p)) for p of 1, 3 and 5 %. */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({"1, 0.57", "3, 0.33", "5, 0.25"})
  void aScoopOfThreeHundred(double perHundred, double spread) {
    assertThat(plan.spread(perHundred, 300)).isCloseTo(spread, within(0.006));
  }

  /** By hand: 1.96^2 x 0.98 / (0.02 x 0.25) = 752.9 bees for 2 per 100, give or take half. */
  @Tag("outside")
  @Test
  void beesForHalfEitherWay() {
    assertThat(plan.beesFor(2, 0.5, 0.95)).isEqualTo(753);
    assertThat(plan.precision(2, 753, 0.95)).isLessThanOrEqualTo(0.5);
    assertThat(plan.precision(2, 752, 0.95)).isGreaterThan(0.5);
  }

  /**
   * Lee, Moon, Burkness, Hutchison & Spivak 2010 (J. Econ. Entomol. 103:1039) give 8 colonies x 300
   * bees for a standard error of a quarter of the mean (the quarter from memory). That holds here
   * for hives treated alike, k about 2.6; the clumping of differently treated hives, k = 0.6, asks
   * for over three times as many.
   */
  @Tag("outside")
  @Test
  void eightHivesSufficeOnlyForHivesTreatedAlike() {
    SamplePlan alike = new SamplePlan(2.6, 0.9);
    assertThat(alike.hivesFor(3, 300, 1000, 0.25)).isBetween(7, 9);
    assertThat(plan.hivesFor(3, 300, 1000, 0.25)).isBetween(24, 30);
  }

  @Test
  void smallApiariesNeedNoMoreThanTheyHave() {
    assertThat(plan.hivesFor(3, 300, 4, 0.25)).isEqualTo(4);
    assertThat(plan.spreadOfMean(3, 300, 4, 4)).isCloseTo(plan.spread(3, 300) / 2, within(1e-12));
    assertThat(plan.spreadOfMean(3, 300, 3, 4)).isGreaterThan(plan.spreadOfMean(3, 300, 4, 4));
  }

  /** By hand: 0.991^300 for 1 per 100 of which 90 % are found; (1 + 2.7/0.6)^-0.6 for one hive. */
  @Tag("outside")
  @Test
  void chanceOfNoMites() {
    assertThat(plan.chanceOfNone(1, 300)).isCloseTo(Math.pow(0.991, 300), within(1e-12));
    assertThat(plan.chanceOfNone(1, 300, 1)).isCloseTo(Math.pow(5.5, -0.6), within(1e-12));
    assertThat(plan.chanceOfNone(1, 300, 8)).isCloseTo(Math.pow(5.5, -4.8), within(1e-12));
  }

  /** R 4.2.2: {@code pbinom(5, 300, 0.04 * 0.9)}, a hive at 4 per 100 that reads below 2. */
  @Tag("outside")
  @Test
  void chanceOfMissingAnInfestation() {
    assertThat(plan.chanceOfMissing(4, 2, 300)).isCloseTo(0.0396562965125248, within(1e-9));
  }

  @Test
  void nonsenseIsRefused() {
    assertThatThrownBy(() -> plan.spread(0, 300)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> plan.spread(3, 0)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> plan.hivesFor(3, 300, 0, 0.25)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> new SamplePlan(0, 0.9)).isInstanceOf(OutOfRange.class);
  }
}
