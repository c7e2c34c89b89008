package broodtide.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Places of washes in words. */
class WashTableTest {
  @ParameterizedTest
  @CsvSource({
    "0.01, surprisingly few",
    "0.10, on the low side",
    "0.25, as expected",
    "0.75, as expected",
    "0.90, on the high side",
    "0.99, surprisingly many"
  })
  void placesOfWashes(double place, String words) {
    assertThat(WashTable.place(place)).isEqualTo(words);
  }
}
