package broodtide.words;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.Assessment;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.ColonyCases;
import broodtide.assessment.Horizon;
import broodtide.assessment.Place;
import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.control.Control;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LearnedWordsTest {
  private static Wash wash(String day, int mites) {
    return Wash.of(LocalDate.parse(day), "Elm", mites, 300);
  }

  private static List<String> sentences(List<Wash> washes, List<Control> given) {
    Place place = Place.of(Catalog.climate("temperate"), Surroundings.SPARSE);
    ColonyCase elm =
        ColonyCases.ofWashes(
                place,
                Map.of("Elm", washes),
                Map.of("Elm", given),
                Optional.empty(),
                Horizon::spring)
            .get(0);
    try (Workers workers = Workers.all()) {
      return LearnedWords.sentences(
          Assessment.of(elm, new SamplerSettings(512, 2, 1), workers).posterior());
    }
  }

  @Test
  void sentencesSayWhatWasLearned() {
    List<String> words =
        sentences(
            List.of(
                wash("2025-05-01", 2),
                wash("2025-05-31", 4),
                wash("2025-06-30", 11),
                wash("2025-07-30", 25)),
            List.of());
    assertThat(words.get(0))
        .startsWith("Your washes say much about mites per 100 bees at the start");
    assertThat(String.join(" ", words))
        .containsPattern(" say little about [^.]*reinvasion")
        .doesNotContain("virus")
        .endsWith(" There the forecast rests on what is usual.");
  }

  @Test
  void treatmentsAndSeasonsAreNamedWithTheirDays() {
    List<String> words =
        sentences(
            List.of(wash("2025-07-20", 20), wash("2025-10-20", 2), wash("2026-05-20", 9)),
            List.of(Catalog.control("thymol").at(LocalDate.of(2025, 8, 5))));
    assertThat(String.join(" ", words))
        .contains("\" of 5 August 2025 worked", " since 1 March 2026");
  }
}
