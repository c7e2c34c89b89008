package broodtide.words;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.decision.TreatmentCheck.Verdict;
import broodtide.wash.Interval;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TreatmentWordsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "-1.2 | 0.27 | between 27 % fewer and 120 % more mites than before",
        "0.51 | 0.91 | between 51 % and 91 % fewer mites than before",
        "-2.2 | -0.15 | between 15 % and 220 % more mites than before",
        "-18 | 1 | between 100 % fewer mites than before and 19 times as many",
        "-18 | -0.5 | between 50 % more mites than before and 19 times as many",
        "-18 | -4 | between 5.0 and 19 times as many mites as before",
        "0.5 | 0.5 | 50 % fewer mites than before",
        "-0.5 | -0.5 | 50 % more mites than before",
        "0 | 0 | as many mites as before",
        "-Infinity | 0.3 | anything from 30 % fewer mites than before upwards"
      })
  void rangesRunOneWay(double low, double high, String words) {
    assertThat(TreatmentWords.range(new Interval(low, high, 0.9), "before")).isEqualTo(words);
  }

  @Test
  void everyAnswerHasWordsOfItsOwn() {
    assertThat(Arrays.stream(Verdict.values()).map(TreatmentWords::answer))
        .containsExactly("Worked as expected", "Fell short", "Cannot tell");
  }
}
