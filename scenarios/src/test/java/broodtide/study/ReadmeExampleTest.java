package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Trajectory;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.pages.WrittenPart;
import broodtide.wash.Wash;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The Java examples of the library page: they compile, run, and stand there as they stand here. */
class ReadmeExampleTest {
  private static final Path SOURCE =
      Path.of("src/test/java/broodtide/study/ReadmeExampleTest.java");

  @Test
  void oneSeason() {
    // example: one season
    LocalDate start = LocalDate.of(2026, 4, 18);
    LocalDate end = LocalDate.of(2026, 10, 1);
    ColonyModel model = ColonyModel.in(Catalog.climate("temperate"));
    Scenario season = Scenario.until(model, Plan.waiting("wait"), start, end);

    Trajectory colony = DailyEngine.run(season, SimulatedColony.average(0.4)); // mites per 100 bees
    double perHundred = colony.at(Quantity.INFESTATION, LocalDate.of(2026, 9, 1));
    // end of example

    assertThat(perHundred).isGreaterThan(0.4);
  }

  @Test
  void fromWashesToAForecast() {
    // example: from washes to a forecast
    List<Wash> washes =
        List.of(
            Wash.of(LocalDate.of(2026, 4, 18), "Meadow", 1, 310),
            Wash.of(LocalDate.of(2026, 5, 20), "Meadow", 2, 295),
            Wash.of(LocalDate.of(2026, 6, 21), "Meadow", 6, 302));
    LocalDate first = LocalDate.of(2026, 4, 18);
    ColonyModel place = ColonyModel.in(Catalog.climate("temperate"));
    Plan nothing = Plan.waiting("wait");
    LocalDate october = LocalDate.of(2026, 10, 1);
    Scenario past = Scenario.until(place, nothing, first, LocalDate.of(2026, 6, 21));
    Scenario ahead = Scenario.until(place, nothing, first, october);

    double[] band; // mites per 100 bees on 1 October: low, middle, high; 90 % lie between
    try (Workers workers = new Workers(2)) {
      SeasonPosterior colonies =
          SeasonPosterior.of(
              past, washes, Priors.defaults(), SamplerSettings.usual(1), workers, Progress.NONE);
      EnsembleRun run = colonies.run(ahead, Set.of(Quantity.INFESTATION), workers, Progress.NONE);
      band = run.quantiles(Quantity.INFESTATION, run.index(october), 0.05, 0.5, 0.95);
    }
    // end of example

    assertThat(band).isSorted().hasSize(3);
    assertThat(band[1]).isBetween(1.0, 100.0);
  }

  @Tag("pages")
  @ParameterizedTest
  @ValueSource(strings = {"one season", "from washes to a forecast"})
  void standsOnThePage(String example) throws IOException {
    String shown =
        Files.readString(SOURCE)
            .split("    // example: " + example + "\n", 2)[1]
            .split("    // end of example\n", 2)[0]
            .stripTrailing()
            .stripIndent();
    new WrittenPart(Path.of("../model/LIBRARY.md"), "java, " + example)
        .holds("```java\n" + shown.strip() + "\n```");
  }
}
