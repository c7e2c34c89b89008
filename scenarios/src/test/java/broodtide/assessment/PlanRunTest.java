package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.control.Plan;
import broodtide.control.Split;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.SpringLow;
import broodtide.engine.StandardColony;
import broodtide.engine.Survival;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is read from the colonies of one plan. */
class PlanRunTest {
  private static final LocalDate MAY = LocalDate.of(2001, 5, 1);

  /**
   * Nearly all bees and all brood leave: what is left is no colony, though the model regrows it.
   */
  private static final Split GONE = new Split("all but given away", MAY, 0.95, 1, 0);

  @Test
  void aLostColonyStaysLostThoughTheModelRegrowsIt() {
    PlanRun run = run(new Plan("gone", List.of(GONE)), LocalDate.of(2002, 5, 1));
    SpringLow low = run.springLow().orElseThrow();
    assertThat(run.on(Quantity.ADULTS, low.day()).q05()).isGreaterThan(3000);
    assertThat(run.shareLost(MAY.plusDays(3))).isGreaterThan(0.7);
    assertThat(run.shareLost(low.day())).isGreaterThan(run.shareLost(MAY.plusDays(3)));
    assertThat(Arrays.stream(run.winterLosses(low)).boxed())
        .allMatch(chance -> chance > 0.7 && chance <= 1);
    assertThat(Outcome.LOST.of(run)).containsExactly(run.lost(low.day()));
  }

  @Test
  void chancesOfLossAreOneFigureHoweverTheyAreAskedFor() {
    PlanRun run = run(Plan.waiting("wait"), LocalDate.of(2002, 5, 1));
    LocalDate low = run.springLow().orElseThrow().day();
    assertThat(Arrays.stream(run.losses()).average().orElseThrow())
        .isCloseTo(run.shareLost(low), within(1e-6));
    assertThat(Arrays.stream(run.living(low)).average().orElseThrow())
        .isCloseTo(1 - run.shareLost(low), within(1e-6));
    assertThat(run.shareLost(MAY)).isCloseTo(0, within(1e-6));
  }

  /** Where few bees become winter bees, nothing published tells winter losses. */
  @Test
  void winterLossesAreNotToldInTheSubtropics() {
    assertThat(Survival.hasWinter(Shipped.model("subtropical").climate())).isFalse();
    for (String place : new String[] {"boreal", "cool-maritime", "temperate", "warm-temperate"}) {
      assertThat(Survival.hasWinter(Shipped.model(place).climate())).isTrue();
    }
  }

  /** The same day gives the same chance, however far the run looks ahead. */
  @Test
  void lossDoesNotHangOnTheLastDay() {
    LocalDate autumn = LocalDate.of(2001, 10, 1);
    PlanRun shorter = run(Plan.waiting("wait"), autumn);
    PlanRun longer = run(Plan.waiting("wait"), LocalDate.of(2002, 5, 1));
    assertThat(shorter.lost(autumn)).containsExactly(longer.lost(autumn));
    assertThat(shorter.losses()).containsExactly(shorter.lost(autumn));
  }

  /** A few mites more or less matter less than the yard: the mean over yards is the loss itself. */
  @Test
  void lossByYardLiesAroundTheLoss() {
    PlanRun run = run(Plan.waiting("wait"), LocalDate.of(2002, 5, 1));
    LocalDate low = run.springLow().orElseThrow().day();
    QuantileSummary losses = run.lossByYard(low);
    assertThat(losses.q05()).isBetween(0.0, run.shareLost(low) - 0.05);
    assertThat(losses.q95()).isBetween(run.shareLost(low) + 0.05, 1.0);
    assertThat(run.lossByYard(MAY).q95()).isLessThan(1e-9);
  }

  @Test
  void nothingIsReadBeyondTheLastDay() {
    PlanRun run = run(Plan.waiting("wait"), LocalDate.of(2001, 8, 1));
    double[] last = run.infestation(LocalDate.of(2001, 8, 1));
    assertThat(run.peakDay()).isEqualTo(LocalDate.of(2001, 8, 1));
    assertThat(run.peaks().median()).isCloseTo(QuantileSummary.of(last).median(), within(1e-3));
    assertThat(PlanDay.all(run)).last().extracting(PlanDay::date).isEqualTo(run.colony().until());
    assertThat(run.crossing().dayFor(run.crossing().share()).orElseThrow())
        .isBeforeOrEqualTo(run.colony().until());
  }

  /** Two of five colonies have so many mites and so few bees that they hardly live to autumn. */
  @Test
  void coloniesThatDieCountLessInEveryOutcome() {
    PlanRun run =
        run(
            Plan.waiting("wait"),
            LocalDate.of(2001, 11, 1),
            SimulatedColony.average(0.3),
            SimulatedColony.average(0.5),
            SimulatedColony.average(0.7),
            new SimulatedColony(0.2, 0.3, 40, 1, 1, List.of()),
            new SimulatedColony(0.2, 0.3, 60, 1, 1, List.of()));
    LocalDate raised = run.colony().winterBeesRaised();
    double[] living = run.living(raised);
    assertThat(living[3] + living[4]).isLessThan(0.5 * living[0]);
    for (Outcome outcome : List.of(Outcome.INFESTATION, Outcome.WINTER_BROOD)) {
      double[] all = outcome.of(run);
      assertThat(outcome.middle(run)).isLessThan(0.99 * all[2]);
      assertThat(outcome.middle(run)).isEqualTo(outcome.band(run).median());
    }
    assertThat(run.summary().infestedWinterBrood().orElseThrow())
        .isEqualTo(Outcome.WINTER_BROOD.middle(run));
    assertThat(Outcome.INFESTATION.middle(run))
        .isEqualTo(run.on(Quantity.INFESTATION, raised).median());
    assertThat(Outcome.LOST.middle(run))
        .isCloseTo(run.shareLost(LocalDate.of(2001, 11, 1)), within(1e-6));
  }

  private static PlanRun run(Plan plan, LocalDate until) {
    return run(
        plan,
        until,
        SimulatedColony.average(0.3),
        SimulatedColony.average(0.5),
        SimulatedColony.average(0.7));
  }

  private static PlanRun run(Plan plan, LocalDate until, SimulatedColony... members) {
    ColonyCase c =
        new ColonyCase(
            "A",
            Shipped.model("temperate"),
            MAY,
            MAY,
            until,
            List.of(),
            List.of(),
            Catalog.threshold("kulhanek-2021"),
            Priors.defaults());
    Scenario season = c.season(plan);
    try (Workers workers = new Workers(1)) {
      return new PlanRun(
          c,
          plan,
          EnsembleRun.of(
              season,
              StandardColony.on(c.model(), MAY),
              List.of(members),
              PlanRun.watched(c),
              workers,
              Progress.NONE),
          List.of());
    }
  }
}
