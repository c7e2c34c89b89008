package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MiteLedgerTest {
  /** 10 + 4 + 2 in, 1 + 2 + 3 + 1 + 1 out, 6 left: two are missing of sixteen. */
  @Test
  void whatIsMissingIsAShareOfWhatCameIn() {
    assertThat(new MiteLedger(10, 4, 2, 1, 2, 3, 1, 1, 6).imbalance()).isEqualTo(2.0 / 16);
    assertThat(new MiteLedger(10, 4, 2, 1, 2, 3, 1, 1, 8).imbalance()).isZero();
  }

  @Test
  void mitesOutOfNothingAreCounted() {
    assertThat(new MiteLedger(0, 0, 0, 1, 0, 0, 0, 0, 2).imbalance()).isEqualTo(3);
    assertThat(new MiteLedger(0, 0, 0, 0, 0, 0, 0, 0, 0).imbalance()).isZero();
  }
}
