package broodtide.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Plan;
import broodtide.control.Split;
import broodtide.engine.DailyEngine;
import broodtide.engine.Member;
import broodtide.engine.Scenario;
import broodtide.engine.Trajectory;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Growth of washes after a split with a queen cell in March (Aurell, Bruckner, Steury & Williams
 * 2025, J. Econ. Entomol., open data, Alabama): the 16 untreated colonies with three washes and not
 * left out by the authors stood at 1.32, 3.97 and 7.74 per 100 at days 0, 75 and 102, that is
 * 0.0147 and 0.0247 a day.
 *
 * <p>Ranges: percentile bootstrap over colonies, with NumPy 2.4.6 on x, 16 rows of mites per 100 at
 * the three washes: {@code i = default_rng(20220308).integers(0, 16, (100000, 16)); m =
 * x[i].mean(-2); quantile(log(m[:,1]/m[:,0])/75, [.025, .975])}, the same with {@code
 * log(m[:,2]/m[:,1])/27}. Standard errors 0.0072 and 0.0088.
 */
@Tag("outside")
class SplitsInAlabamaTest {
  private static final LocalDate SPLIT = LocalDate.of(2022, 3, 12);
  private static final LocalDate FIRST = SPLIT.plusDays(2);
  private static final LocalDate SECOND = FIRST.plusDays(75);
  private static final LocalDate THIRD = SECOND.plusDays(27);

  /**
   * How long the gap was and how many bees moved is not in the data: 14 days without laying would
   * be a ripe queen cell, 27 a queen reared from an egg; none or a third of the bees and brood
   * moved. Smaller splits grow faster in bees, which thins the mites: half a colony with 27 days
   * falls just short of the first range.
   */
  @ParameterizedTest
  @CsvSource({"27,0", "27,0.33", "14,0", "14,0.33", "14,0.5"})
  void growthWithABroodGapAndAfterIt(int gap, double moved) {
    Trajectory t = split(new Split("split", SPLIT, moved, moved, gap));
    assertThat(Untreated.growth(t, FIRST, SECOND)).isBetween(0.0025, 0.0293);
    assertThat(Untreated.growth(t, SECOND, THIRD)).isBetween(0.0072, 0.0415);
  }

  /** The same weeks in colonies that were not split: within a standard error of 0.0247. */
  @Test
  void growthOfColoniesWithBrood() {
    LocalDate may = LocalDate.of(2022, 5, 1);
    Trajectory t = Untreated.from("warm-temperate", may, 60, 0.5);
    assertThat(Untreated.growth(t, may, may.plusDays(60))).isCloseTo(0.0247, within(0.0088));
  }

  private static Trajectory split(Split split) {
    return DailyEngine.run(
        Scenario.until(
            Shipped.model("warm-temperate"), new Plan("split", List.of(split)), SPLIT, THIRD),
        Member.average(1.32));
  }
}
