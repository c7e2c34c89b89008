package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class PlansSideBySideTest {
  private static final LocalDate NOW = LocalDate.of(2026, 6, 22);
  private static final Workers WORKERS = new Workers(2);

  private static ColonyCase colony;
  private static SeasonPosterior posterior;

  @BeforeAll
  static void washes() {
    colony =
        new ColonyCase(
            "A",
            ColonyModel.in(Catalog.climate("temperate")),
            LocalDate.of(2026, 4, 18),
            NOW,
            LocalDate.of(2026, 12, 10),
            List.of(
                Wash.of(LocalDate.of(2026, 4, 18), "A", 1, 310),
                Wash.of(LocalDate.of(2026, 5, 20), "A", 2, 295),
                Wash.of(LocalDate.of(2026, 6, 21), "A", 6, 320)),
            List.of(),
            Catalog.threshold("kulhanek-2021"),
            Priors.defaults());
    posterior =
        colony.posterior(new SeasonPosterior.SamplerSettings(512, 2, 11), WORKERS, Progress.NONE);
  }

  @AfterAll
  static void close() {
    WORKERS.close();
  }

  private static Control control(String name, LocalDate day) {
    return Catalog.control(name).at(day);
  }

  private static Comparison play(Plan... plans) {
    return Comparison.of(colony, posterior, List.of(plans), WORKERS, Progress.NONE);
  }

  @Test
  void twoHelpfulMeasuresAreNeverWorseThanOne() {
    Control comb = control("drone-comb-part", NOW);
    Control formic = control("formic-strips", LocalDate.of(2026, 8, 1));
    Control oxalic = control("oxalic-dribble", LocalDate.of(2026, 11, 20));
    Comparison c =
        play(
            new Plan("one", List.of(formic)),
            new Plan("with comb", List.of(comb, formic)),
            new Plan("with oxalic", List.of(formic, oxalic)));
    double[] brood = c.runs().get(0).winterBroodInfested();
    assertThat(Comparison.chanceSmaller(c.runs().get(1).winterBroodInfested(), brood))
        .as("comb and formic against formic: winter-bee brood infested")
        .isGreaterThan(0.99);
    LocalDate end = LocalDate.of(2026, 12, 9);
    double[] mites = c.runs().get(0).run().values(Quantity.MITES, end);
    assertThat(Comparison.chanceSmaller(c.runs().get(2).run().values(Quantity.MITES, end), mites))
        .as("formic and oxalic against formic: mites in December")
        .isGreaterThan(0.99);
  }

  @Test
  void plansThatDoNothingYetAreTheSameUntilTheyAct() {
    Comparison c =
        play(
            Plan.waiting("wait"),
            new Plan("later", List.of(control("thymol", LocalDate.of(2026, 8, 20)))));
    LocalDate before = LocalDate.of(2026, 8, 20);
    assertThat(c.runs().get(1).infestation(before)).isEqualTo(c.runs().get(0).infestation(before));
  }

  @Test
  void aPlanThatCannotRunIsNamedAndTheRestGoesOn() {
    Comparison c =
        play(
            Plan.waiting("wait"),
            new Plan("too early", List.of(control("thymol", LocalDate.of(2026, 2, 1)))),
            new Plan("fine", List.of(control("thymol", LocalDate.of(2026, 8, 20)))));
    assertThat(c.runs()).extracting(r -> r.plan().name()).containsExactly("wait", "fine");
    assertThat(c.refused()).hasSize(1);
    assertThat(c.refused().get(0).reason()).contains("too early", "2026-02-01");
  }

  @Test
  void objectionsNameControlAndDay() {
    PlanRun cold =
        play(new Plan("cold", List.of(control("formic-strips", LocalDate.of(2026, 12, 1)))))
            .runs()
            .get(0);
    assertThat(cold.objections()).hasSize(1);
    assertThat(cold.objections().get(0)).contains("2026-12-01", "outside its");
    PlanRun onHoney =
        play(new Plan("honey", List.of(control("thymol", LocalDate.of(2026, 7, 10)))))
            .runs()
            .get(0);
    assertThat(onHoney.objections().get(0)).contains("supers are usually on", "22 of its days");
  }

  @Test
  void usualPlansSuitTheDay() {
    List<Plan> plans = UsualPlans.of(colony, Optional.empty());
    assertThat(plans).hasSize(7);
    assertThat(UsualPlans.waitsForHarvest(colony, Optional.empty())).isTrue();
    assertThat(plans)
        .as("supers stand, and no treatment of the list may be used under them")
        .allMatch(p -> p.courses().stream().noneMatch(t -> t.from().equals(colony.now())));
    assertThat(plans.get(0).controls()).isEmpty();
    for (Plan plan : plans) {
      assertThat(PlanCheck.of(plan, colony.model().climate()))
          .as(plan.name())
          .noneMatch(s -> s.contains("outside its"));
    }
    List<Plan> thymol = UsualPlans.of(colony, Optional.of(Catalog.control("thymol")));
    assertThat(UsualPlans.waitsForHarvest(colony, Optional.of(Catalog.control("thymol"))))
        .as("one that is asked for is laid all the same, with what stands against it")
        .isFalse();
    assertThat(thymol).filteredOn(p -> p.name().startsWith("thymol")).hasSize(4);
  }

  @Test
  void figuresOfOutcomes() {
    assertThat(Comparison.chanceSmaller(new double[] {1, 2, 3, 4}, new double[] {2, 2, 2, 2}))
        .isCloseTo(0.375, within(1e-12));
    QuantileSummary s = QuantileSummary.of(new double[] {4, 1, 3, 2, 5});
    assertThat(s.median()).isEqualTo(3);
    assertThat(s.q25()).isEqualTo(2);
    assertThat(s.q05()).isCloseTo(1.2, within(1e-12));
  }
}
