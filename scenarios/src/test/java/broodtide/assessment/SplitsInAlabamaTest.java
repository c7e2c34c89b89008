package broodtide.assessment;

import broodtide.control.Plan;
import broodtide.control.Split;
import broodtide.engine.DailyEngine;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Trajectory;
import broodtide.pages.Check;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

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

  private static final String SOURCE =
      "Aurell, Bruckner, Steury & Williams 2025, J. Econ. Entomol., open data, Alabama";

  /**
   * How long the gap was and how many bees moved is not in the data: 14 days without laying would
   * be a ripe queen cell, 27 a queen reared from an egg; none, a third or a half of the bees and
   * brood moved.
   */
  static Stream<Check> checks() {
    List<Check> checks = new ArrayList<>();
    for (int gap : new int[] {14, 27}) {
      for (double moved : new double[] {0, 0.33, 0.5}) {
        Check across = across(gap, moved);
        checks.add(
            gap == 27
                ? across.missedBecause(
                    "without brood mites die as fast as their bees, and so many weeks of it in"
                        + " spring cost more mites than the trial lost")
                : across);
        checks.add(after(gap, moved));
      }
    }
    checks.add(
        Check.within(
            "growth of washes a day in May and June, warm-temperate, not split",
            "0.0247 +- 0.0088",
            0.0247 - 0.0088,
            0.0247 + 0.0088,
            SOURCE,
            SplitsInAlabamaTest::notSplit));
    return checks.stream();
  }

  private static Check across(int gap, double moved) {
    return Check.within(
        "growth of washes a day over 75 days with a brood gap" + words(gap, moved),
        "0.0147, 95 % 0.0025 to 0.0293",
        0.0025,
        0.0293,
        SOURCE,
        () -> Untreated.growth(split(new Split("split", SPLIT, moved, moved, gap)), FIRST, SECOND));
  }

  private static Check after(int gap, double moved) {
    return Check.within(
        "growth of washes a day in the 27 days after it" + words(gap, moved),
        "0.0247, 95 % 0.0072 to 0.0415",
        0.0072,
        0.0415,
        SOURCE,
        () -> Untreated.growth(split(new Split("split", SPLIT, moved, moved, gap)), SECOND, THIRD));
  }

  private static String words(int gap, double moved) {
    return ", " + gap + " days without laying, " + Math.round(100 * moved) + " % moved";
  }

  private static double notSplit() {
    LocalDate may = LocalDate.of(2022, 5, 1);
    Trajectory t = Untreated.from("warm-temperate", may, 60, 0.5);
    return Untreated.growth(t, may, may.plusDays(60));
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  private static Trajectory split(Split split) {
    return DailyEngine.run(
        Scenario.until(
            Shipped.model("warm-temperate"), new Plan("split", List.of(split)), SPLIT, THIRD),
        SimulatedColony.average(1.32));
  }
}
