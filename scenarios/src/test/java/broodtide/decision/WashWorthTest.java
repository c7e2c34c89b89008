package broodtide.decision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Comparison;
import broodtide.assessment.Invented;
import broodtide.assessment.Outcome;
import broodtide.assessment.PlanRun;
import broodtide.catalog.Catalog;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.ExpectedWashes;
import broodtide.fit.SeasonPosterior;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class WashWorthTest {
  private static final LocalDate WASH = LocalDate.of(2026, 8, 5);
  private static final LocalDate AUGUST = LocalDate.of(2026, 8, 6);

  private static List<Plan> later() {
    return List.of(
        Plan.waiting("wait"),
        new Plan("strips", List.of(Catalog.control("formic-strips").at(AUGUST))),
        new Plan("thymol", List.of(Catalog.control("thymol").at(AUGUST))));
  }

  private static WashWorth weigh(ColonyCase c, int members, double cost, int threads) {
    try (Workers workers = new Workers(threads)) {
      SeasonPosterior posterior = Invented.posterior(c, members, workers);
      List<Plan> now =
          List.of(new Plan("now", List.of(Catalog.control("formic-strips").at(Invented.NOW))));
      return WashWorth.of(
          c, posterior, now, later(), WASH, 300, Outcome.WINTER_BROOD, cost, "", workers);
    }
  }

  /** Knowing all is at least as good as a wash, a wash as not washing, today as later. */
  @Test
  void moreKnowledgeIsNeverWorse() {
    for (double cost : new double[] {0, 0.05, 0.15, 0.3}) {
      WashWorth w = weigh(Invented.colony(), 512, cost, 2);
      assertThat(w.knowing()).isLessThanOrEqualTo(w.withWash() + 1e-12);
      assertThat(w.withWash()).isLessThanOrEqualTo(w.later() + 1e-12);
      assertThat(w.delay()).isGreaterThanOrEqualTo(-1e-12);
      assertThat(w.decisions().stream().mapToDouble(WashWorth.Decision::chance).sum())
          .isCloseTo(1, within(0.01));
    }
  }

  /** With treatments dear enough to be doubted, few mites mean wait and many mean treat. */
  @Test
  void aCountNearTheBalanceSplitsTheDecisionAndIsWorthSomething() {
    int split = 0;
    for (double cost : new double[] {0.15, 0.2, 0.25, 0.3}) {
      WashWorth w = weigh(Invented.colony(), 512, cost, 2);
      Plan few = w.decisions().get(0).plan();
      Plan many = w.decisions().get(w.decisions().size() - 1).plan();
      if (few.controls().isEmpty() && !many.controls().isEmpty()) {
        split++;
        assertThat(w.later() - w.withWash()).isPositive();
      }
    }
    assertThat(split).isPositive();
  }

  /** Of a colony that is known already, a wash tells nothing. */
  @Test
  void aWashOfAKnownColonyIsWorthNothing() {
    WashWorth w = weigh(atDecision(Invented.known(1.5)), 64, 0.1, 1);
    assertThat(w.withWash()).isCloseTo(w.later(), within(1e-12));
    assertThat(w.knowing()).isCloseTo(w.later(), within(1e-12));
  }

  /** By December the colonies with most mites are mostly dead, and cannot be washed. */
  @Test
  void coloniesThatDieAreNotWashed() {
    LocalDate december = LocalDate.of(2026, 12, 1);
    ColonyCase c = Invented.colony();
    try (Workers workers = new Workers(2)) {
      SeasonPosterior posterior = Invented.posterior(c, 256, workers);
      Plan wait = Plan.waiting("wait");
      Plan late =
          new Plan("late", List.of(Catalog.control("oxalic-dribble").at(december.plusDays(1))));
      WashWorth worth =
          WashWorth.of(
              c,
              posterior,
              List.of(wait),
              List.of(wait, late),
              december,
              300,
              Outcome.INFESTATION,
              1,
              "",
              workers);
      PlanRun run =
          Comparison.of(c, posterior, List.of(wait), workers, Progress.NONE).runs().get(0);
      double[] living = run.living(december);
      double[][] counts =
          ExpectedWashes.chances(posterior, wait, Wash.of(december, "A", 0, 300), workers)
              .byCount();
      double all = Arrays.stream(living).sum();
      assertThat(all).isLessThan(0.9 * living.length);
      for (WashWorth.Decision d : worth.decisions()) {
        double chance = 0;
        for (int y = d.from(); y <= d.to(); y++) {
          for (int m = 0; m < living.length; m++) {
            chance += counts[y][m] * living[m] / all;
          }
        }
        assertThat(d.chance()).isCloseTo(chance, within(1e-6));
      }
      assertThat(worth.decisions()).isNotEmpty();
    }
  }

  private static ColonyCase atDecision(ColonyCase c) {
    return c.decidingOn(Invented.NOW);
  }

  @Test
  void sameOnAnyNumberOfThreads() {
    WashWorth one = weigh(Invented.colony(), 256, 0.1, 1);
    WashWorth three = weigh(Invented.colony(), 256, 0.1, 3);
    assertThat(three.withWash()).isEqualTo(one.withWash());
    assertThat(three.decisions()).isEqualTo(one.decisions());
  }

  @Test
  void plansThatBeginBeforeTheWashAreRefused() {
    try (Workers workers = new Workers(1)) {
      ColonyCase c = Invented.colony();
      SeasonPosterior posterior = Invented.posterior(c, 64, workers);
      assertThatThrownBy(
              () ->
                  WashWorth.of(
                      c,
                      posterior,
                      later(),
                      later(),
                      AUGUST.plusDays(5),
                      300,
                      Outcome.WINTER_BROOD,
                      0.1,
                      "",
                      workers))
          .hasMessageContaining("2026-08-06")
          .hasMessageContaining("2026-08-11");
    }
  }

  /** Every member's chances add up to 1, and their mean is bees x recovery x infestation. */
  @Test
  void chancesOfCounts() {
    try (Workers workers = new Workers(1)) {
      ColonyCase c = atDecision(Invented.known(1));
      SeasonPosterior posterior = Invented.posterior(c, 16, workers);
      Plan wait = Plan.waiting("wait");
      double[][] chances =
          ExpectedWashes.chances(posterior, wait, Wash.of(WASH, "known", 0, 300), workers)
              .byCount();
      double truth =
          Comparison.of(c, posterior, List.of(wait), workers, Progress.NONE)
              .runs()
              .get(0)
              .infestation(WASH)[0];
      double sum = 0;
      double mean = 0;
      for (int y = 0; y < chances.length; y++) {
        sum += chances[y][3];
        mean += y * chances[y][3];
      }
      assertThat(sum).isCloseTo(1, within(1e-12));
      assertThat(mean).isCloseTo(300 * 0.9 * truth / 100, within(1e-6));
    }
  }
}
