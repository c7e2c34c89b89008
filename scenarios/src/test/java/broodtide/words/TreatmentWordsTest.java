package broodtide.words;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Invented;
import broodtide.catalog.Catalog;
import broodtide.control.MiticideCourse;
import broodtide.decision.TreatmentCheck;
import broodtide.decision.TreatmentCheck.Verdict;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.wash.Interval;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
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

  /** Only where no wash at all after the treatment shows a mite may the words say so. */
  @Test
  void aLaterWashWithMitesIsNotPassedOver() {
    assertThat(verdictAfterNone(0)).contains("no mite was found before");
    assertThat(verdictAfterNone(1)).doesNotContain("no mite was found");
  }

  /** No mite before nor in the wash that judges; a later wash with some. */
  private static String verdictAfterNone(int later) {
    ColonyCase c = Invented.colony();
    List<Wash> washes =
        List.of(
            Wash.of(LocalDate.of(2026, 8, 1), "A", 0, 300),
            Wash.of(LocalDate.of(2026, 9, 30), "A", 0, 300),
            Wash.of(LocalDate.of(2026, 10, 20), "A", later, 300));
    LocalDate now = washes.get(2).date().plusDays(1);
    MiticideCourse strips =
        (MiticideCourse) Catalog.control("amitraz-strips").at(LocalDate.of(2026, 8, 3));
    ColonyCase washed =
        new ColonyCase(
            "A",
            c.model(),
            washes.get(0).date(),
            now,
            now.plusDays(1),
            washes,
            List.of(),
            c.thresholds(),
            c.priors());
    try (Workers workers = new Workers(2)) {
      TreatmentCheck check =
          TreatmentCheck.of(
              washed,
              strips,
              new SeasonPosterior.SamplerSettings(256, 2, 1),
              workers,
              Progress.NONE);
      assertThat(check.after()).isEqualTo(washes.get(1));
      assertThat(check.verdict()).isEqualTo(Verdict.CANNOT_TELL);
      return TreatmentWords.verdict(check, "amitraz-strips");
    }
  }
}
