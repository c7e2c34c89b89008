package broodtide.words;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.Outcome;
import broodtide.fit.Priors;
import broodtide.fit.Unknown;
import broodtide.fit.UnknownSummary;
import java.time.LocalDate;
import java.time.MonthDay;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Days and infestations in words. */
class PlainTest {
  @Test
  void days() {
    LocalDate day = LocalDate.of(2025, 10, 5);
    assertThat(Plain.day(day)).isEqualTo("5 October 2025");
    assertThat(Plain.shortDay(day)).isEqualTo("5 Oct");
    assertThat(Plain.day(MonthDay.from(day))).isEqualTo("5 October");
  }

  @ParameterizedTest
  @CsvSource({
    "0.67, 3.41, 0.67 to 3.4",
    "15.2, 100, 15 to more than 50",
    "100, 100, more than 50",
    "2.01, 2.02, 2.0",
    "0.0000001, 1.5, under 0.1 to 1.5",
    "0, 0.01, 0 to under 0.1"
  })
  void ranges(double low, double high, String words) {
    assertThat(Plain.levels(low, high)).isEqualTo(words);
  }

  @ParameterizedTest
  @CsvSource({
    "-0.5, less sure than before",
    "0.0, little",
    "0.2, something",
    "0.5, much",
    "0.9, much"
  })
  void whatWashesSaid(double shrinkage, String words) {
    UnknownSummary summary =
        new UnknownSummary(
            Unknown.REINVASION,
            -1,
            0,
            Priors.defaults().of(Unknown.REINVASION),
            1,
            1,
            1,
            shrinkage);
    assertThat(UnknownWords.said(summary.learned())).isEqualTo(words);
  }

  @Test
  void amountsOfAHundredThingsAreWholeOnes() {
    assertThat(OutcomeWords.amount(Outcome.LOST, 0.0029)).isEqualTo("less than 1 in 100 colonies");
    assertThat(OutcomeWords.amount(Outcome.LOST, -0.017)).isEqualTo("2 in 100 colonies");
    assertThat(OutcomeWords.amount(Outcome.WINTER_BROOD, 0.213))
        .isEqualTo("21 in 100 winter-bee cells");
    assertThat(OutcomeWords.amount(Outcome.INFESTATION, 2.13)).isEqualTo("2.1 mites per 100 bees");
  }
}
