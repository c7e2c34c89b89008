package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.HiveVisit;
import broodtide.catalog.Obstacle;
import broodtide.catalog.ResistantMites;
import broodtide.control.Control;
import broodtide.control.DroneCombRemoval;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.control.QueenCaging;
import broodtide.control.Split;
import broodtide.engine.ColonyModel;
import broodtide.fit.Priors;
import broodtide.season.Climate;
import broodtide.season.DailyHighs;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Usual plans and what stands against plans, by the calendar of the temperate climate. There supers
 * stand from 20 April to 31 July, winter bees are reared from 15 August to 5 October, no egg is
 * laid from 25 October to 10 January, and drones are reared from 20 March to 14 August.
 */
class PlansByHandTest {
  private static final Climate TEMPERATE = Catalog.climate("temperate");
  private static final LocalDate SPRING = LocalDate.of(2026, 3, 20);

  /** Its last egg fell on 24 October, and its drones are capped for up to 24 days more. */
  private static final LocalDate BROODLESS = LocalDate.of(2025, 11, 18);

  private static LocalDate day(String monthAndDay) {
    return LocalDate.parse("2025-" + monthAndDay);
  }

  private static ColonyCase colony(
      Climate climate, LocalDate now, LocalDate until, Control... given) {
    return new ColonyCase(
        "A",
        ColonyModel.in(climate),
        now.minusDays(60),
        now,
        until,
        List.of(),
        List.of(given),
        Catalog.threshold(Catalog.USUAL_THRESHOLD),
        Priors.defaults());
  }

  private static ColonyCase colony(String now, LocalDate until) {
    return colony(TEMPERATE, day(now), until);
  }

  private static Control control(String name, LocalDate day) {
    return Catalog.control(name).at(day);
  }

  private static Plan plan(String name, Control... controls) {
    return new Plan(name, List.of(controls));
  }

  private static Plan comb(LocalDate now, String... cuts) {
    List<LocalDate> days = new ArrayList<>();
    for (String cut : cuts) {
      days.add(day(cut));
    }
    DroneCombRemoval removal = (DroneCombRemoval) control("drone-comb-part", now);
    return plan("cut drone comb", removal.withCuts(days));
  }

  private static List<String> names(ColonyCase c) {
    return UsualPlans.of(c).stream().map(Plan::name).toList();
  }

  @Test
  void inJuly() {
    LocalDate now = day("07-01");
    LocalDate harvest = day("08-01");
    ColonyCase c = colony("07-01", SPRING);
    assertThat(UsualPlans.waitsForHarvest(c, Optional.empty())).isTrue();
    assertThat(UsualPlans.of(c))
        .containsExactly(
            Plan.waiting("wait"),
            comb(now, "07-29", "08-26"),
            plan("thymol after harvest", control("thymol", harvest)),
            plan(
                "thymol after harvest + oxalic",
                control("thymol", harvest),
                control("oxalic-dribble", BROODLESS)),
            plan(
                "queen-caging + oxalic",
                control("queen-caging", day("07-07")),
                control("oxalic-dribble-caged", harvest)),
            plan("oxalic-dribble late", control("oxalic-dribble", BROODLESS)),
            plan("oxalic-vapour late", control("oxalic-vapour", BROODLESS)));
  }

  @Test
  void withATreatmentOfOnesOwn() {
    LocalDate now = day("07-01");
    ColonyCase c = colony("07-01", SPRING);
    ControlTemplate dribble = Catalog.control("oxalic-dribble");
    assertThat(UsualPlans.waitsForHarvest(c, Optional.of(dribble))).isFalse();
    assertThat(UsualPlans.of(c, Optional.of(dribble), "on 1 Jul"))
        .containsExactly(
            Plan.waiting("wait"),
            comb(now, "07-29", "08-26"),
            plan("oxalic-dribble on 1 Jul", dribble.at(now)),
            plan("oxalic-dribble after harvest", dribble.at(day("08-01"))),
            plan(
                "oxalic-dribble after harvest + oxalic",
                dribble.at(day("08-01")),
                dribble.at(BROODLESS)),
            plan("oxalic-dribble late", dribble.at(BROODLESS)));
  }

  /** Two days before supers come off nobody waits for it; then winter bees are too near. */
  @ParameterizedTest
  @CsvSource({
    "07-29, true, 08-01, after harvest",
    "07-30, false, 07-30, now",
    "08-20, false, 08-20, now"
  })
  void harvestIsWaitedForUntilTwoDaysBefore(String now, boolean waits, String begins, String when) {
    ColonyCase c = colony(now, SPRING);
    assertThat(UsualPlans.waitsForHarvest(c, Optional.empty())).isEqualTo(waits);
    List<Plan> plans = UsualPlans.of(c);
    assertThat(plans)
        .contains(
            plan("thymol " + when, control("thymol", day(begins))),
            plan(
                "thymol " + when + " + oxalic",
                control("thymol", day(begins)),
                control("oxalic-dribble", BROODLESS)));
    assertThat(plans).filteredOn(p -> p.name().startsWith("thymol")).hasSize(2);
    assertThat(names(c)).noneMatch(n -> n.startsWith("queen"));
  }

  @Test
  void whatBeginsOnTheLastDayIsNoPlan() {
    assertThat(names(colony("07-01", day("08-01"))))
        .as("no harvest in sight")
        .containsExactly("wait", "cut drone comb", "thymol now");
    assertThat(names(colony("07-01", day("08-02"))))
        .containsExactly("wait", "cut drone comb", "thymol after harvest", "queen-caging + oxalic");
    ColonyCase before = colony("07-01", BROODLESS);
    assertThat(names(before))
        .containsExactly(
            "wait",
            "cut drone comb",
            "thymol after harvest",
            "queen-caging + oxalic",
            "thymol late");
    // late is the day after the last winter bees where no day without brood is in sight
    assertThat(UsualPlans.of(before))
        .contains(plan("thymol late", control("thymol", day("10-06"))));
    assertThat(names(colony("07-01", BROODLESS.plusDays(1))))
        .contains("thymol after harvest + oxalic", "oxalic-dribble late");
    assertThat(names(colony("07-01", day("10-06")))).doesNotContain("thymol late");
    assertThat(names(colony("07-01", day("10-07")))).contains("thymol late");
  }

  /** Once winter bees are raised only today is left, and the days without brood. */
  @Test
  void inAutumn() {
    assertThat(names(colony("10-10", day("11-01")))).containsExactly("wait", "thymol now");
    assertThat(UsualPlans.of(colony("10-10", SPRING)))
        .containsExactly(
            Plan.waiting("wait"),
            plan("thymol now", control("thymol", day("10-10"))),
            plan("oxalic-dribble late", control("oxalic-dribble", BROODLESS)),
            plan("oxalic-vapour late", control("oxalic-vapour", BROODLESS)));
    assertThat(UsualPlans.of(colony("11-18", SPRING)))
        .containsExactly(
            Plan.waiting("wait"),
            plan("oxalic-dribble now", control("oxalic-dribble", BROODLESS)),
            plan("oxalic-vapour now", control("oxalic-vapour", BROODLESS)));
    LocalDate january = LocalDate.of(2026, 1, 5);
    assertThat(names(colony(TEMPERATE, january, LocalDate.of(2026, 12, 1))))
        .as("no egg is laid on the day on which she would be caged")
        .noneMatch(n -> n.startsWith("queen"));
  }

  @Test
  void queensAreFreeBeforeWinterBeesAreReared() {
    assertThat(UsualPlans.of(colony("07-21", SPRING)))
        .contains(
            plan(
                "queen-caging + oxalic",
                control("queen-caging", day("07-21")),
                control("oxalic-dribble-caged", day("08-15"))));
    assertThat(names(colony("07-22", SPRING))).noneMatch(n -> n.startsWith("queen"));
    assertThat(names(colony("07-01", day("08-01")))).noneMatch(n -> n.startsWith("queen"));
  }

  /** What is cut holds drones that were laid a fortnight before. */
  @ParameterizedTest
  @CsvSource({
    "03-20, ",
    "03-21, 04-18 05-16 06-13",
    "07-31, 08-28",
    "08-01, ",
    "08-14, ",
  })
  void combIsCutWhileThereAreDrones(String now, String cuts) {
    List<Plan> plans = UsualPlans.of(colony(now, SPRING));
    if (cuts == null) {
      assertThat(plans).noneMatch(p -> p.name().equals("cut drone comb"));
    } else {
      assertThat(plans).contains(comb(day(now), cuts.split(" ")));
    }
  }

  @Test
  void cutsLieBeforeTheLastDay() {
    assertThat(UsualPlans.of(colony("07-01", day("08-26")))).contains(comb(day("07-01"), "07-29"));
    assertThat(names(colony("07-01", day("07-29")))).doesNotContain("cut drone comb");
  }

  /** Warmth at which each may begin, by its file; where none suits, the first is named. */
  @ParameterizedTest
  @CsvSource({
    "15, thymol",
    "14.9, formic-slow",
    "10, formic-slow",
    "9.9, thymol",
    "30, thymol",
    "30.1, amitraz-strips",
    "40, amitraz-strips",
    "40.1, thymol"
  })
  void treatmentsGoByTheWarmthOfTheirDay(double high, String name) {
    LocalDate now = day("08-10");
    TreeMap<LocalDate, Double> highs = new TreeMap<>();
    highs.put(now, high);
    ColonyCase c = colony(TEMPERATE.with(new DailyHighs(highs)), now, day("09-20"));
    assertThat(UsualPlans.of(c)).contains(plan(name + " now", control(name, now)));
  }

  @Test
  void inTheSubtropics() {
    LocalDate now = day("07-05");
    assertThat(UsualPlans.of(colony(Catalog.climate("subtropical"), now, LocalDate.of(2026, 6, 1))))
        .containsExactly(
            Plan.waiting("wait"),
            comb(now, "08-02", "08-30", "09-27"),
            plan("amitraz-strips now", control("amitraz-strips", now)),
            plan(
                "queen-caging + oxalic",
                control("queen-caging", now),
                control("oxalic-dribble-caged", day("07-30"))),
            plan("thymol late", control("thymol", day("12-21"))));
  }

  @Test
  void waitingStandsBesideOtherPlans() {
    Plan treat = plan("thymol", control("thymol", day("08-01")));
    Plan taken = plan("wait", control("thymol", day("08-01")));
    List<Plan> with = List.of(treat, Plan.waiting("nothing"));
    assertThat(UsualPlans.besideWaiting(with)).isEqualTo(with);
    assertThat(UsualPlans.besideWaiting(List.of(treat)))
        .containsExactly(Plan.waiting("wait"), treat);
    assertThat(UsualPlans.besideWaiting(List.of(taken, treat)))
        .containsExactly(Plan.waiting("wait (nothing done)"), taken, treat);
    assertThat(UsualPlans.with(with, List.of(taken))).containsExactly(treat, with.get(1), taken);
  }

  @Test
  void labelsDecideUnderSupers() {
    Control strips = control("formic-strips", day("07-29"));
    assertThat(PlanCheck.of(plan("p", strips), TEMPERATE))
        .containsExactly(
            strips.name()
                + " from 2025-07-29: supers are usually on for 3 of its days; the label decides");
    assertThat(PlanCheck.labelDecides(strips, TEMPERATE)).isTrue();
    assertThat(PlanCheck.daysWithSupers(strips.course().orElseThrow(), TEMPERATE)).isEqualTo(3);
    Control after = control("formic-strips", day("08-01"));
    assertThat(PlanCheck.labelDecides(after, TEMPERATE)).isFalse();
    assertThat(PlanCheck.of(plan("p", after), TEMPERATE)).isEmpty();
    Control thymol = control("thymol", day("07-29"));
    assertThat(PlanCheck.labelDecides(thymol, TEMPERATE)).as("never under supers").isFalse();
    assertThat(PlanCheck.of(plan("p", thymol), TEMPERATE))
        .singleElement()
        .asString()
        .doesNotContain("; the label decides");
    assertThat(PlanCheck.labelDecides(control("split", day("06-01")), TEMPERATE)).isFalse();
  }

  /** Workers are capped for 12 days: who treats as long meets all that come out. */
  @Test
  void broodHidesMitesFromShortTreatments() {
    ColonyCase c = colony("08-02", SPRING);
    MiticideCourse dribble = control("oxalic-dribble", day("08-20")).course().orElseThrow();
    String hides = dribble.name() + " on 2025-08-20: capped brood usually hides mites from it then";
    assertThat(PlanCheck.of(plan("p", dribble), c)).containsExactly(hides);
    assertThat(PlanCheck.of(plan("p", dribble.repeated(2, 9).orElseThrow()), c))
        .containsExactly(hides);
    assertThat(PlanCheck.of(plan("p", dribble.repeated(2, 10).orElseThrow()), c)).isEmpty();
    assertThat(PlanCheck.of(plan("p", control("formic-strips", day("08-20"))), c))
        .as("goes through cappings")
        .isEmpty();
    assertThat(PlanCheck.of(plan("p", control("oxalic-dribble", BROODLESS)), c)).isEmpty();
    ColonyCase swarmed =
        colony(TEMPERATE, day("08-20"), SPRING, new Split("all brood away", day("08-19"), 0, 1, 0));
    assertThat(PlanCheck.of(plan("p", control("oxalic-dribble", day("08-27"))), swarmed))
        .as("the first egg after it is capped a day later")
        .isEmpty();
  }

  @Test
  void theSameSubstanceTwiceIsSaid() {
    Control first = control("thymol", day("07-01"));
    Control again = control("thymol", day("08-20"));
    Control acid = control("formic-strips", day("08-01"));
    String said =
        again.name()
            + " from 2025-08-20: thymol again; changing slows resistance (common practice)";
    ColonyCase treated = colony(TEMPERATE, day("07-31"), SPRING, first);
    assertThat(PlanCheck.of(plan("p", again), treated)).containsExactly(said);
    assertThat(PlanCheck.of(plan("p", again, acid), treated)).as("another between").isEmpty();
    ColonyCase twice = colony(TEMPERATE, day("08-30"), SPRING, again, first);
    assertThat(PlanCheck.of(plan("p", control("formic-strips", day("09-10"))), twice))
        .as("what was done is done")
        .isEmpty();
    Miticide own = new Miticide("own", 20, 0.2, 0, 0, 0, 0, 40, Miticide.SupersRule.OFF);
    assertThat(
            PlanCheck.of(
                plan(
                    "p",
                    MiticideCourse.once("own", own, day("08-05")),
                    MiticideCourse.once("own", own, day("09-05"))),
                colony("08-02", SPRING)))
        .as("of one's own nobody knows the substance")
        .isEmpty();
  }

  @Test
  void cappedBroodIsThereFromNineToTwentyFourDaysAfterEggs() {
    Plan wait = Plan.waiting("wait");
    assertThat(Obstacles.cappedBrood(day("11-17"), wait, TEMPERATE)).isTrue();
    assertThat(Obstacles.cappedBrood(day("11-18"), wait, TEMPERATE)).isFalse();
    // the first egg of the year falls on 11 January
    assertThat(Obstacles.cappedBrood(day("01-19"), wait, TEMPERATE)).isFalse();
    assertThat(Obstacles.cappedBrood(day("01-20"), wait, TEMPERATE)).isTrue();
    Plan caged = plan("cage", new QueenCaging("cage", day("06-01"), day("06-25")));
    assertThat(Obstacles.cappedBrood(day("06-24"), caged, TEMPERATE)).isTrue();
    assertThat(Obstacles.cappedBrood(day("06-25"), caged, TEMPERATE)).isFalse();
    assertThat(Obstacles.cappedBrood(day("07-04"), caged, TEMPERATE)).isFalse();
    assertThat(Obstacles.cappedBrood(day("07-05"), caged, TEMPERATE)).isTrue();
    Split late = new Split("second", day("06-20"), 0, 1, 0);
    Split early = new Split("first", day("06-01"), 0, 1, 0);
    for (Plan away : List.of(plan("away", early, late), plan("away", late, early))) {
      assertThat(Obstacles.cappedBrood(day("06-01"), away, TEMPERATE)).isFalse();
      assertThat(Obstacles.cappedBrood(day("05-31"), away, TEMPERATE)).isTrue();
      assertThat(Obstacles.cappedBrood(day("06-09"), away, TEMPERATE)).isFalse();
      assertThat(Obstacles.cappedBrood(day("06-10"), away, TEMPERATE)).isTrue();
      assertThat(Obstacles.cappedBrood(day("06-28"), away, TEMPERATE)).isFalse();
      assertThat(Obstacles.cappedBrood(day("06-29"), away, TEMPERATE)).isTrue();
    }
  }

  @Test
  void obstaclesAreClashesAndBrood() {
    ColonyCase c = colony("08-02", SPRING);
    ControlTemplate dribble = Catalog.control("oxalic-dribble");
    assertThat(Obstacles.of(dribble, day("08-20"), c))
        .contains(
            new Obstacle(
                Obstacle.Kind.BROOD,
                dribble.title()
                    + " on 2025-08-20: there is capped brood then, which it does not reach"));
    assertThat(Obstacles.of(dribble, BROODLESS, c)).isEmpty();
    Control away = new Split("all brood away", day("08-11"), 0, 1, 0);
    assertThat(Obstacles.of(dribble, day("08-19"), c, List.of(away))).isEmpty();
    assertThat(Obstacles.of(Catalog.control("thymol"), day("08-20"), c)).isEmpty();
    assertThat(Obstacles.of(Catalog.control("formic-strips"), day("08-20"), c)).isEmpty();
    assertThat(Obstacles.of(Catalog.control("split"), day("08-03"), c)).isEmpty();
    ColonyCase caged =
        colony(
            TEMPERATE, day("08-02"), SPRING, new QueenCaging("cage", day("08-01"), day("08-25")));
    Optional<Obstacle> clash = Obstacles.of(Catalog.control("split"), day("08-03"), caged);
    assertThat(clash.map(Obstacle::kind)).contains(Obstacle.Kind.CLASH);
    assertThat(clash.map(Obstacle::words).orElse("")).contains("overlap");
    assertThat(Obstacles.of(Catalog.control("thymol"), day("07-10"), c).map(Obstacle::kind))
        .as("what stands against it in the calendar comes first")
        .isPresent()
        .isNotEqualTo(Optional.of(Obstacle.Kind.BROOD));
    assertThat(Obstacles.needsNoBrood(dribble)).isTrue();
    assertThat(Obstacles.needsNoBrood(Catalog.control("thymol"))).isFalse();
    assertThat(Obstacles.needsNoBrood(Catalog.control("formic-strips"))).isFalse();
    assertThat(Obstacles.needsNoBrood(Catalog.control("queen-caging"))).isFalse();
  }

  @Test
  void controlsKeepTheirCautionsUnderAnyName() {
    ControlTemplate thymol = Catalog.control("thymol");
    ControlTemplate split = Catalog.control("split");
    assertThat(ControlCautions.of(thymol.at(day("08-01")).named("my gel")))
        .isEqualTo(thymol.cautions())
        .isNotEmpty();
    assertThat(ControlCautions.of(split.at(day("06-01")))).isEqualTo(split.cautions());
    assertThat(ControlCautions.of(split.at(day("06-01")).named("my split"))).isEmpty();
    Miticide own = new Miticide("own", 9, 0.2, 0, 0, 0, 0, 40, Miticide.SupersRule.OFF);
    MiticideCourse course = MiticideCourse.once("own", own, day("08-01"));
    assertThat(ControlCautions.of(course))
        .containsExactly(
            "The registered label and local law decide whether, when and how this may be used.");
    assertThat(ControlCautions.visits(course))
        .extracting(HiveVisit::day)
        .containsExactly(day("08-01"), day("08-10"));
    assertThat(ControlCautions.visits(control("oxalic-dribble", day("08-01"))))
        .extracting(HiveVisit::day)
        .as("nothing is taken out")
        .containsExactly(day("08-01"));
    Plan acid = plan("acid", thymol.at(day("08-01")), control("oxalic-dribble", BROODLESS));
    assertThat(ControlCautions.acid(List.of(Plan.waiting("wait"), acid))).isTrue();
    assertThat(
            ControlCautions.acid(
                List.of(plan("gel", thymol.at(day("08-01"))), plan("own", course))))
        .isFalse();
    assertThat(Caution.answer(false)).isEqualTo(Caution.ANSWER);
    assertThat(Caution.answer(true)).isEqualTo(Caution.ANSWER + " " + Caution.ACID);
  }

  /** Shares of the library's files; each miticide once, in the order of the plan. */
  @Test
  void efficaciesAreThoseOfTheTrials() {
    Miticide own = new Miticide("own", 9, 0.2, 0, 0, 0, 0, 40, Miticide.SupersRule.OFF);
    Plan plan =
        plan(
            "p",
            control("amitraz-strips", day("08-01")),
            MiticideCourse.once("own", own, day("08-05")),
            control("oxalic-dribble-caged", day("10-01")),
            control("amitraz-strips", day("10-20")));
    List<CourseEfficacy> usual = CourseEfficacy.of(plan, Priors.defaults());
    assertThat(usual)
        .extracting(CourseEfficacy::control)
        .containsExactly("amitraz-strips", "oxalic-dribble-caged");
    assertThat(usual).extracting(CourseEfficacy::resisted).containsExactly(false, false);
    assertThat(usual.get(0).share()).isEqualTo(0.873);
    assertThat(usual.get(1).share()).isEqualTo(0.896);
    for (CourseEfficacy e : usual) {
      ControlTemplate.Efficacy file = Catalog.control(e.control()).efficacy().orElseThrow();
      assertThat(e.low()).isEqualTo(file.share(-1.6449)).isLessThan(e.share());
      assertThat(e.high()).isEqualTo(file.share(1.6449)).isGreaterThan(e.share());
    }
    // two trials of amitraz without known resistance count, and one is known to have met it
    assertThat(usual).extracting(CourseEfficacy::trials).containsExactly(2, 1);
    Priors resisted = ResistantMites.believed("resistant", List.of("amitraz"), Priors.defaults());
    CourseEfficacy less = CourseEfficacy.of(plan, resisted).get(0);
    assertThat(less.resisted()).isTrue();
    assertThat(less.trials()).isEqualTo(1);
    assertThat(less.share()).isEqualTo(0.418);
    assertThat(less.low()).isLessThan(0.2);
    assertThat(less.high()).isGreaterThan(0.8);
    assertThat(CourseEfficacy.of(plan, resisted).get(1)).isEqualTo(usual.get(1));
  }

  @Test
  void treatmentsBeginOnDistinctDaysInOrder() {
    assertThat(
            TreatmentDays.of(
                List.of(control("thymol", day("08-01")), control("split", day("06-01"))),
                List.of(day("07-01"), day("08-01"), day("05-01"))))
        .containsExactly(day("05-01"), day("06-01"), day("07-01"), day("08-01"));
  }
}
