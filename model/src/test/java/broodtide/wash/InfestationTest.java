package broodtide.wash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class InfestationTest {
  private static final LocalDate DAY = LocalDate.of(2025, 6, 15);

  private static Wash wash(int mites, int bees, WashMethod method, Frame frame) {
    return new Wash(
        DAY, "A", mites, OptionalInt.of(bees), method, frame, "", OptionalDouble.empty());
  }

  /** R 4.2.2: {@code pgamma(c(2,4)*3, 7.5)} and {@code qgamma(c(.05,.5,.95), 7.5)/3}. */
  @Tag("outside")
  @Test
  void countedBeliefIsJeffreysGamma() {
    RatePosterior belief = Infestation.of(Wash.of(DAY, "A", 7, 300)).asCounted();
    assertThat(belief.chanceAtMost(2)).isCloseTo(0.32097094291, within(1e-10));
    assertThat(belief.chanceAtMost(4)).isCloseTo(0.934906513601, within(1e-10));
    assertThat(belief.quantile(0.05)).isCloseTo(1.21015732128, within(1e-9));
    assertThat(belief.median()).isCloseTo(2.38980991849, within(1e-9));
    assertThat(belief.interval(0.9).high()).isCloseTo(4.16596502329, within(1e-9));
    assertThat(belief.mean()).isCloseTo(2.5, within(1e-12));
  }

  /**
   * SciPy 1.17.1: {@code integrate.dblquad(lambda u, v: stats.gamma.cdf(x/100*n*b.ppf(u)*f.ppf(v),
   * y+.5), 0,1,0,1, epsabs=1e-9, epsrel=1e-9)[0]} with {@code b = stats.beta(m*k,(1-m)*k),
   * k=m*(1-m)/s**2-1} the recovery and {@code f = stats.lognorm(sqrt(v), scale=m*exp(-v/2)),
   * v=log1p((s/m)**2)} the frame.
   */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({
    "2,  7,   ALCOHOL,        MIXED,        0.24721445865841055",
    "1,  7,   ALCOHOL,        MIXED,        0.017170762404170023",
    "5,  7,   ALCOHOL,        MIXED,        0.9377738512901003",
    "3,  7,   CARBON_DIOXIDE, BROOD_CENTRE, 0.6124123020836904",
    "1,  0,   POWDERED_SUGAR, HONEY,        0.9248748612028383",
    "50, 200, ALCOHOL,        MIXED,        0.02820759970376378",
    "70, 200, ALCOHOL,        MIXED,        0.36134759450273707"
  })
  void colonyBeliefAgreesWithScipy(
      double limit, int mites, WashMethod method, Frame frame, double chance) {
    RatePosterior belief = Infestation.of(wash(mites, 300, method, frame)).inColony();
    assertThat(belief.chanceAtMost(limit)).isCloseTo(chance, within(1e-5));
    assertThat(belief.quantile(chance)).isCloseTo(limit, within(limit * 1e-4));
  }

  /**
   * SciPy 1.17.1: {@code integrate.quad(lambda v: stats.gamma.cdf(x/100*f.ppf(v), 7.5), 0, 1,
   * epsabs=1e-11)[0]} with {@code f} lognormal of mean 320 and standard deviation 45.
   */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({"1, 0.03214948881889194", "2, 0.3826216012234356", "4, 0.9393945274631073"})
  void uncountedHalfCupCarriesItsDoubt(double limit, double chance) {
    Infestation found = Infestation.of(Wash.ofHalfCup(DAY, "A", 7));
    assertThat(found.wash().beesAssumed()).isTrue();
    assertThat(found.asCounted().chanceAtMost(limit)).isCloseTo(chance, within(1e-8));
    assertThat(found.exact(0.95).high()).isCloseTo(14.4226753617 / 3.2, within(1e-8));
  }

  @Test
  void sevenInThreeHundredIsMoreLikelyThanNotAboveTwo() {
    Infestation found = Infestation.of(Wash.of(DAY, "A", 7, 300));
    assertThat(found.perHundred()).isCloseTo(7.0 / 3, within(1e-12));
    assertThat(found.exact(0.95).low()).isCloseTo(0.943, within(5e-4));
    assertThat(found.exact(0.95).high()).isCloseTo(4.748, within(5e-4));
    assertThat(found.inColony().chanceAbove(2)).isBetween(0.74, 0.76);
  }

  @Test
  void alcoholOnBroodBeesIsItsOwnReference() {
    for (Frame frame : new Frame[] {Frame.BROOD_CENTRE, Frame.BROOD_EDGE, Frame.MIXED}) {
      Infestation found = Infestation.of(wash(7, 300, WashMethod.ALCOHOL, frame));
      assertThat(found.asAlcoholWash().median()).isEqualTo(found.asCounted().median());
    }
  }

  @Test
  void sugarAndHoneyFramesAreBroughtUpToAnAlcoholWash() {
    double plain = Infestation.of(Wash.of(DAY, "A", 30, 300)).asAlcoholWash().median();
    double sugar =
        Infestation.of(wash(30, 300, WashMethod.POWDERED_SUGAR, Frame.MIXED))
            .asAlcoholWash()
            .median();
    double honey =
        Infestation.of(wash(30, 300, WashMethod.ALCOHOL, Frame.HONEY)).asAlcoholWash().median();
    assertThat(sugar / plain).isCloseTo(0.90 / 0.84, within(0.01));
    assertThat(honey / plain).isCloseTo(2, within(0.06));
  }

  @ParameterizedTest
  @EnumSource(WashMethod.class)
  void doubtWidensTheBelief(WashMethod method) {
    Infestation found = Infestation.of(wash(20, 300, method, Frame.BROOD_EDGE));
    Interval counted = found.asCounted().interval(0.9);
    Interval colony = found.inColony().interval(0.9);
    assertThat(colony.high() / colony.low()).isGreaterThan(1.1 * counted.high() / counted.low());
  }

  @Test
  void noMitesStillLeavesRoomForSome() {
    RatePosterior belief = Infestation.of(Wash.of(DAY, "A", 0, 300)).inColony();
    assertThat(belief.median()).isBetween(0.05, 0.12);
    assertThat(belief.chanceAbove(0)).isEqualTo(1);
    assertThat(belief.chanceAbove(3)).isLessThan(0.001);
  }

  @Test
  void quantileLevelsEndAtNoughtAndOne() {
    RatePosterior belief = Infestation.of(Wash.of(DAY, "A", 7, 300)).inColony();
    assertThatThrownBy(() -> belief.quantile(0)).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> belief.quantile(1)).isInstanceOf(OutOfRange.class);
    assertThat(belief.quantile(1e-9)).isPositive();
    assertThat(belief.chanceAtMost(belief.quantile(1 - 1e-9))).isCloseTo(1 - 1e-9, within(1e-12));
  }
}
