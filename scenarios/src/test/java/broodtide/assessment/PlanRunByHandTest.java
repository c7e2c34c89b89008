package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.catalog.Catalog;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.control.QueenCaging;
import broodtide.control.Split;
import broodtide.engine.ColonyModel;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.SimulatedColony;
import broodtide.engine.SpringLow;
import broodtide.engine.StandardColony;
import broodtide.engine.Survival;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntToDoubleFunction;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Figures of one plan, added up from the days of five colonies, two of which hardly live. */
class PlanRunByHandTest {
  private static final LocalDate START = LocalDate.of(2001, 5, 1);
  private static final LocalDate WASHED = LocalDate.of(2001, 6, 10);
  private static final LocalDate NOW = LocalDate.of(2001, 6, 15);
  private static final LocalDate UNTIL = LocalDate.of(2002, 4, 20);
  private static final ColonyModel MODEL = Shipped.model("temperate");
  private static final Survival SURVIVAL = Survival.in(MODEL);

  private static final List<SimulatedColony> FIVE =
      List.of(
          SimulatedColony.average(0.3),
          SimulatedColony.average(1),
          new SimulatedColony(1.2, 1.3, 2, 0.8, 1, List.of()),
          new SimulatedColony(0.6, 0.5, 12, 1, 1, List.of()),
          new SimulatedColony(0.4, 0.4, 30, 1, 1, List.of()));

  private static final List<SimulatedColony> DYING =
      List.of(
          new SimulatedColony(0.6, 0.5, 25, 1, 1, List.of()),
          new SimulatedColony(0.4, 0.4, 40, 1, 1, List.of()));

  /** What five colonies do if nothing is done; only figures are made of it anew in each test. */
  private static final EnsembleRun WAITING = played(colony(), FIVE, Plan.waiting("plan"));

  private static ColonyCase colony(LocalDate until, ThresholdSet set) {
    return new ColonyCase(
        "A",
        MODEL,
        START,
        NOW,
        until,
        List.of(Wash.of(WASHED, "A", 2, 300), Wash.of(START, "A", 1, 300)),
        List.of(),
        set,
        Priors.defaults());
  }

  private static ColonyCase colony() {
    return colony(UNTIL, ThresholdSet.given("3", 3, 100));
  }

  private static PlanRun run(ColonyCase c, List<SimulatedColony> members, Control... controls) {
    Plan plan = new Plan("plan", List.of(controls));
    return new PlanRun(c, plan, played(c, members, plan), List.of("said beforehand"));
  }

  private static EnsembleRun played(ColonyCase c, List<SimulatedColony> members, Plan plan) {
    try (Workers workers = new Workers(1)) {
      return EnsembleRun.of(
          c.season(plan),
          StandardColony.on(MODEL, START),
          members,
          PlanRun.watched(c),
          workers,
          Progress.NONE);
    }
  }

  /** The five, waiting. */
  private static PlanRun five(ThresholdSet set) {
    ColonyCase c = colony(UNTIL, set);
    return new PlanRun(c, Plan.waiting("plan"), WAITING, List.of("said beforehand"));
  }

  private static PlanRun five() {
    return five(ThresholdSet.given("3", 3, 100));
  }

  /** The chance that the fewest bees since the wash were enough, and that nothing else took it. */
  private static double[] alive(PlanRun run, LocalDate day) {
    LocalDate on = day.isBefore(WASHED) ? WASHED : day;
    return Arrays.stream(run.run().least(Quantity.ADULTS, WASHED, on))
        .map(bees -> SURVIVAL.enough(bees) * SURVIVAL.spared(WASHED, on))
        .toArray();
  }

  private static double mean(double[] values) {
    return Arrays.stream(values).average().orElseThrow();
  }

  private static double[] each(int members, IntToDoubleFunction figure) {
    return IntStream.range(0, members).mapToDouble(figure).toArray();
  }

  @Test
  void membersWeighAsTheyLive() {
    PlanRun run = five();
    assertThat(run.knownAlive()).isEqualTo(WASHED);
    double[] before = alive(run, WASHED);
    double standing = mean(before);
    assertThat(run.standing()).isCloseTo(standing, within(1e-6)).isLessThan(0.99);
    LocalDate low = run.springLow().orElseThrow().day();
    for (LocalDate day : List.of(START, WASHED, NOW, NOW.plusDays(90), low, UNTIL)) {
      double[] then = alive(run, day);
      assertThat(run.living(day)).containsExactly(each(5, m -> then[m] / standing), within(1e-5));
      assertThat(run.lost(day))
          .containsExactly(each(5, m -> (before[m] - then[m]) / standing), within(1e-5));
      assertThat(run.shareLost(day)).isCloseTo(1 - mean(then) / standing, within(1e-6));
    }
    assertThat(run.shareLost(low)).isBetween(0.2, 0.98);
    double[] then = alive(run, low);
    assertThat(run.losses())
        .containsExactly(each(5, m -> (before[m] - then[m]) / standing), within(1e-5));
    assertThat(run.winterLosses(run.springLow().orElseThrow()))
        .containsExactly(each(5, m -> 1 - then[m] / before[m]), within(1e-5));
  }

  /** Washes after the last day looked at do not count. */
  @Test
  void aColonyWasLastAliveOnItsLastWash() {
    LocalDate near = NOW.plusDays(9);
    ColonyCase c =
        new ColonyCase(
            "A",
            MODEL,
            START,
            NOW,
            near,
            List.of(
                Wash.of(near, "A", 1, 300),
                Wash.of(WASHED, "A", 1, 300),
                Wash.of(near.plusDays(1), "A", 1, 300)),
            List.of(),
            ThresholdSet.given("3", 3, 100),
            Priors.defaults());
    PlanRun run = five();
    assertThat(new PlanRun(c, run.plan(), run.run(), List.of()).knownAlive()).isEqualTo(near);
    assertThat(new PlanRun(Invented.known(1), run.plan(), run.run(), List.of()).knownAlive())
        .as("never washed")
        .isEqualTo(Invented.START);
  }

  /** Too few bees on the day of the wash are no colony that could be lost later. */
  @Test
  void aMemberThatCannotHaveLivedIsLostForSure() {
    List<Control> given = new ArrayList<>();
    for (int i = 3; i > 0; i--) {
      given.add(new Split("split " + i, WASHED.minusDays(i), 0.95, 0.95, 0));
    }
    PlanRun run =
        run(
            colony(),
            List.of(
                SimulatedColony.average(0.3), new SimulatedColony(0.05, 0.01, 0, 1, 1, List.of())),
            given.toArray(Control[]::new));
    double[] lost = run.winterLosses(new SpringLow(WASHED, 1));
    assertThat(alive(run, WASHED)[1]).isZero();
    assertThat(lost).containsExactly(0, 1);
  }

  @Test
  void halfAreLostOnTheFirstDayWithHalfTheChance() {
    PlanRun run = run(colony(), DYING);
    LocalDate day = WASHED;
    while (mean(alive(run, day)) > 0.5 * mean(alive(run, WASHED))) {
      day = day.plusDays(1);
    }
    assertThat(day).isBetween(WASHED.plusDays(10), UNTIL.minusDays(60));
    assertThat(run.halfLost(UNTIL)).isEqualTo(day);
    assertThat(run.halfLost(day)).isEqualTo(day);
    assertThat(run.halfLost(day.minusDays(1))).isEqualTo(day.minusDays(1));
    assertThat(run.halfLost(WASHED.minusDays(1))).isEqualTo(WASHED.minusDays(1));
  }

  /** What of each colony dies from one day to the next leaves the mites of the first. */
  @Test
  void mitesAreThoseOfTheDayBefore() {
    PlanRun run = five();
    double sum = 0;
    for (LocalDate d = WASHED; d.isBefore(run.springLow().orElseThrow().day()); d = d.plusDays(1)) {
      double[] today = alive(run, d);
      double[] tomorrow = alive(run, d.plusDays(1));
      double[] mites = run.run().values(Quantity.MITES, d);
      for (int m = 0; m < 5; m++) {
        sum += (today[m] - tomorrow[m]) * mites[m];
      }
    }
    assertThat(run.mitesWhenLost())
        .isCloseTo(sum / 5 / mean(alive(run, WASHED)), within(1e-4 * sum))
        .isGreaterThan(100);
  }

  @Test
  void chancesOverAThresholdAreThoseOfTheLiving() {
    PlanRun run = five();
    LocalDate day = LocalDate.of(2001, 8, 20);
    double[] infestation = run.run().values(Quantity.INFESTATION, day);
    assertThat(run.infestation(day)).containsExactly(infestation);
    double[] sorted = infestation.clone();
    Arrays.sort(sorted);
    double[] living = alive(run, day);
    for (int k = 0; k < 4; k++) {
      double between = (sorted[k] + sorted[k + 1]) / 2;
      double over =
          IntStream.range(0, 5)
              .filter(m -> infestation[m] > between)
              .mapToDouble(m -> living[m])
              .sum();
      assertThat(run.chanceOver(between * PlanRun.SHOWN_BY_A_WASH, day))
          .isCloseTo(over / Arrays.stream(living).sum(), within(1e-5));
    }
    assertThat(run.on(Quantity.INFESTATION, day).median())
        .isCloseTo(QuantileSummary.of(infestation, living).median(), within(1e-4));
    assertThat(run.mitesWhenRaised()).isEqualTo(run.on(Quantity.MITES, LocalDate.of(2001, 10, 5)));
  }

  /** A member weighs in with its highest so far, as much as dies of it on each day. */
  @Test
  void peaksAreTheHighestBeforeDeath() {
    PlanRun run = five();
    List<Double> tops = new ArrayList<>();
    List<Double> weights = new ArrayList<>();
    double[] top = new double[5];
    for (LocalDate d = NOW; !d.isAfter(UNTIL); d = d.plusDays(1)) {
      double[] today = alive(run, d);
      double[] tomorrow = d.equals(UNTIL) ? new double[5] : alive(run, d.plusDays(1));
      double[] infestation = run.infestation(d);
      for (int m = 0; m < 5; m++) {
        top[m] = Math.max(top[m], infestation[m]);
        tops.add(top[m]);
        weights.add(today[m] - tomorrow[m]);
      }
    }
    // of equal values only the sum of weights counts: put together what has one value
    QuantileSummary expected = byValue(tops, weights);
    QuantileSummary found = run.peaks();
    assertThat(found.q05()).isCloseTo(expected.q05(), within(0.002 * expected.q05()));
    assertThat(found.q25()).isCloseTo(expected.q25(), within(0.002 * expected.q25()));
    assertThat(found.median()).isCloseTo(expected.median(), within(0.002 * expected.median()));
    assertThat(found.q75()).isCloseTo(expected.q75(), within(0.002 * expected.q75()));
    assertThat(found.q95()).isCloseTo(expected.q95(), within(0.002 * expected.q95()));
    assertThat(run.peaks()).isSameAs(found);
  }

  private static QuantileSummary byValue(List<Double> values, List<Double> weights) {
    SortedMap<Double, Double> sums = new TreeMap<>();
    for (int i = 0; i < values.size(); i++) {
      sums.merge(values.get(i), weights.get(i), Double::sum);
    }
    return QuantileSummary.of(
        sums.keySet().stream().mapToDouble(v -> v).toArray(),
        sums.values().stream().mapToDouble(w -> w).toArray());
  }

  @Test
  void theDayOfThePeakIsThatOfTheMiddle() {
    PlanRun run = five();
    LocalDate best = NOW;
    double top = -1;
    for (LocalDate d = NOW; !d.isAfter(UNTIL); d = d.plusDays(1)) {
      double median = QuantileSummary.of(run.infestation(d), alive(run, d)).median();
      if (median > top) {
        top = median;
        best = d;
      }
    }
    assertThat(run.peakDay()).isEqualTo(best).isAfter(NOW).isBefore(UNTIL);
    PlanRun none = run(colony(), List.of(new SimulatedColony(1, 1, 0, 1, 0, List.of())));
    assertThat(none.peakDay()).as("all days alike").isEqualTo(NOW);
  }

  /** Each with its weight of that day, over the threshold that holds there. */
  @Test
  void crossingIsTheFirstDayOverTheThresholdOfTheDay() {
    ThresholdSet set = Catalog.threshold("strange-sheppard-2001");
    PlanRun run = five(set);
    ColonyCase c = run.colony();
    int[] days = new int[5];
    double[] weights = new double[5];
    Arrays.fill(days, -1);
    double standing = mean(alive(run, WASHED));
    for (int i = 0; !NOW.plusDays(i).isAfter(UNTIL); i++) {
      LocalDate day = NOW.plusDays(i);
      double[] infestation = run.infestation(day);
      double[] living = alive(run, day);
      for (int m = 0; m < 5; m++) {
        if (days[m] < 0
            && c.stages().thresholdOn(set, day).isPresent()
            && infestation[m] * PlanRun.SHOWN_BY_A_WASH
                > c.stages().thresholdOn(set, day).orElseThrow()) {
          days[m] = i;
          weights[m] = living[m] / standing;
        }
      }
    }
    assertThat(days).contains(Arrays.stream(days).max().orElseThrow()).doesNotContain(0);
    CrossingDays expected = new CrossingDays(NOW, days, weights);
    assertThat(run.crossing().share()).isCloseTo(expected.share(), within(1e-5));
    for (int i = 0; i <= run.run().index(UNTIL) - run.run().index(NOW); i++) {
      assertThat(run.crossing().shareWithin(i))
          .as("day %d", i)
          .isCloseTo(expected.shareWithin(i), within(1e-5));
    }
    // a threshold that is passed today counts from today
    PlanRun today = five(ThresholdSet.given("0.01", 0.01, 100));
    assertThat(today.crossing().shareWithin(0))
        .isCloseTo(mean(alive(run, NOW)) / standing, within(1e-5));
  }

  /** The mean over days with such cells; a caged queen leaves some days without any. */
  @Test
  void winterBroodIsAMeanOverDaysThatHaveIt() {
    List<SimulatedColony> members = new ArrayList<>(FIVE);
    members.add(new SimulatedColony(1, 1, 0, 1, 0, List.of()));
    PlanRun run =
        run(
            colony(),
            members,
            new QueenCaging("cage", LocalDate.of(2001, 7, 20), LocalDate.of(2001, 8, 20)));
    double[] sum = new double[6];
    int[] days = new int[6];
    LocalDate last = LocalDate.of(2001, 10, 5);
    for (LocalDate d = LocalDate.of(2001, 8, 15); !d.isAfter(last); d = d.plusDays(1)) {
      double[] shares = run.run().values(Quantity.INFESTED_WORKER_SHARE, d);
      for (int m = 0; m < 6; m++) {
        sum[m] += shares[m];
        days[m] += shares[m] > 0 ? 1 : 0;
      }
    }
    assertThat(days[1]).isBetween(20, 45);
    assertThat(run.winterBroodInfested())
        .containsExactly(each(6, m -> sum[m] / Math.max(1, days[m])), within(1e-12));
    run.winterBroodInfested()[0] = 7;
    assertThat(run.winterBroodInfested()[0]).as("a copy").isLessThan(1);
    assertThat(run.winterBrood())
        .isEqualTo(QuantileSummary.of(run.winterBroodInfested(), run.living(last)));
    PlanRun none = run(colony(NOW.plusDays(20), ThresholdSet.given("3", 3, 100)), FIVE);
    assertThat(none.winterBroodInfested()).containsOnly(Double.NaN);
    assertThat(none.summary().infestedWinterBrood()).isEmpty();
  }

  @Test
  void aPlanIsSummedUpByItsControls() {
    Control thymol = Catalog.control("thymol").at(LocalDate.of(2001, 7, 25));
    Control comb = Catalog.control("drone-comb-part").at(LocalDate.of(2001, 6, 20));
    Control strips = Catalog.control("amitraz-strips").at(LocalDate.of(2001, 9, 15));
    PlanRun run = run(colony(), FIVE, strips, thymol, comb);
    int applications =
        thymol.course().orElseThrow().applications() + strips.course().orElseThrow().applications();
    assertThat(run.treatments()).isEqualTo(applications).isGreaterThan(2);
    // supers come off with July
    assertThat(run.daysTreatedWithSupers()).isEqualTo(7);
    PlanSummary summary = run.summary();
    assertThat(summary.plan()).isSameAs(run.plan());
    assertThat(summary.from()).contains(LocalDate.of(2001, 6, 20));
    assertThat(summary.lastControl()).contains(strips.name());
    assertThat(summary.courses()).isEqualTo(3);
    assertThat(summary.daysWithSupers()).isEqualTo(7);
    assertThat(summary.winterLoss()).isCloseTo(mean(run.losses()), within(1e-12));
    assertThat(summary.infestedWinterBrood()).hasValue(run.winterBrood().median());
    assertThat(summary.infestation())
        .isEqualTo(run.on(Quantity.INFESTATION, LocalDate.of(2001, 10, 5)).median());
    assertThat(summary.waits()).isFalse();
    assertThat(summary.treats()).isTrue();
    PlanRun comb1 = run(colony(), FIVE, comb);
    assertThat(comb1.summary().waits()).isFalse();
    assertThat(comb1.summary().treats()).isFalse();
    PlanSummary waiting = five().summary();
    assertThat(waiting.waits()).isTrue();
    assertThat(waiting.lastControl()).isEmpty();
    assertThat(waiting.from()).isEmpty();
    assertThat(run.objections()).containsExactly("said beforehand");
  }

  /** A run that looks less far ahead has the figures of one of its own. */
  @Test
  void aShorterRunIsTheSameUpToItsEnd() {
    ColonyCase near = colony(LocalDate.of(2001, 9, 1), ThresholdSet.given("3", 3, 100));
    Control thymol = Catalog.control("thymol").at(LocalDate.of(2001, 7, 25));
    PlanRun own = run(near, FIVE, thymol);
    PlanRun cut = run(colony(), FIVE, thymol).upTo(near);
    assertThat(cut.colony()).isSameAs(near);
    assertThat(cut.plan()).isEqualTo(own.plan());
    assertThat(cut.run().scenario()).isEqualTo(own.run().scenario());
    assertThat(cut.losses()).containsExactly(own.losses());
    assertThat(cut.peaks()).isEqualTo(own.peaks());
    assertThat(cut.crossing().share()).isEqualTo(own.crossing().share());
    assertThat(cut.winterBroodInfested()).containsExactly(own.winterBroodInfested());
    assertThat(cut.springLow()).isEmpty();
    assertThat(cut.objections()).isEqualTo(PlanCheck.of(cut.plan(), near)).isNotEmpty();
    assertThat(PlanDay.all(cut)).hasSize(124);
    PlanDay third = PlanDay.all(cut).get(2);
    assertThat(third.date()).isEqualTo(START.plusDays(2));
    assertThat(third.infestation()).isEqualTo(cut.on(Quantity.INFESTATION, third.date()));
    assertThat(third.adults()).isEqualTo(cut.on(Quantity.ADULTS, third.date()).median());
  }

  @Test
  void lossesByYardAreThoseOfItsLuck() {
    PlanRun run = five();
    LocalDate day = LocalDate.of(2001, 11, 20);
    assertThat(run.lossByYard(day))
        .isEqualTo(
            YardLuck.losses(
                SURVIVAL,
                run.run().values(Quantity.ADULTS, WASHED),
                run.run().least(Quantity.ADULTS, WASHED, day),
                WASHED,
                day))
        .isSameAs(run.lossByYard(day));
  }

  @Test
  void outcomesAreFiguresOfTheRun() {
    PlanRun run = five();
    LocalDate raised = LocalDate.of(2001, 10, 5);
    assertThat(Outcome.INFESTATION.of(run)).containsExactly(run.infestation(raised));
    assertThat(Outcome.INFESTATION.band(run)).isEqualTo(run.on(Quantity.INFESTATION, raised));
    assertThat(Outcome.INFESTATION.middle(run))
        .isEqualTo(run.on(Quantity.INFESTATION, raised).median());
    assertThat(Outcome.WINTER_BROOD.of(run)).containsExactly(run.winterBroodInfested());
    assertThat(Outcome.WINTER_BROOD.band(run)).isEqualTo(run.winterBrood());
    assertThat(Outcome.LOST.of(run)).containsExactly(run.losses());
    assertThat(Outcome.LOST.band(run)).isEqualTo(QuantileSummary.of(run.losses()));
    assertThat(Outcome.LOST.middle(run)).isCloseTo(mean(run.losses()), within(1e-12));
    assertThat(Outcome.INFESTATION.last(run.colony())).isEqualTo(raised);
    assertThat(Outcome.WINTER_BROOD.last(run.colony())).isEqualTo(raised);
    assertThat(Outcome.LOST.last(run.colony())).isEqualTo(UNTIL);
    assertThat(PlanRun.watched(run.colony()).quantities())
        .containsExactlyInAnyOrder(
            Quantity.INFESTATION,
            Quantity.ADULTS,
            Quantity.MITES,
            Quantity.INFESTED_WORKER_SHARE,
            Quantity.WINTER_BEES);
    LocalDate low = run.springLow().orElseThrow().day();
    assertThat(PlanRun.watched(run.colony()).keeps(Quantity.WINTER_BEES, low)).isTrue();
    assertThat(PlanRun.MOST_KEPT).as("three on every day, and room for some").isEqualTo(4);
  }

  @Test
  void aRunThatWasSummedUpAnswersWithoutBeingPlayedAgain() {
    PlanRun kept = five();
    ColonyCase c = kept.colony();
    AtomicInteger played = new AtomicInteger();
    Supplier<PlanRun.Played> play =
        () -> {
          played.incrementAndGet();
          return PlanRun.played(c, WAITING);
        };
    PlanRun run = new PlanRun(c, kept.plan(), play, List.of(), Optional.empty());
    run.sumUp();
    int once = played.get();
    LocalDate low = run.springLow().orElseThrow().day();
    assertThat(run.summary()).isEqualTo(kept.summary());
    assertThat(run.peaks()).isEqualTo(kept.peaks());
    assertThat(run.peakDay()).isEqualTo(kept.peakDay());
    assertThat(run.winterBrood()).isEqualTo(kept.winterBrood());
    assertThat(run.losses()).containsExactly(kept.losses());
    assertThat(run.lossByYard(low)).isEqualTo(kept.lossByYard(low));
    assertThat(run.winterLosses(run.springLow().orElseThrow()))
        .containsExactly(kept.winterLosses(run.springLow().orElseThrow()));
    assertThat(run.mitesWhenRaised()).isEqualTo(kept.mitesWhenRaised());
    assertThat(run.members()).isEqualTo(kept.members());
    assertThat(PlanDay.all(run)).isEqualTo(PlanDay.all(kept));
    for (LocalDate day : List.of(NOW, c.winterBeesRaised(), UNTIL)) {
      assertThat(run.infestation(day)).containsExactly(kept.infestation(day));
      assertThat(run.living(day)).containsExactly(kept.living(day));
      assertThat(run.shareLost(day)).isEqualTo(kept.shareLost(day));
    }
    assertThat(run.adults(WASHED)).containsExactly(kept.adults(WASHED));
    assertThat(run.fewestAdults(low)).containsExactly(kept.fewestAdults(low));
    assertThat(played).as("plays for these answers").hasValue(once);
    run.infestation(NOW.plusDays(1));
    assertThat(played).as("a day that was not summed up").hasValueGreaterThan(once);
  }

  @Test
  void whatARunRemembersCannotBeChangedFromOutside() {
    PlanRun run = five();
    run.sumUp();
    double[] then = run.infestation(NOW);
    run.infestation(NOW)[0] = -1;
    assertThat(run.infestation(NOW)).containsExactly(then);
  }

  @Test
  void daysBeforeTheDecisionAreTakenFromAnotherPlan() {
    PlanRun first = five();
    PlanRun other =
        new PlanRun(
            first.colony(),
            first.plan(),
            () -> {
              throw new AssertionError("asked of its own run");
            },
            List.of(),
            Optional.of(first));
    assertThat(other.on(Quantity.ADULTS, NOW)).isEqualTo(first.on(Quantity.ADULTS, NOW));
    assertThatThrownBy(() -> other.on(Quantity.ADULTS, NOW.plusDays(1)))
        .isInstanceOf(AssertionError.class);
  }

  @Test
  void ofManyRunsTheLastAreKeptAndOthersPlayedAgain() {
    PlanRun.Played run = PlanRun.played(colony(), WAITING);
    KeptRuns kept = new KeptRuns(KeptRuns.COLONIES / 2);
    int[] plays = new int[3];
    List<Supplier<PlanRun.Played>> runs = new ArrayList<>();
    for (int i = 0; i < plays.length; i++) {
      int own = i;
      runs.add(
          kept.of(
              () -> {
                plays[own]++;
                return run;
              }));
    }
    assertThat(kept.holds(2)).isTrue();
    assertThat(kept.holds(3)).isFalse();
    assertThat(plays).as("each when it is made").containsExactly(1, 1, 1);
    assertThat(runs.get(2).get()).isSameAs(run);
    assertThat(runs.get(1).get()).isSameAs(run);
    assertThat(plays).as("the last two are kept").containsExactly(1, 1, 1);
    assertThat(runs.get(0).get()).isSameAs(run);
    assertThat(runs.get(1).get()).isSameAs(run);
    assertThat(plays).as("the first took the place of the last").containsExactly(2, 1, 1);
    assertThat(KeptRuns.most(4096)).isEqualTo(16);
    assertThat(KeptRuns.most(KeptRuns.COLONIES * 2)).isEqualTo(1);
    assertThat(KeptRuns.most(0)).isEqualTo(KeptRuns.COLONIES);
  }
}
