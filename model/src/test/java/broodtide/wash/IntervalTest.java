package broodtide.wash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class IntervalTest {
  /** R 4.2.2, {@code options(digits=12); binom.test(hits, trials, conf.level = level)$conf.int}. */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({
    "7,   300, 0.95, 0.00943150206179, 0.0474825650298",
    "0,   300, 0.95, 0,                0.0122209746943",
    "7,   300, 0.90, 0.0110010636311,  0.043378675643",
    "300, 300, 0.95, 0.987779025306,   1",
    "1,   10,  0.99, 0.000501128575465, 0.5442870569",
    "45,  320, 0.50, 0.126736658381,   0.156064193809"
  })
  void binomialAgreesWithR(int hits, int trials, double level, double low, double high) {
    Interval found = Interval.binomial(hits, trials, level);
    assertThat(found.low()).isCloseTo(low, within(1e-11));
    assertThat(found.high()).isCloseTo(high, within(1e-11));
  }

  /** R 4.2.2, {@code options(digits=12); poisson.test(count, conf.level = level)$conf.int}. */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({
    "0,   0.95, 0,             3.68887945411",
    "7,   0.95, 2.81436305152, 14.4226753617",
    "10,  0.95, 4.79538869613, 18.390356042",
    "7,   0.90, 3.28531569189, 13.1481138024",
    "100, 0.99, 76.1204958437, 128.76058012"
  })
  void poissonAgreesWithR(int count, double level, double low, double high) {
    Interval found = Interval.poisson(count, level);
    assertThat(found.low()).isCloseTo(low, within(1e-7));
    assertThat(found.high()).isCloseTo(high, within(1e-7));
  }

  /** By hand: none in n has the upper end 1 - (tail)^(1/n); a Poisson count of 0 has -ln(tail). */
  @Tag("outside")
  @Test
  void noMitesWorkedByHand() {
    assertThat(Interval.binomial(0, 10, 0.95).high())
        .isCloseTo(1 - Math.pow(0.025, 0.1), within(1e-12));
    assertThat(Interval.poisson(0, 0.95).high()).isCloseTo(-Math.log(0.025), within(1e-11));
  }

  @ParameterizedTest
  @CsvSource({"-1, 10, 0.9", "11, 10, 0.9", "0, 0, 0.9", "1, 10, 0", "1, 10, 1", "1, 10, NaN"})
  void impossibleQuestionsAreRefused(int hits, int trials, double level) {
    assertThatThrownBy(() -> Interval.binomial(hits, trials, level)).isInstanceOf(OutOfRange.class);
  }

  @Test
  void endsCannotBeSwappedOrMissing() {
    assertThatThrownBy(() -> new Interval(2, 1, 0.9)).hasMessageContaining("low is 2.0");
    assertThatThrownBy(() -> new Interval(Double.NaN, 1, 0.9)).isInstanceOf(OutOfRange.class);
    assertThat(new Interval(1, 2, 0.9).holds(2)).isTrue();
    assertThat(new Interval(1, 2, 0.9).times(100)).isEqualTo(new Interval(100, 200, 0.9));
  }
}
