package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.measure.Unworkable;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class UsualPlansTest {
  private static ColonyCase colony(String climate, LocalDate now) {
    Place place =
        Place.of(
            Catalog.climate(climate),
            false,
            Surroundings.SPARSE,
            Catalog.threshold(Catalog.USUAL_THRESHOLD));
    Wash wash = Wash.of(now.minusDays(1), "A", 5, 300);
    return ColonyCases.ofWashes(
            place, Map.of("A", List.of(wash)), Map.of(), Optional.empty(), Horizon::spring)
        .get(0);
  }

  private static List<Plan> plans(ColonyCase c) {
    return UsualPlans.of(c, Optional.empty());
  }

  private static Plan named(List<Plan> plans, String end) {
    return plans.stream().filter(p -> p.name().endsWith(end)).findFirst().orElseThrow();
  }

  @Test
  void oneTreatsAfterHarvestAndAgainInTheBroodlessWinter() {
    ColonyCase c = colony("cool-maritime", LocalDate.of(2025, 7, 27));
    List<Plan> plans = plans(c);
    Plan both = named(plans, " after harvest + oxalic");
    Control first = both.controls().get(0);
    Control second = both.controls().get(1);
    assertThat(both.controls()).hasSize(2);
    assertThat(first).isEqualTo(named(plans, " after harvest").controls().get(0));
    assertThat(c.model().climate().supers().holds(first.from())).isFalse();
    assertThat(second).isEqualTo(named(plans, "oxalic-dribble late").controls().get(0));
    assertThat(c.stages().broodless(second.from())).contains(second.from());
    assertThat(PlanCheck.of(both, c)).as("nothing stands against it").isEmpty();
  }

  @Test
  void afterTheHarvestTheFirstOfThemIsLaidNow() {
    ColonyCase c = colony("temperate", LocalDate.of(2025, 8, 20));
    List<Plan> plans = plans(c);
    assertThat(named(plans, " now + oxalic").controls().get(0).from()).isEqualTo(c.now());
    assertThat(plans).noneMatch(p -> p.name().contains("harvest"));
  }

  @Test
  void notWithoutABroodlessWinterOrOnceTheWinterBeesAreRaised() {
    for (ColonyCase c :
        List.of(
            colony("subtropical", LocalDate.of(2025, 7, 27)),
            colony("temperate", LocalDate.of(2025, 10, 28)))) {
      assertThat(plans(c))
          .filteredOn(p -> !p.name().startsWith("queen-caging"))
          .noneMatch(p -> p.name().endsWith("+ oxalic"));
    }
  }

  /** Buchler et al. 2020: some 25 days caged, and a dribble when no capped brood is left. */
  @Test
  void theQueenIsCagedSoThatSheIsFreeBeforeWinterBeesAreReared() {
    ColonyCase c = colony("temperate", LocalDate.of(2025, 6, 20));
    Plan plan = named(plans(c), "queen-caging + oxalic");
    Control caged = plan.controls().get(0);
    Control dribble = plan.controls().get(1);
    assertThat(dribble.from()).isEqualTo(LocalDate.of(2025, 8, 1));
    assertThat(caged.from()).isEqualTo(LocalDate.of(2025, 7, 7));
    assertThat(PlanCheck.of(plan, c)).as("nothing stands against it").isEmpty();
  }

  @Test
  void noQueenIsCagedWhileWinterBeesAreRearedOrTooLateForThem() {
    for (ColonyCase c :
        List.of(
            colony("cool-maritime", LocalDate.of(2025, 7, 27)),
            colony("temperate", LocalDate.of(2025, 8, 20)),
            colony("temperate", LocalDate.of(2025, 11, 10)))) {
      assertThat(plans(c)).noneMatch(p -> p.name().startsWith("queen-caging"));
    }
  }

  @Test
  void vapourStandsBesideTheDribbleOnItsDay() {
    List<Plan> plans = plans(colony("cool-maritime", LocalDate.of(2025, 7, 27)));
    assertThat(named(plans, "oxalic-vapour late").controls().get(0).from())
        .isEqualTo(named(plans, "oxalic-dribble late").controls().get(0).from());
    List<Plan> winter = plans(colony("temperate", LocalDate.of(2025, 12, 10)));
    assertThat(winter).extracting(Plan::name).contains("oxalic-dribble now", "oxalic-vapour now");
  }

  @Test
  void aTreatmentOfOnesOwnIsFollowedByADribble() {
    ColonyCase c = colony("temperate", LocalDate.of(2025, 7, 1));
    List<Plan> plans = UsualPlans.of(c, Optional.of(Catalog.control("amitraz-strips")));
    Plan both = named(plans, "amitraz-strips after harvest + oxalic");
    assertThat(both.controls().get(1))
        .isEqualTo(Catalog.control("oxalic-dribble").at(both.controls().get(1).from()));
    assertThat(plans).noneMatch(p -> p.name().startsWith("oxalic-vapour"));
  }

  @Test
  void atMostEightWithNamesOfTheirOwnOnAnyDayAnywhere() {
    for (String climate : Catalog.CLIMATES.names()) {
      for (LocalDate d = LocalDate.of(2025, 1, 3); d.getYear() == 2025; d = d.plusDays(30)) {
        List<Plan> plans = plans(colony(climate, d));
        Set<String> names = new TreeSet<>();
        plans.forEach(p -> names.add(p.name()));
        assertThat(plans).as(climate + " " + d).hasSizeBetween(2, 8).hasSameSizeAs(names);
      }
    }
  }

  @Test
  void ownPlansComeAfterAndATakenNameIsMarked() {
    Plan early = new Plan("thymol 5 Aug", List.of(thymol(2025)));
    Plan later = new Plan("thymol 5 Aug", List.of(thymol(2026)));
    List<Plan> usual = List.of(Plan.waiting(UsualPlans.WAIT), early);
    assertThat(UsualPlans.with(usual, List.of(early, later)))
        .extracting(Plan::name)
        .containsExactly("wait", "thymol 5 Aug", "thymol 5 Aug (own)", "thymol 5 Aug (own 2)");
    assertThatThrownBy(() -> UsualPlans.with(usual, List.of(later, later)))
        .isInstanceOf(Unworkable.class)
        .hasMessage("--plan gives thymol 5 Aug twice; leave one of the two out");
  }

  private static Control thymol(int year) {
    return Catalog.control("thymol").at(LocalDate.of(year, 8, 5));
  }
}
