package broodtide.wash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import broodtide.pages.Check;
import broodtide.pages.Figures;
import java.util.function.DoubleSupplier;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

public class IntervalTest {
  /**
   * R 4.2.2, {@code options(digits=12); binom.test(hits, trials, conf.level = level)$conf.int} and
   * {@code poisson.test(count, conf.level = level)$conf.int}.
   */
  public static Stream<Check> checks() {
    return Stream.of(
            binomial(7, 300, 0.95, 0.00943150206179, 0.0474825650298),
            binomial(0, 300, 0.95, 0, 0.0122209746943),
            binomial(7, 300, 0.90, 0.0110010636311, 0.043378675643),
            binomial(300, 300, 0.95, 0.987779025306, 1),
            binomial(1, 10, 0.99, 0.000501128575465, 0.5442870569),
            binomial(45, 320, 0.50, 0.126736658381, 0.156064193809),
            poisson(0, 0.95, 0, 3.68887945411),
            poisson(7, 0.95, 2.81436305152, 14.4226753617),
            poisson(10, 0.95, 4.79538869613, 18.390356042),
            poisson(7, 0.90, 3.28531569189, 13.1481138024),
            poisson(100, 0.99, 76.1204958437, 128.76058012))
        .flatMap(c -> c);
  }

  /** The few that stand for all on the page. */
  public static Stream<Check> checksForThePage() {
    return checks().filter(c -> c.what().startsWith("95 %") && c.what().contains(" 7"));
  }

  private static Stream<Check> binomial(
      int hits, int trials, double level, double low, double high) {
    return ends(
        hits + " of " + trials,
        level,
        new double[] {low, high, 1e-11},
        () -> Interval.binomial(hits, trials, level),
        "R 4.2.2, binom.test");
  }

  private static Stream<Check> poisson(int count, double level, double low, double high) {
    return ends(
        "a Poisson count of " + count,
        level,
        new double[] {low, high, 1e-7},
        () -> Interval.poisson(count, level),
        "R 4.2.2, poisson.test");
  }

  private static Stream<Check> ends(
      String what, double level, double[] r, Supplier<Interval> found, String source) {
    String of = Math.round(100 * level) + " % interval of " + what;
    return Stream.of(
        end(of + ", lower end", r[0], r[2], source, () -> found.get().low()),
        end(of + ", upper end", r[1], r[2], source, () -> found.get().high()));
  }

  private static Check end(
      String what, double published, double within, String source, DoubleSupplier measured) {
    return Check.within(
        what, Figures.of(published, 9), published - within, published + within, source, measured);
  }

  @Tag("outside")
  @ParameterizedTest
  @MethodSource("checks")
  void agreesWithR(Check check) {
    check.verify();
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
