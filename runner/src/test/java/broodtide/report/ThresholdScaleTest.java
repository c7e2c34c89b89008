package broodtide.report;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.Assessment;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.ColonyCases;
import broodtide.assessment.Comparison;
import broodtide.assessment.Decision;
import broodtide.assessment.Place;
import broodtide.assessment.PlanDay;
import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.chart.ThresholdSteps;
import broodtide.control.Plan;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.results.ColonyResult;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * The dashed line of a picture is crossed on the day on which the answer counts a colony as over.
 */
class ThresholdScaleTest {
  private static final LocalDate MAY = LocalDate.of(2026, 5, 20);

  @Test
  void aMiddleAboveTheDashedLineIsOverTheThreshold() {
    List<Wash> washes =
        List.of(
            Wash.of(MAY, "Meadow", 2, 300),
            Wash.of(MAY.plusDays(30), "Meadow", 5, 300),
            Wash.of(MAY.plusDays(61), "Meadow", 9, 300));
    ColonyCase colony =
        ColonyCases.ofWashes(
                Place.of(Catalog.climate("temperate"), Surroundings.SPARSE),
                Map.of("Meadow", washes))
            .get(0);
    try (Workers workers = new Workers(1)) {
      Comparison comparison =
          Assessment.of(colony, new SamplerSettings(128, 1, 1), workers)
              .compare(List.of(Plan.waiting("wait")));
      ColonyResult result = ColonyResult.of(comparison, Optional.empty(), workers);
      List<PlanDay> days = result.days(comparison.runs().get(0));
      ThresholdSteps steps = PlanPictures.plans(result).panel().threshold();
      assertThat(steps).isNotNull();
      double line = steps.levels().get(0).value();
      assertThat(steps.name()).isEqualTo("threshold: 3 in a wash");
      assertThat(days.stream().map(d -> d.infestation().median() > line).distinct()).hasSize(2);
      assertThat(days)
          .allSatisfy(
              d -> {
                double middle = d.infestation().median();
                assertThat(middle > line).isEqualTo(Decision.over(middle, 3));
              });
    }
  }
}
