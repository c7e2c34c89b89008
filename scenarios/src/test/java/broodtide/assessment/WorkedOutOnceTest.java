package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.engine.Quantity;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What many ask for is worked out for the first of them and kept for the others. */
class WorkedOutOnceTest {
  private static final LocalDate DAY = LocalDate.of(2025, 7, 20);

  private static List<ColonyCase> cases() {
    Map<String, List<Wash>> washes = new LinkedHashMap<>();
    washes.put("Upper", List.of(Wash.of(DAY, "Upper", 3, 300)));
    washes.put("Lower", List.of(Wash.of(DAY, "Lower", 0, 300)));
    return ColonyCases.ofWashes(
        Place.of(Catalog.climate("temperate"), Surroundings.SPARSE), washes);
  }

  @Test
  void coloniesOfAPlaceShareItsWinter() {
    List<ColonyCase> cases = cases();
    ColonyCase upper = cases.get(0);
    assertThat(cases.get(1).springLow().orElseThrow()).isSameAs(upper.springLow().orElseThrow());
    assertThat(upper.until(upper.until().plusDays(30)).springLow().orElseThrow())
        .isSameAs(upper.springLow().orElseThrow());
    assertThat(cases.get(1).winter().survival()).isSameAs(upper.winter().survival());
    assertThat(upper.decidingOn(DAY.plusDays(9)).winter().survival())
        .isSameAs(upper.winter().survival());
  }

  @Test
  void comparisonKeepsItsDecisionAndItsFigures() {
    ColonyCase colony = cases().get(0);
    try (Workers workers = new Workers(1)) {
      Comparison plans =
          Assessment.of(colony, new SamplerSettings(64, 1, 1), workers)
              .compare(UsualPlans.of(colony));
      assertThat(plans.decision()).isSameAs(plans.decision());
      assertThat(plans.decision().waiting()).isSameAs(plans.runs().get(0).summary());
      PlanRun run = plans.runs().get(1);
      assertThat(run.on(Quantity.INFESTATION, DAY.plusDays(30)))
          .isSameAs(run.on(Quantity.INFESTATION, DAY.plusDays(30)));
    }
  }

  @Test
  void shippedFileIsReadOnce() {
    assertThat(Catalog.control("thymol")).isSameAs(Catalog.control("thymol"));
    assertThat(Catalog.climate("temperate")).isSameAs(Catalog.climate("temperate"));
  }
}
