package broodtide.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PriorTest {
  private static final Prior SHARE = Unknown.INFECTIVITY.usual();

  /** Python 3: {@code 1 / (1 + math.exp(-(math.log(4) + z)))}. */
  @ParameterizedTest
  @CsvSource({"-2, 0.3512144", "-1, 0.5953903", "0, 0.8", "1, 0.9157762", "2, 0.9672734"})
  void aShareIsNormalOnItsLogit(double z, double share) {
    assertThat(SHARE.at(z)).isCloseTo(share, within(1e-7));
  }

  @Test
  void aShareStaysAShare() {
    assertThat(SHARE.at(-1000)).isZero();
    assertThat(SHARE.at(1000)).isEqualTo(1);
  }

  @Test
  void aFactorIsNormalOnItsLogarithm() {
    Prior factor = Unknown.REPRODUCTION_FACTOR.usual();
    assertThat(factor.at(1)).isCloseTo(Math.exp(factor.logSd()), within(1e-12));
    assertThat(factor.at(100)).isEqualTo(factor.max());
  }
}
