package broodtide.wash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class WashTest {
  private static final LocalDate DAY = LocalDate.of(2025, 6, 15);

  @Test
  void ratesAndExposure() {
    Wash wash = Wash.of(DAY, "A", 7, 300);
    assertThat(wash.perHundred()).isCloseTo(7.0 / 3, within(1e-12));
    assertThat(wash.exposure()).isCloseTo(270, within(1e-9));
    assertThat(wash.beesAssumed()).isFalse();
    assertThat(Wash.ofHalfCup(DAY, "A", 8).perHundred()).isCloseTo(2.5, within(1e-12));
  }

  @Test
  void impossibleCountsAreNamed() {
    assertThatThrownBy(() -> Wash.of(DAY, "A", 11, 10))
        .isInstanceOf(OutOfRange.class)
        .hasMessage("mites is 11; expected 0 to 10, the bees in the wash");
    assertThatThrownBy(() -> Wash.of(DAY, "A", -1, 10)).hasMessageContaining("mites is -1");
    assertThatThrownBy(() -> Wash.of(DAY, "A", 0, 0))
        .hasMessage("bees is 0; expected 1 to 10000 (bees)");
    assertThatThrownBy(() -> Wash.ofHalfCup(DAY, "A", 321))
        .hasMessageContaining("0 to 320, the bees assumed in a half cup");
    assertThatThrownBy(() -> Wash.of(DAY, "  ", 0, 300)).hasMessageContaining("colony is blank");
    assertThatThrownBy(() -> strength(Double.NaN)).hasMessageContaining("frames_of_bees");
    assertThat(strength(7.5).framesOfBees()).hasValue(7.5);
  }

  @Test
  void everyMethodAndFrameSaysWhereItsFactorComesFrom() {
    for (WashMethod method : WashMethod.values()) {
      assertThat(method.recovery().mean()).isBetween(0.5, 1.0);
      assertThat(method.recovery().source()).isNotBlank();
    }
    // Calderone & Turcotte 1998: brood nest about twice the honey area.
    assertThat(Frame.BROOD_CENTRE.factor().mean() / Frame.HONEY.factor().mean())
        .isCloseTo(2, within(1e-12));
  }

  private static Wash strength(double frames) {
    return new Wash(
        DAY,
        "A",
        1,
        OptionalInt.of(300),
        WashMethod.ALCOHOL,
        Frame.MIXED,
        "",
        OptionalDouble.of(frames));
  }
}
