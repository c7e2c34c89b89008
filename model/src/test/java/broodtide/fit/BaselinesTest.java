package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The two baselines. */
class BaselinesTest {
  private static final LocalDate DAY = LocalDate.of(2025, 6, 1);

  private static Wash wash(int day, int mites, int bees) {
    return Wash.of(DAY.plusDays(day), "A", mites, bees);
  }

  /** {@code scipy.stats.nbinom.cdf(y, 6.5, 6.5 / (6.5 + 13))}: 6 mites in 300, then 600 bees. */
  @Test
  @Tag("outside")
  void noChange() {
    CountDistribution d = Baselines.noChange(List.of(wash(0, 6, 300)), wash(30, 99, 600));
    assertThat(d.atMost(5)).isCloseTo(NB_5, within(1e-9));
    assertThat(d.atMost(20)).isCloseTo(NB_20, within(1e-9));
  }

  private static final double NB_5 = 0.09059321782208811;
  private static final double NB_20 = 0.8807358096520853;

  /** By hand: (2 + 1/2) to (9 + 1/2) in 30 days is 3.8 fold, so 36.1 after 30 more. */
  @Test
  void exponentialGoesOn() {
    List<Wash> seen = List.of(wash(0, 2, 300), wash(30, 9, 300));
    CountDistribution d = Baselines.exponential(seen, wash(60, 0, 300));
    assertThat(d.quantile(0.5)).isBetween(34, 37);
    // a log variance of 4 / 9.5 + 1 / 2.5 = 0.82: the lower quarter is near 36.1 / e^0.61 = 19.6
    assertThat(d.quantile(0.25)).isBetween(17, 21);
  }

  @Test
  void exponentialWithoutASlopeIsNoChange() {
    Wash next = wash(40, 0, 300);
    List<Wash> one = List.of(wash(0, 4, 300));
    assertSame(Baselines.exponential(one, next), Baselines.noChange(one, next));
    List<Wash> sameDay = List.of(wash(0, 4, 300), wash(0, 6, 300));
    assertSame(Baselines.exponential(sameDay, next), Baselines.noChange(sameDay, next));
  }

  @Test
  void nothingFoundIsNotNothingThere() {
    List<Wash> none = List.of(wash(0, 0, 300), wash(30, 0, 300));
    assertThat(Baselines.noChange(none, wash(60, 0, 300)).atMost(0)).isBetween(0.5, 0.99);
    assertThat(Baselines.exponential(none, wash(60, 0, 300)).crpsOfLog(3)).isFinite();
  }

  private static void assertSame(CountDistribution a, CountDistribution b) {
    for (int y = 0; y < 100; y++) {
      assertThat(a.atMost(y)).isEqualTo(b.atMost(y));
    }
  }
}
