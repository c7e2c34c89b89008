package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ClimateEvidenceTest {
  private static final SamplerSettings SETTINGS = new SamplerSettings(512, 2, 1);

  private static List<ColonyCase> hives(String climate, Map<String, List<Wash>> washes) {
    return ColonyCases.ofWashes(Place.of(Catalog.climate(climate), Surroundings.SPARSE), washes);
  }

  private static Wash wash(String day, String hive, int mites) {
    return Wash.of(LocalDate.parse(day), hive, mites, 300);
  }

  /**
   * From April to September without a treatment mites stay few only where the season is short;
   * counts far above what a short season allows speak for a long one.
   */
  @Test
  void countsThatAShortSeasonCannotReachSpeakForALongOne() {
    List<Wash> washes =
        List.of(
            wash("2025-03-01", "Elm", 1),
            wash("2025-04-10", "Elm", 9),
            wash("2025-05-10", "Elm", 40),
            wash("2025-06-10", "Elm", 110));
    List<ColonyCase> hives = hives("boreal", Map.of("Elm", washes));
    try (Workers workers = Workers.all()) {
      List<ClimateEvidence> ranked = ClimateEvidence.of(hives, SETTINGS, workers);
      assertThat(ranked).extracting(ClimateEvidence::climate).containsAll(Catalog.CLIMATES.names());
      assertThat(ranked.get(0).climate()).isIn("warm-temperate", "subtropical");
      assertThat(ClimateEvidence.farBetter(ranked, "boreal")).contains(ranked.get(0));
      assertThat(ClimateEvidence.farBetter(ranked, ranked.get(0).climate())).isEmpty();
      assertThat(ClimateEvidence.farBetter(ranked, "one of my own")).isEmpty();
    }
  }

  @Test
  void twoWashesSayNothingOfAClimate() {
    List<Wash> washes = List.of(wash("2025-05-01", "Elm", 1), wash("2025-08-01", "Elm", 60));
    try (Workers workers = Workers.all()) {
      assertThat(ClimateEvidence.of(hives("boreal", Map.of("Elm", washes)), SETTINGS, workers))
          .isEmpty();
    }
  }
}
