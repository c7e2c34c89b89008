package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.engine.ColonyModel;
import broodtide.measure.Tag;
import broodtide.season.Climate;
import broodtide.season.YearSpan;
import broodtide.wash.Stage;
import broodtide.wash.Threshold;
import broodtide.wash.ThresholdSet;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class YearStagesTest {
  private static final ThresholdSet USUAL = Catalog.threshold("kulhanek-2021");

  @ParameterizedTest
  @CsvSource({
    "temperate,2026-03-01,BUILD_UP",
    "temperate,2026-06-01,HONEY_FLOW",
    "temperate,2026-08-05,AFTER_HARVEST",
    "temperate,2026-09-15,WINTER_BEES",
    "temperate,2026-10-20,WINTER_BEES",
    "temperate,2026-12-15,BROODLESS",
    "cool-maritime,2026-08-15,HONEY_FLOW",
    "cool-maritime,2026-08-25,WINTER_BEES",
    "subtropical,2026-02-01,BUILD_UP",
    "subtropical,2026-08-01,AFTER_HARVEST",
    "subtropical,2026-11-01,WINTER_BEES"
  })
  void stagesFollowThePlace(String climate, LocalDate day, Stage stage) {
    assertThat(new YearStages(Catalog.climate(climate)).on(day)).isEqualTo(stage);
  }

  /** Winter bees are raised to 5 October in the temperate climate. */
  @ParameterizedTest
  @CsvSource({
    "2026-07-01, 2026-10-05, false",
    "2026-09-14, 2026-10-05, false",
    "2026-09-21, 2026-10-05, false",
    "2026-09-22, 2027-10-05, true",
    "2026-10-20, 2027-10-05, true",
    "2026-12-15, 2027-10-05, true",
    "2027-04-01, 2027-10-05, false"
  })
  void oneWinterIsJudged(LocalDate now, LocalDate raised, boolean already) {
    YearStages stages = new YearStages(Catalog.climate("temperate"));
    assertThat(stages.winterBeesRaised(now)).isEqualTo(raised);
    assertThat(stages.raisedAlready(now)).isEqualTo(already);
  }

  @Test
  void seasonsMayLastAllYear() {
    Climate usual = Catalog.climate("subtropical");
    YearSpan always = new YearSpan(MonthDay.of(1, 1), MonthDay.of(12, 31));
    YearSpan alwaysToo = new YearSpan(MonthDay.of(6, 26), MonthDay.of(6, 25));
    LocalDate day = LocalDate.of(2026, 5, 1);
    for (YearSpan span : List.of(always, alwaysToo)) {
      YearStages stages = new YearStages(usual.with(span, span));
      assertThat(stages.afterHarvest(day)).isAfter(day.plusDays(360));
      assertThat(stages.endOfWinterBees(day)).isAfter(day.plusDays(360));
    }
  }

  @Test
  void southOfTheEquatorTheSameSeasonIsHalfAYearLater() {
    YearStages north = new YearStages(Catalog.climate("temperate"));
    YearStages south = new YearStages(Catalog.climate("temperate").inSouth());
    for (int month = 1; month <= 12; month++) {
      LocalDate day = LocalDate.of(2026, month, 12);
      assertThat(south.on(day.plusMonths(6))).as("%s", day).isEqualTo(north.on(day));
    }
  }

  @Test
  void theUsualSetHasAThresholdOnEveryDayOfEveryClimate() {
    for (String name : Catalog.CLIMATES.names()) {
      YearStages stages = new YearStages(Catalog.climate(name));
      for (int i = 0; i < 366; i++) {
        assertThat(stages.thresholdOn(USUAL, LocalDate.of(2028, 1, 1).plusDays(i)))
            .as("%s, day %d", name, i)
            .contains(3.0);
      }
    }
  }

  @Test
  void thereIsNoThresholdOnDaysThatTheSourceDoesNotSpeakOf() {
    ThresholdSet set = Catalog.threshold("strange-sheppard-2001");
    YearStages stages = new YearStages(Catalog.climate("temperate"));
    assertThat(stages.thresholdOn(set, LocalDate.of(2026, 10, 31))).contains(1.0);
    assertThat(stages.thresholdOn(set, LocalDate.of(2026, 11, 1))).isEmpty();
    assertThat(stages.thresholdOn(set, LocalDate.of(2026, 6, 15))).isEmpty();
    YearStages south = new YearStages(Catalog.climate("temperate").inSouth());
    assertThat(south.thresholdOn(set, LocalDate.of(2026, 10, 15))).contains(1.0);
    assertThat(south.thresholdOn(set, LocalDate.of(2026, 8, 15))).isEmpty();
  }

  @Test
  void broodlessDaysComeThreeWeeksAfterTheLastEgg() {
    YearStages stages = new YearStages(Catalog.climate("temperate"));
    LocalDate first = stages.broodless(LocalDate.of(2026, 10, 1)).orElseThrow();
    LocalDate lastEgg = first.minusDays(25);
    assertThat(Catalog.climate("temperate").laying().at(lastEgg)).isPositive();
    assertThat(Catalog.climate("temperate").laying().at(lastEgg.plusDays(1))).isZero();
    assertThat(new YearStages(Catalog.climate("subtropical")).broodless(LocalDate.of(2026, 10, 1)))
        .isEmpty();
  }

  /** Where no winter kills colonies, a look ahead ends with October, in the south with April. */
  @Test
  void whereNothingKillsInAutumnTheLookAheadEndsBefore() {
    LocalDate december = LocalDate.of(2026, 12, 20);
    LocalDate july = LocalDate.of(2026, 7, 1);
    YearStages subtropical = new YearStages(Catalog.climate("subtropical"));
    assertThat(subtropical.believedUntil(july, december)).isEqualTo(LocalDate.of(2026, 10, 31));
    assertThat(subtropical.believedUntil(july, july.plusDays(9))).isEqualTo(july.plusDays(9));
    assertThat(subtropical.believedUntil(LocalDate.of(2026, 11, 9), december)).isEqualTo(december);
    YearStages south = new YearStages(Catalog.climate("subtropical").inSouth());
    assertThat(south.believedUntil(july, LocalDate.of(2027, 6, 1)))
        .isEqualTo(LocalDate.of(2027, 4, 30));
    assertThat(new YearStages(Catalog.climate("boreal")).believedUntil(july, december))
        .isEqualTo(december);
  }

  /** In the temperate climate supers stand from 20 April to 31 July, winter bees follow. */
  private static final YearStages STAGES = new YearStages(Catalog.climate("temperate"));

  private static ThresholdSet byStage() {
    return new ThresholdSet(
        "invented-2000",
        "invented",
        "nowhere",
        "invented",
        Tag.CHOICE,
        Optional.empty(),
        100,
        List.of(
            new Threshold(Stage.HONEY_FLOW, null, 2, null, 5.0, null),
            new Threshold(Stage.AFTER_HARVEST, null, 3, null, null, null),
            new Threshold(Stage.WINTER_BEES, null, 3, null, 8.0, null)));
  }

  private static LocalDate day(String monthAndDay) {
    return LocalDate.parse("2026-" + monthAndDay);
  }

  @Test
  void thresholdsAreStepsOfDaysThatFollowOneAnother() {
    assertThat(STAGES.thresholdSteps(byStage(), day("07-01"), day("09-01")))
        .containsExactly(
            new YearStages.Step(day("07-01"), day("07-31"), 2),
            new YearStages.Step(day("08-01"), day("09-01"), 3));
    ThresholdSet set = Catalog.threshold("strange-sheppard-2001");
    assertThat(STAGES.thresholdSteps(set, day("04-30"), day("10-31")))
        .containsExactly(
            new YearStages.Step(day("04-30"), day("04-30"), 1),
            new YearStages.Step(day("08-01"), day("08-31"), 14 * 100 / 300.0),
            new YearStages.Step(day("10-01"), day("10-31"), 1));
    assertThat(STAGES.thresholdSteps(set, day("05-01"), day("07-31"))).isEmpty();
    // the same figure with days between is two steps
    assertThat(STAGES.thresholdSteps(set, day("10-31"), LocalDate.of(2027, 4, 1)))
        .containsExactly(
            new YearStages.Step(day("10-31"), day("10-31"), 1),
            new YearStages.Step(LocalDate.of(2027, 4, 1), LocalDate.of(2027, 4, 1), 1));
    assertThat(STAGES.thresholdSteps(set, day("08-02"), day("08-01"))).isEmpty();
    assertThat(STAGES.fallOn(byStage(), day("07-31"))).contains(5.0);
    assertThat(STAGES.fallOn(byStage(), day("08-01"))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "04-01, 08-01",
    "04-20, 08-01",
    "07-31, 08-01",
    "08-01, 08-01",
    "08-05, 08-05",
    "10-20, 10-20",
    "12-15, 12-15"
  })
  void harvestEndsWithTheSupersThatAreComingOrOn(String from, String after) {
    assertThat(STAGES.afterHarvest(day(from))).isEqualTo(day(after));
  }

  /** The last egg falls on 24 October; 24 days later the last drone has emerged. */
  @Test
  void broodlessDaysGoOnUntilTheFirstEgg() {
    assertThat(STAGES.broodless(day("06-01"))).contains(day("11-18"));
    assertThat(STAGES.broodless(day("11-17"))).contains(day("11-18"));
    assertThat(STAGES.broodless(day("12-24"))).contains(day("12-24"));
    assertThat(STAGES.broodless(day("01-10"))).contains(day("01-10"));
    assertThat(STAGES.broodless(day("01-11"))).contains(day("11-18"));
  }

  private static void are(List<LocalDate[]> stretches, String... days) {
    assertThat(stretches.stream().map(s -> s[0] + " " + s[1])).containsExactly(days);
  }

  @Test
  void stretchesEndWithTheirSeasonOrTheDaysAskedFor() {
    are(STAGES.stretches(Stage.HONEY_FLOW, day("01-01"), day("12-31")), "2026-04-20 2026-07-31");
    are(
        STAGES.stretches(Stage.BROODLESS, day("01-01"), day("12-31")),
        "2026-01-01 2026-01-10",
        "2026-10-25 2026-12-31");
    are(
        STAGES.supers(day("07-31"), LocalDate.of(2027, 4, 20)),
        "2026-07-31 2026-07-31",
        "2027-04-20 2027-04-20");
    are(STAGES.supers(day("08-01"), day("12-31")));
    are(STAGES.winterBees(day("08-20"), day("12-31")), "2026-08-20 2026-10-05");
    are(STAGES.winterBees(day("01-01"), day("08-15")), "2026-08-15 2026-08-15");
    are(STAGES.winterBees(day("01-01"), day("08-14")));
  }

  /**
   * Laying is least, to half a hundredth of its peak of 1,700 eggs, from 24 October to 12 January.
   */
  @ParameterizedTest
  @CsvSource({
    "2026-08-10, false, AFTER_HARVEST",
    "2026-08-14, false, AFTER_HARVEST",
    "2026-08-15, false, WINTER_BEES",
    "2026-10-05, false, WINTER_BEES",
    "2026-10-06, true, WINTER_BEES",
    "2026-10-24, true, WINTER_BEES",
    "2026-10-25, true, BROODLESS",
    "2027-01-10, true, BROODLESS",
    "2027-01-12, true, WINTER_BEES",
    "2027-01-13, false, BUILD_UP",
    "2027-04-19, false, BUILD_UP"
  })
  void coloniesAreClosedUpUntilLayingBegins(LocalDate day, boolean closed, Stage stage) {
    assertThat(STAGES.on(day)).isEqualTo(stage);
    assertThat(STAGES.closedUp(day)).isEqualTo(closed);
  }

  /** Once winter bees are raised, their winter is judged and not the one after. */
  @ParameterizedTest
  @CsvSource({"2026-07-01, 2027", "2026-09-21, 2027", "2026-12-15, 2027", "2027-02-01, 2028"})
  void theLowIsThatOfTheWinterThatIsJudged(LocalDate now, int year) {
    ColonyModel model = ColonyModel.in(Catalog.climate("temperate"));
    assertThat(STAGES.springLow(model, now).day().getYear()).isEqualTo(year);
    assertThat(Horizon.spring(STAGES, now)).isEqualTo(STAGES.springLow(model, now).day());
    assertThat(Horizon.winterBees(STAGES, now)).isEqualTo(STAGES.winterBeesRaised(now));
    assertThat(Horizon.on(now.plusDays(3)).of(STAGES, now)).isEqualTo(now.plusDays(3));
  }
}
