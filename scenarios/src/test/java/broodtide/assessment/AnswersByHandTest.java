package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Workers;
import broodtide.fit.SeasonBanks;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.measure.Unworkable;
import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** Answers about one colony of 64 simulated ones, beside the figures that they are made of. */
class AnswersByHandTest {
  private static final SamplerSettings LITTLE = new SamplerSettings(64, 1, 1);
  private static final LocalDate NOW = Invented.NOW;
  private static final LocalDate RAISED = LocalDate.of(2026, 10, 5);
  private static final Plan WAIT = Plan.waiting("wait");
  private static final Plan TREAT =
      new Plan("treat", List.of(Catalog.control("thymol").at(LocalDate.of(2026, 8, 1))));

  private static <T> T with(Function<Workers, T> work) {
    try (Workers workers = new Workers(1)) {
      return work.apply(workers);
    }
  }

  private static Comparison played(ColonyCase c, Plan... plans) {
    return with(w -> Assessment.of(c, LITTLE, w).compare(List.of(plans)));
  }

  @Test
  void plansArePlayedInTheirOrderAndHeldAgainstWaiting() {
    Control today = Catalog.control("thymol").at(NOW);
    Control before = Catalog.control("thymol").at(NOW.minusDays(1));
    List<String> told = new ArrayList<>();
    Comparison plans =
        with(
            w ->
                Assessment.of(Invented.colony(), LITTLE, w)
                    .compare(
                        List.of(
                            TREAT,
                            new Plan("early", List.of(before)),
                            WAIT,
                            new Plan("today", List.of(today))),
                        (done, all) -> told.add(done + " of " + all)));
    assertThat(plans.runs())
        .extracting(r -> r.plan().name())
        .containsExactly("treat", "wait", "today");
    assertThat(told).containsExactly("1 of 4", "2 of 4", "3 of 4", "4 of 4");
    assertThat(plans.refused())
        .containsExactly(
            new Comparison.Refused(
                "early",
                "plan \"early\": \""
                    + before.name()
                    + "\" on 2026-07-08 lies before the day of decision, 2026-07-09; if it was"
                    + " done, give it as done, so that the washes are read with it"));
    assertThat(plans.reference().plan()).isEqualTo(WAIT);
    assertThat(plans.answerDay()).isEqualTo(RAISED);
    assertThat(plans.carriedOut()).isSameAs(plans);
    assertThat(plans.colony().now()).isEqualTo(NOW);
    PlanRun today2 = plans.runs().get(2);
    assertThat(today2.objections()).isEqualTo(PlanCheck.of(today2.plan(), plans.colony()));
    Difference against = plans.against(today2, Outcome.INFESTATION);
    double[] with = today2.infestation(RAISED);
    double[] without = plans.runs().get(1).infestation(RAISED);
    assertThat(against.mean())
        .isCloseTo(
            Arrays.stream(with).average().orElseThrow()
                - Arrays.stream(without).average().orElseThrow(),
            within(1e-9));
    assertThat(against.mean()).isNegative();
    assertThat(against.chanceSmaller()).isGreaterThan(0.5);
    assertThat(Comparison.chanceSmaller(new double[] {1, 2, 2, 4, 9}, new double[] {2, 2, 2, 5, 8}))
        .isCloseTo((1 + 0.5 + 0.5 + 1 + 0) / 5, within(1e-12));
    assertThat(Comparison.differences(new double[] {3, 1}, new double[] {1, 5}))
        .containsExactly(2, -4);
    Comparison two =
        new Comparison(
            plans.colony(),
            plans.posterior(),
            List.of(plans.runs().get(2), plans.runs().get(0)),
            List.of());
    assertThat(two.reference()).as("no plan waits").isSameAs(plans.runs().get(2));
    Comparison one = new Comparison(plans.colony(), plans.posterior(), List.of(today2), List.of());
    assertThat(one.answerDay()).as("one plan alone").isEqualTo(Invented.UNTIL);
  }

  @Test
  void whereNoPlanCanBeCarriedOutAllReasonsAreSaid() {
    Comparison none =
        played(
            Invented.colony(),
            new Plan("a", List.of(Catalog.control("thymol").at(NOW.minusDays(1)))),
            new Plan("b", List.of(Catalog.control("thymol").at(NOW.minusDays(2)))));
    List<Comparison.Refused> refused = none.refused();
    assertThatThrownBy(none::carriedOut)
        .isInstanceOf(Unworkable.class)
        .hasMessage(
            "colony \"A\": no plan can be carried out: a ("
                + refused.get(0).reason()
                + "); b ("
                + refused.get(1).reason()
                + ")");
  }

  /** What came before the decision came; nothing comes after it. */
  @Test
  void withoutArrivalsNothingComesFromTheDecisionOn() {
    Place dense = Place.of(Catalog.climate("temperate"), Surroundings.DENSE);
    ColonyCase c = Invented.colony().with(dense.model());
    Immigration usual = dense.model().immigration();
    double early = usual.on(LocalDate.of(2026, 6, 15));
    YearSpan june = new YearSpan(MonthDay.of(6, 1), MonthDay.of(7, 8));
    ColonyCase quiet =
        c.with(dense.model().with(new Immigration(List.of(new Immigration.Window(june, early)))));
    Comparison plans = played(c, WAIT, TREAT);
    EnsembleRun run =
        with(
            w ->
                plans
                    .posterior()
                    .run(
                        quiet.season(WAIT),
                        Set.of(Quantity.INFESTATION, Quantity.ADULTS),
                        w,
                        Progress.NONE));
    double expected =
        new PlanRun(quiet, WAIT, run, List.of()).on(Quantity.INFESTATION, RAISED).median();
    assertThat(plans.withoutArrivals(RAISED).orElseThrow()).isCloseTo(expected, within(1e-9));
    assertThat(expected).isLessThan(plans.reference().on(Quantity.INFESTATION, RAISED).median());
    ColonyCase isolated = c.with(dense.model().with(Immigration.NONE));
    Comparison alone = new Comparison(isolated, plans.posterior(), plans.runs(), List.of());
    assertThat(alone.withoutArrivals(RAISED)).as("none comes anyway").isEmpty();
    Comparison nextYear =
        new Comparison(
            c.until(Invented.START.plusYears(1)), plans.posterior(), plans.runs(), List.of());
    assertThat(nextYear.withoutArrivals(RAISED)).as("a year and more").isEmpty();
    Comparison almost =
        new Comparison(
            c.until(Invented.START.plusYears(1).minusDays(1)),
            plans.posterior(),
            plans.runs(),
            List.of());
    assertThat(almost.withoutArrivals(RAISED)).isPresent();
  }

  /** Waiting alone has the figures that it has beside plans, however far one looks. */
  @Test
  void waitingAloneIsWaitingBesidePlans() {
    ColonyCase far = Invented.colony().throughWinter();
    ColonyCase farther = far.until(far.until().plusDays(9));
    try (Workers workers = new Workers(1)) {
      Assessment assessment = Assessment.of(Invented.colony(), LITTLE, workers);
      assertThat(assessment.colony().until()).isEqualTo(Invented.UNTIL);
      Decision beside =
          Comparison.of(far, assessment.posterior(), List.of(WAIT, TREAT), workers, Progress.NONE)
              .decision();
      Decision alone = assessment.waiting();
      assertThat(alone.waiting()).isEqualTo(beside.waiting());
      assertThat(alone.overThresholdToday()).isEqualTo(beside.overThresholdToday());
      assertThat(alone.threshold()).hasValue(3);
      assertThat(alone.thresholdSet()).isEqualTo("kulhanek-2021");
      assertThat(alone.date()).isEqualTo(NOW);
      assertThat(alone.reachesSpring()).isTrue();
      assertThat(alone.reachesWinterBees()).isTrue();
      assertThat(alone.winterLossTold()).isTrue();
      assertThat(alone.ranking()).isEmpty();
      assertThat(beside.ranking()).isPresent();
      Assessment.WaitingAlone near = assessment.waitingAlone();
      assertThat(near.decision()).isEqualTo(alone);
      assertThat(near.comparison().colony()).isSameAs(assessment.colony());
      assertThat(near.comparison().runs()).hasSize(1);
      Comparison own = assessment.compare(List.of(WAIT));
      assertThat(near.comparison().reference().losses()).containsExactly(own.reference().losses());
      assertThat(near.comparison().answerDay()).isEqualTo(Invented.UNTIL);
      assertThat(own.decision().reachesSpring()).isFalse();
      Assessment.WaitingAlone later = Assessment.of(farther, LITTLE, workers).waitingAlone();
      assertThat(later.comparison().reference().run().scenario())
          .isEqualTo(farther.season(Plan.waiting("wait")));
      assertThat(later.decision().waiting()).isEqualTo(alone.waiting());
    }
  }

  @Test
  void decisionsSayHowFarTheForecastReaches() {
    ColonyCase autumn = Invented.colony().until(RAISED.minusDays(1));
    Decision before = played(autumn, WAIT, TREAT).decision();
    assertThat(before.reachesWinterBees()).isFalse();
    assertThat(before.reachesSpring()).isFalse();
    Decision on = played(autumn.until(RAISED), WAIT, TREAT).decision();
    assertThat(on.reachesWinterBees()).isTrue();
  }

  /** With plans each has its loss; waiting alone, or with no plans laid, none is kept. */
  @Test
  void rowsOfTheSheetAreFiguresOfTheAnswer() {
    ColonyCase c = Invented.colony().throughWinter();
    try (Workers workers = new Workers(1)) {
      HiveAnswer plans =
          HiveAnswer.of(c, List.of(WAIT, TREAT), false, LITTLE, new SeasonBanks(1), workers);
      assertThat(plans.decision()).isEqualTo(plans.comparison().decision());
      assertThat(plans.decision().ranking()).isPresent();
      HiveRow row = plans.row(Optional.of(new WashGain(0.01, 0.5)));
      PlanRun waiting = plans.comparison().reference();
      assertThat(row.hive()).isEqualTo("A");
      assertThat(row.infestation()).isEqualTo(waiting.on(Quantity.INFESTATION, NOW));
      assertThat(row.judgedOn()).isEqualTo(RAISED);
      assertThat(row.judged()).isEqualTo(waiting.on(Quantity.INFESTATION, RAISED));
      assertThat(row.lastCount()).contains(Invented.WASHES.get(2));
      assertThat(row.wash()).contains(new WashGain(0.01, 0.5));
      assertThat(row.lost()).containsOnlyKeys("wait", "treat");
      for (PlanRun run : plans.comparison().runs()) {
        HiveLoss loss = Objects.requireNonNull(row.lost().get(run.plan().name()));
        assertThat(loss.mites()).isEqualTo(run.mitesWhenLost());
        assertThat(loss.chance().chance()).isCloseTo(run.summary().winterLoss(), within(1e-6));
      }
      assertThat(row.over().orElseThrow().chance())
          .isEqualTo(plans.decision().overThresholdToday().orElseThrow());
      HiveAnswer none =
          HiveAnswer.of(c, List.of(WAIT, TREAT), true, LITTLE, new SeasonBanks(1), workers);
      assertThat(none.decision().ranking()).isEmpty();
      assertThat(none.comparison().runs()).hasSize(1);
      assertThat(none.decision().waiting()).isEqualTo(plans.decision().waiting());
      assertThat(none.row(Optional.empty()).lost()).isEmpty();
      assertThatThrownBy(
              () ->
                  HiveAnswer.of(
                      c,
                      List.of(
                          new Plan("a", List.of(Catalog.control("thymol").at(NOW.minusDays(1))))),
                      false,
                      LITTLE,
                      new SeasonBanks(1),
                      workers))
          .isInstanceOf(Unworkable.class);
    }
  }

  /** Alone, as with the banks that it shares. */
  @Test
  void anAssessmentIsTheSameWithBanksOfOthers() {
    ColonyCase many = Invented.colony();
    try (Workers workers = new Workers(1)) {
      SeasonPosterior alone = Assessment.of(many, LITTLE, workers).posterior();
      SeasonPosterior shared =
          Assessment.of(many, LITTLE, new SeasonBanks(2), workers, Progress.NONE).posterior();
      assertThat(shared.members()).isEqualTo(alone.members());
    }
  }

  /** Of two plans that nothing else tells apart, the one with another control than last. */
  @Test
  void whatWasUsedLastComesSecond() {
    LocalDate now = LocalDate.of(2026, 8, 20);
    ColonyCase c =
        new ColonyCase(
            "A",
            Invented.colony().model(),
            Invented.START,
            now,
            now.plusDays(10),
            Invented.WASHES,
            List.of(
                Catalog.control("thymol").at(LocalDate.of(2026, 7, 15)),
                Catalog.control("amitraz-strips").at(Invented.START)),
            Invented.colony().thresholds(),
            Invented.colony().priors());
    Plan again = new Plan("again", List.of(Catalog.control("thymol").at(now.plusDays(10))));
    Plan other = new Plan("other", List.of(Catalog.control("amitraz-strips").at(now.plusDays(10))));
    Decision decision = played(c, again, other).decision();
    assertThat(decision.best().plan()).isEqualTo(other);
    assertThat(decision.tied()).containsExactly("again");
  }

  /** Where winter losses cannot be told, plans are ranked by the brood of winter bees. */
  @Test
  void inTheSubtropicsPlansGoByTheBroodOfWinterBees() {
    ColonyCase c =
        Invented.colony().with(Shipped.model("subtropical")).until(LocalDate.of(2026, 12, 25));
    Comparison plans =
        played(
            c,
            WAIT,
            new Plan("treat", List.of(Catalog.control("amitraz-strips").at(NOW))),
            new Plan("late", List.of(Catalog.control("amitraz-strips").at(NOW.plusDays(90)))));
    PlanRanking byBrood =
        PlanRanking.of(
            plans.runs(), PlanRun::summary, PlanRun::winterBroodInfested, Optional.empty());
    PlanRanking byLoss =
        PlanRanking.of(plans.runs(), PlanRun::summary, PlanRun::losses, Optional.empty());
    assertThat(PlanRanking.of(plans.runs())).isEqualTo(byBrood).isNotEqualTo(byLoss);
    assertThat(plans.decision().winterLossTold()).isFalse();
    assertThat(plans.decision().knowsWinterLoss()).isFalse();
  }

  /** Parts of all mites day by day, and where there are none, none. */
  @Test
  void sharesOfASeasonAreThoseOfItsMites() {
    SeasonShares shares =
        SeasonShares.of(
            NOW,
            q ->
                switch (q) {
                  case MITES -> new double[] {100, 50, 0, 10};
                  case MITES_ON_BEES -> new double[] {40, 25, 0, 12};
                  case MITES_IN_DRONE_CELLS -> new double[] {10, 25, 0, 3};
                  case ADULTS -> new double[] {1, 2, 3, 4};
                  case WINTER_BEES -> new double[] {5, 6, 7, 8};
                  case SHARE_INFECTED_AT_EMERGENCE -> new double[] {0.1, 0.2, 0.3, 0.4};
                  case SHARE_INFECTED_AS_ADULTS -> new double[] {0.5, 0.6, 0.7, 0.8};
                  default -> throw new AssertionError(q);
                });
    assertThat(shares.first()).isEqualTo(NOW);
    assertThat(shares.onBees()).containsExactly(0.4, 0.5, 0, 1);
    assertThat(shares.inDroneCells())
        .containsExactly(new double[] {0.1, 0.5, 0, 0.3}, within(1e-12));
    assertThat(shares.inWorkerCells()).containsExactly(new double[] {0.5, 0, 0, 0}, within(1e-12));
    assertThat(shares.adults()).containsExactly(1, 2, 3, 4);
    assertThat(shares.winterBees()).containsExactly(5, 6, 7, 8);
    assertThat(shares.infectedAtEmergence()).containsExactly(0.1, 0.2, 0.3, 0.4);
    assertThat(shares.infectedAsAdults()).containsExactly(0.5, 0.6, 0.7, 0.8);
  }

  /** The mean of sixty-four colonies, up to the day on which half of all are lost. */
  @Test
  void aSeasonIsTheMeanOfItsColonies() {
    ColonyCase c = Invented.colony();
    try (Workers workers = new Workers(1)) {
      Comparison plans = Assessment.of(c, LITTLE, workers).compare(List.of(WAIT));
      PlanRun run = plans.reference();
      SeasonShares season = SeasonShares.of(plans, run, workers);
      int days = run.run().index(run.halfLost(c.until())) + 1;
      assertThat(season.first()).isEqualTo(c.start());
      assertThat(season.adults()).hasSize(days);
      EnsembleRun mites =
          plans
              .posterior()
              .run(
                  c.season(WAIT),
                  Set.of(Quantity.MITES_ON_BEES, Quantity.MITES),
                  workers,
                  Progress.NONE);
      for (int day = 0; day < days; day += 7) {
        LocalDate date = c.start().plusDays(day);
        assertThat(season.adults()[day])
            .isCloseTo(
                Arrays.stream(run.run().values(Quantity.ADULTS, date)).average().orElseThrow(),
                within(1e-6));
        double onBees = Arrays.stream(mites.values(Quantity.MITES_ON_BEES, date)).sum();
        double all = Arrays.stream(mites.values(Quantity.MITES, date)).sum();
        assertThat(season.onBees()[day]).isCloseTo(onBees / all, within(1e-9));
      }
    }
  }
}
