package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.season.Climate;
import broodtide.season.YearSpan;
import broodtide.wash.Stage;
import broodtide.wash.ThresholdSet;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
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
}
