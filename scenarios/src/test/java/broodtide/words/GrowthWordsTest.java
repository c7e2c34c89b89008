package broodtide.words;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.fit.GrowthFit;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GrowthWordsTest {
  private static final LocalDate START = LocalDate.of(2025, 5, 1);

  private static GrowthFit fit(String mites, String days, List<LocalDate> breaks) {
    List<Wash> washes = new ArrayList<>();
    String[] counts = mites.isEmpty() ? new String[0] : mites.split(" ");
    for (int i = 0; i < counts.length; i++) {
      int day = Integer.parseInt(days.split(" ")[i]);
      washes.add(Wash.of(START.plusDays(day), "A", Integer.parseInt(counts[i]), 300));
    }
    return GrowthFit.of(washes, breaks, 0.9);
  }

  @ParameterizedTest
  @CsvSource({
    "'', '', There are no washes.",
    "7, 0, One wash cannot show growth",
    "0 0, 0 30, No mites were found in any wash",
    "3 9, 0 0, No two washes lie some days apart",
    "5 6, 0 30, These washes cannot show whether the mites are increasing: mites per bee change",
    "18 6, 0 30, Mites per bee fall by 3.6 % a day (",
    "6 18, 0 30, Mites per bee grow by 3.7 % a day (",
    "0 9, 0 30, 'Mites were found only on the last day of washing; they grow by at least 6.3 % a"
        + " day'",
    "9 0, 0 30, 'Mites were found only on the first day of washing; they fall by at least 5.9 % a'",
    "0 1, 0 30, these washes cannot show whether the mites are increasing."
  })
  void everyFindingHasItsSentence(String mites, String days, String words) {
    assertThat(GrowthWords.sentence(fit(mites, days, List.of()))).contains(words);
  }

  @Test
  void aStretchWithOneDayTellsNothing() {
    GrowthFit fit = fit("0 0 5", "0 30 60", List.of(START.plusDays(40)));
    assertThat(GrowthWords.sentence(fit)).contains("has one day of washing");
  }

  @ParameterizedTest
  @CsvSource({"0 0 0 300", "300 0 0 0", "1 300 1 300", "0 300 0 0", "0 1 0 1", "300 300 1 0"})
  void hardCountsAreWordsToo(String mites) {
    for (String days : List.of("0 1 2 3", "0 1 200 400", "0 0 30 30")) {
      assertThat(GrowthWords.sentence(fit(mites, days, List.of())))
          .doesNotContain("NaN")
          .doesNotContain("Infinity");
    }
  }
}
