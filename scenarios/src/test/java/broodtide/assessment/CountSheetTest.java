package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.wash.Frame;
import broodtide.wash.Infestation;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

/** How many hives are over the threshold by the counts of one day. */
class CountSheetTest {
  private static final LocalDate DAY = LocalDate.of(2025, 8, 2);

  /** Bees counted and washed in alcohol: nothing is in doubt but the sample. */
  @Test
  void countsWithoutDoubtInCommonAreIndependent() {
    ApiaryCount over = sheet(WashMethod.ALCOHOL, OptionalInt.of(300)).over().orElseThrow();
    double chance = over.mean() / 12;
    BinomialDistribution binomial = new BinomialDistribution(null, 12, chance);
    for (int k = 0; k <= 12; k++) {
      assertThat(over.distribution()[k]).isCloseTo(binomial.probability(k), within(1e-6));
    }
  }

  @Test
  void aHalfCupAndAMethodInDoubtSpreadTheCount() {
    CountSheet sheet = sheet(WashMethod.POWDERED_SUGAR, OptionalInt.empty());
    ApiaryCount over = sheet.over().orElseThrow();
    BinomialDistribution apart = new BinomialDistribution(null, 12, over.mean() / 12);
    assertThat(over.mean()).isCloseTo(sheet.expectedOver().orElseThrow(), within(1e-9));
    assertThat(over.high() - over.low())
        .isGreaterThan(
            apart.inverseCumulativeProbability(0.95) - apart.inverseCumulativeProbability(0.05));
  }

  @Test
  void sharesOfTheDoubtMakeUpTheChance() {
    for (WashMethod method : WashMethod.values()) {
      for (int mites : new int[] {0, 3, 40}) {
        var belief = Infestation.of(wash("A", mites, method, OptionalInt.empty())).asAlcoholWash();
        double[] shares = belief.chancesAbove(3, 50);
        assertThat(Arrays.stream(shares).average().orElseThrow())
            .isCloseTo(belief.chanceAbove(3), within(1e-9));
        for (int i = 1; i < shares.length; i++) {
          assertThat(shares[i])
              .as("more found, fewer there")
              .isLessThanOrEqualTo(shares[i - 1] + 1e-9);
        }
      }
    }
  }

  /** Two scoops of one hive are one hive, and say what a scoop of twice the bees says. */
  @Test
  void aHiveCountedTwiceIsOneHive() {
    List<Wash> twice =
        List.of(
            wash("A", 5, WashMethod.ALCOHOL, OptionalInt.of(300)),
            wash("A", 9, WashMethod.ALCOHOL, OptionalInt.of(200)),
            wash("B", 12, WashMethod.ALCOHOL, OptionalInt.of(300)));
    List<Wash> once = List.of(wash("A", 14, WashMethod.ALCOHOL, OptionalInt.of(500)), twice.get(2));
    CountSheet sheet = sheet(twice);
    assertThat(sheet.rows()).hasSize(3);
    assertThat(sheet.hives()).isEqualTo(2);
    assertThat(sheet.countedOften()).containsExactly("A");
    assertThat(sheet.over().orElseThrow().distribution())
        .containsExactly(sheet(once).over().orElseThrow().distribution(), within(1e-9));
    assertThat(sheet.expectedOver().orElseThrow())
        .isCloseTo(sheet(once).expectedOver().orElseThrow(), within(1e-9));
    assertThat(sheet(once).countedOften()).isEmpty();
  }

  /** A second sugar roll by the same hand narrows the sample, and leaves the method in doubt. */
  @Test
  void aSecondCountLeavesTheDoubtAboutTheMethod() {
    Wash roll = wash("A", 14, WashMethod.POWDERED_SUGAR, OptionalInt.of(300));
    double one = sheet(List.of(roll)).expectedOver().orElseThrow();
    double thirty = sheet(Collections.nCopies(30, roll)).expectedOver().orElseThrow();
    double whole =
        sheet(List.of(wash("A", 420, WashMethod.POWDERED_SUGAR, OptionalInt.of(9_000))))
            .expectedOver()
            .orElseThrow();
    assertThat(thirty).isNotCloseTo(one, within(0.01)).isCloseTo(whole, within(0.01));
  }

  private static CountSheet sheet(List<Wash> washes) {
    return CountSheet.of(washes, Catalog.climate("temperate"), ThresholdSet.given("3", 3, 100));
  }

  private static CountSheet sheet(WashMethod method, OptionalInt bees) {
    List<Wash> washes =
        IntStream.range(0, 12).mapToObj(i -> wash("H" + i, 9, method, bees)).toList();
    return sheet(washes);
  }

  private static Wash wash(String colony, int mites, WashMethod method, OptionalInt bees) {
    return new Wash(DAY, colony, mites, bees, method, Frame.MIXED, "", OptionalDouble.empty());
  }
}
