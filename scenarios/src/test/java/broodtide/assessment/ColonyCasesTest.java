package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.Unknown;
import broodtide.measure.OutOfRange;
import broodtide.measure.Unworkable;
import broodtide.season.YearSpan;
import broodtide.study.Studies;
import broodtide.study.Study;
import broodtide.study.WashFile;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import java.io.IOException;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ColonyCasesTest {
  private static final LocalDate TODAY = LocalDate.of(2026, 1, 1);
  private static final LocalDate MAY = LocalDate.of(2025, 5, 4);
  private static final LocalDate JULY = LocalDate.of(2025, 7, 20);
  private static final Place PLACE = place("temperate");

  /** Two hives of one apiary, the second of which was not washed since May. */
  private static final Map<String, List<Wash>> APIARY =
      Map.of(
          "North",
          List.of(Wash.of(MAY, "North", 1, 300), Wash.of(JULY, "North", 5, 300)),
          "South",
          List.of(Wash.of(MAY, "South", 2, 300)));

  private static Place place(String climate) {
    return Place.of(
        Catalog.climate(climate),
        false,
        Surroundings.SPARSE,
        Catalog.threshold(Catalog.USUAL_THRESHOLD));
  }

  private static ColonyCase of(List<ColonyCase> cases, String colony) {
    return cases.stream().filter(c -> c.colony().equals(colony)).findFirst().orElseThrow();
  }

  private static List<ColonyCase> decidedOn(LocalDate day, Map<String, List<Control>> given) {
    return ColonyCases.ofWashes(PLACE, APIARY, given, Optional.of(day), Horizon::spring);
  }

  @Test
  void aTableOfWashesGivesTheWholeCase() throws IOException {
    Map<String, List<Wash>> washes =
        ColonyCases.attached(Studies.named("larkmeadow"), TODAY)
            .map(WashFile::byColony)
            .orElseThrow();
    Place place = place("cool-maritime");
    ColonyCase c =
        ColonyCases.ofWashes(place, washes, Map.of(), Optional.empty(), Horizon::spring).get(0);
    assertThat(c.colony()).isEqualTo("Larkmeadow 2");
    assertThat(c.model()).isEqualTo(place.model());
    assertThat(c.start()).isEqualTo("2025-04-24");
    assertThat(c.now()).isEqualTo("2025-07-27");
    assertThat(c.until()).isEqualTo("2026-03-23");
    assertThat(c.washes()).extracting(Wash::mites).containsExactly(0, 1, 2, 4);
    assertThat(c.given()).isEmpty();
    assertThat(c.thresholds().name()).isEqualTo("kulhanek-2021");
    assertThat(c.priors()).isEqualTo(Priors.defaults());
  }

  @Test
  void aStudyBringsWhatItSaysOfTheColony() throws IOException {
    Study study = Studies.named("late-wash");
    ColonyCase c = ColonyCases.ofStudy(study, TODAY);
    assertThat(c.now()).isEqualTo(study.start());
    assertThat(c.until()).isEqualTo(study.until());
    assertThat(c.priors().of(Unknown.INFESTATION).median()).isEqualTo(4.7);
    assertThat(c.model().immigration()).isEqualTo(study.model().immigration());
    double stated = medianWhenRaised(c);
    assertThat(stated).as("14 mites in the one wash").isBetween(11.0, 17.0);
    assertThat(medianWhenRaised(c.with(Priors.defaults())))
        .as("without what the study says, as of any colony")
        .isLessThan(stated / 2);
  }

  private static double medianWhenRaised(ColonyCase c) {
    try (Workers workers = new Workers(2)) {
      SeasonPosterior posterior =
          c.posterior(new SeasonPosterior.SamplerSettings(512, 2, 1), workers, Progress.NONE);
      Plan wait = Plan.waiting(UsualPlans.WAIT);
      return QuantileSummary.of(
              Comparison.of(c, posterior, List.of(wait), workers, Progress.NONE)
                  .runs()
                  .get(0)
                  .infestation(c.winterBeesRaised()))
          .median();
    }
  }

  @Test
  void oneApiaryIsDecidedOnOneDay() {
    List<ColonyCase> cases =
        ColonyCases.ofWashes(PLACE, APIARY, Map.of(), Optional.empty(), Horizon::spring);
    assertThat(cases).extracting(ColonyCase::now).containsOnly(JULY.plusDays(1));
    assertThat(cases).extracting(ColonyCase::until).containsOnly(cases.get(0).until());
  }

  @Test
  void theNewestTreatmentCountsToo() {
    LocalDate august = LocalDate.of(2025, 8, 10);
    Map<String, List<Control>> given =
        Map.of(
            "South",
            List.of(Catalog.control("thymol").at(august)),
            "of no washed colony",
            List.of(Catalog.control("thymol").at(august.plusDays(40))));
    assertThat(ColonyCases.decisionDate(APIARY, given)).isEqualTo(august.plusDays(1));
  }

  @Test
  void aTreatmentBeforeTheFirstWashIsFollowedFromItsDay() {
    LocalDate april = LocalDate.of(2025, 4, 1);
    Map<String, List<Control>> given =
        Map.of("North", List.of(Catalog.control("oxalic-dribble").at(april)));
    List<ColonyCase> cases = decidedOn(JULY, given);
    assertThat(of(cases, "North").start()).isEqualTo(april);
    assertThat(of(cases, "South").start()).isEqualTo(MAY);
  }

  @Test
  void noColonyIsDecidedBeforeItsLastWash() {
    assertThatThrownBy(() -> decidedOn(JULY.minusDays(1), Map.of()))
        .isInstanceOf(OutOfRange.class)
        .hasMessage(
            "--decide-on is 2025-07-19; expected 2025-07-20 or later, the day of the last wash of"
                + " colony \"North\"; give a later day");
    assertThat(decidedOn(JULY, Map.of())).extracting(ColonyCase::now).containsOnly(JULY);
  }

  @Test
  void norBeforeATreatmentThatWasGiven() {
    LocalDate august = LocalDate.of(2025, 8, 10);
    Map<String, List<Control>> given =
        Map.of("South", List.of(Catalog.control("thymol").at(august)));
    assertThatThrownBy(() -> decidedOn(august.minusDays(1), given))
        .isInstanceOf(OutOfRange.class)
        .hasMessageStartingWith("--decide-on is 2025-08-09; expected 2025-08-10 or later")
        .hasMessageContaining("colony \"South\" was given Thymol");
  }

  @Test
  void itMayBeFarAfterTheLastWash() {
    assertThat(decidedOn(JULY.plusYears(2), Map.of()))
        .allSatisfy(c -> assertThat(c.until()).isAfter(JULY.plusYears(2)));
    assertThatThrownBy(() -> decidedOn(JULY.plusYears(11), Map.of()))
        .isInstanceOf(Unworkable.class)
        .hasMessageContaining("expected");
  }

  @Test
  void theHorizonLiesAfterTheDecisionAndNotFarOff() {
    Optional<LocalDate> now = Optional.of(JULY);
    assertThatThrownBy(() -> ColonyCases.ofWashes(PLACE, APIARY, Map.of(), now, Horizon.on(JULY)))
        .hasMessage("--until is 2025-07-20; expected a day after 2025-07-20, the day of decision");
    assertThatThrownBy(
            () ->
                ColonyCases.ofWashes(
                    PLACE, APIARY, Map.of(), now, Horizon.on(LocalDate.of(2030, 1, 1))))
        .hasMessageContaining("2028-07-20 at the latest");
  }

  @Test
  void aStudyIsDecidedOnItsOwnDayUnlessAnotherIsNamed() {
    Study study = Studies.named("late-wash");
    LocalDate day = LocalDate.of(2025, 9, 3);
    assertThat(studyDecidedOn(study, day).now()).isEqualTo(day);
    assertThatThrownBy(() -> studyDecidedOn(study, LocalDate.of(2025, 8, 1)))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("2025-08-24 or later, with which the study begins");
  }

  private static ColonyCase studyDecidedOn(Study study, LocalDate day) {
    return ColonyCases.ofStudy(
        study, Place.of(study), Map.of(), List.of(), Optional.of(day), Optional.empty());
  }

  @Test
  void aPlaceTakesTheBeekeepersOwnDates() {
    YearSpan supers = new YearSpan(MonthDay.of(5, 1), MonthDay.of(8, 1));
    Place own = PLACE.dated(Optional.of(supers), Optional.empty());
    assertThat(own.model().climate().supers()).isEqualTo(supers);
    assertThat(own.model().climate().winterBees()).isEqualTo(PLACE.model().climate().winterBees());
    assertThat(PLACE.dated(Optional.empty(), Optional.empty())).isEqualTo(PLACE);
  }

  @Test
  void theSouthIsHalfAYearLaterWithItsArrivals() {
    Place south =
        Place.of(Catalog.climate("temperate"), true, Surroundings.DENSE, PLACE.thresholds());
    LocalDate january = LocalDate.of(2026, 1, 15);
    LocalDate july = LocalDate.of(2026, 7, 15);
    assertThat(south.model().climate().southern()).isTrue();
    assertThat(south.model().immigration().on(january)).isPositive();
    assertThat(south.model().immigration().on(july)).isZero();
  }

  private static BoardCount board(LocalDate out, String colony) {
    return new BoardCount(out.minusDays(3), out, colony, 20);
  }

  @Test
  void boardsMoveTheDecisionAndStandUnderTheirColony() {
    List<ColonyCase> cases = ColonyCases.ofWashes(PLACE, APIARY);
    LocalDate out = JULY.plusDays(10);
    List<ColonyCase> with =
        ColonyCases.withBoards(cases, List.of(board(out, "South"), board(out, "Else")), false);
    assertThat(with).extracting(ColonyCase::now).containsOnly(out.plusDays(1));
    assertThat(of(with, "South").boards()).containsExactly(board(out, "South"));
    assertThat(of(with, "South").decidingOn(out.plusDays(9)).boards()).hasSize(1);
    assertThat(of(with, "North").boards()).isEmpty();
    assertThat(of(with, "North").washes()).isEqualTo(of(cases, "North").washes());
    ColonyCase early =
        of(ColonyCases.withBoards(cases, List.of(board(MAY, "South")), false), "South");
    assertThat(early.start()).isEqualTo(MAY.minusDays(3));
    assertThat(early.now()).isEqualTo(JULY.plusDays(1));
  }

  @Test
  void boardsThatSayNothingOfTheColonyAreRefused() {
    List<ColonyCase> cases = ColonyCases.ofWashes(PLACE, APIARY);
    assertThatThrownBy(
            () -> ColonyCases.withBoards(cases, List.of(board(JULY.plusDays(9), "South")), true))
        .isInstanceOf(Unworkable.class)
        .hasMessageContaining("decide on a later day");
    Control thymol = Catalog.control("thymol").usual().startingOn(MAY.plusDays(7));
    List<ColonyCase> treated = decidedOn(JULY.plusDays(1), Map.of("South", List.of(thymol)));
    assertThatThrownBy(
            () -> ColonyCases.withBoards(treated, List.of(board(MAY.plusDays(8), "South")), true))
        .isInstanceOf(Unworkable.class)
        .hasMessageContaining("speak of the treatment");
    assertThat(ColonyCases.withBoards(treated, List.of(board(MAY.plusDays(6), "South")), true))
        .hasSize(2);
  }
}
