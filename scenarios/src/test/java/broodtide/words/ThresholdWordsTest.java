package broodtide.words;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.YearStages;
import broodtide.catalog.Catalog;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whoever takes the usual threshold hears of stricter ones; old sets say how old they are. */
class ThresholdWordsTest {
  private static final YearStages TEMPERATE = new YearStages(Catalog.climate("temperate"));

  private static List<String> notes(String set, String day) {
    return ThresholdWords.notes(TEMPERATE, Catalog.threshold(set), LocalDate.parse(day));
  }

  @ParameterizedTest
  @CsvSource({"2026-04-10, gds-france-2026", "2026-07-20, ages-2015"})
  void stricterSetsAreNamedBesideTheUsualOne(String day, String set) {
    assertThat(notes(Catalog.USUAL_THRESHOLD, day))
        .singleElement()
        .asString()
        .contains("1 in \"" + set + "\"");
  }

  @Test
  void nothingIsSaidWhereNothingIsStricterOrAnotherIsChosen() {
    assertThat(notes(Catalog.USUAL_THRESHOLD, "2026-06-01")).isEmpty();
    assertThat(notes("ages-2015", "2026-07-20")).isEmpty();
    assertThat(notes("2", "2026-07-20")).isEmpty();
  }

  @Test
  void etherRollsOfLongAgoAreCalledSo() {
    assertThat(notes("strange-sheppard-2001", "2026-08-10"))
        .singleElement()
        .asString()
        .contains("2001", "ether rolls");
  }
}
