package broodtide.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.decision.CountedEfficacy.Count;
import broodtide.wash.Interval;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

@Tag("outside")
class CountedEfficacyTest {
  /** R 4.2.2: {@code poisson.test(c(6, 27), c(310, 300), conf.level = 0.9)}. */
  @Test
  void aloneAgainstTheExactRatioOfTwoPoissonRates() {
    CountedEfficacy e =
        CountedEfficacy.alone(new Count(27, 300), new Count(6, 310), 0.9).orElseThrow();
    assertThat(e.share()).isCloseTo(1 - 0.215053763441, within(1e-11));
    assertThat(e.interval().low()).isCloseTo(1 - 0.471550805783, within(1e-9));
    assertThat(e.interval().high()).isCloseTo(1 - 0.086759420577, within(1e-9));
  }

  /** R 4.2.2: {@code poisson.test(c(0, 12), c(310, 300), conf.level = 0.9)}. */
  @Test
  void noMiteLeft() {
    CountedEfficacy e =
        CountedEfficacy.alone(new Count(12, 300), new Count(0, 310), 0.9).orElseThrow();
    assertThat(e.share()).isEqualTo(1);
    assertThat(e.interval().low()).isCloseTo(1 - 0.274421460109, within(1e-9));
    assertThat(e.interval().high()).isEqualTo(1);
  }

  /**
   * SciPy 1.17.1: {@code scipy.stats.contingency.odds_ratio([[6, 31], [27,
   * 20]]).confidence_interval(0.9)}; the bees are chosen equal so that the odds ratio is the ratio
   * of Henderson & Tilton.
   */
  @Test
  void againstANeighbour() {
    CountedEfficacy e =
        CountedEfficacy.againstNeighbour(
                new Count(27, 300), new Count(6, 300), new Count(20, 300), new Count(31, 300), 0.9)
            .orElseThrow();
    assertThat(e.share()).isCloseTo(1 - 6 / 27.0 * (20 / 31.0), within(1e-12));
    assertThat(e.interval().low()).isCloseTo(1 - 0.3845907304803488, within(1e-9));
    assertThat(e.interval().high()).isCloseTo(1 - 0.05084366285962962, within(1e-9));
  }

  /**
   * SciPy 1.17.1: {@code odds_ratio([[2, 15], [10, 3]]).confidence_interval(0.95)} (Fisher's
   * convictions of twins) and {@code odds_ratio([[0, 14], [12, 9]]).confidence_interval(0.9)}. R's
   * fisher.test agrees to its own tolerance of 1e-4.
   */
  @Test
  void oddsRatios() {
    Interval twins = CountedEfficacy.oddsRatio(2, 10, 15, 3, 0.95);
    assertThat(twins.low()).isCloseTo(0.003317163950657366, within(1e-12));
    assertThat(twins.high()).isCloseTo(0.36318960235667996, within(1e-12));
    Interval none = CountedEfficacy.oddsRatio(0, 12, 14, 9, 0.9);
    assertThat(none.low()).isZero();
    assertThat(none.high()).isCloseTo(0.24316861927078295, within(1e-9));
  }

  /** Different bees scale rates: half of the bees after count double. By hand. */
  @Test
  void exposures() {
    CountedEfficacy e =
        CountedEfficacy.alone(new Count(20, 300), new Count(5, 150), 0.9).orElseThrow();
    assertThat(e.share()).isCloseTo(0.5, within(1e-12));
    assertThat(CountedEfficacy.alone(new Count(0, 300), new Count(5, 150), 0.9)).isEmpty();
  }
}
