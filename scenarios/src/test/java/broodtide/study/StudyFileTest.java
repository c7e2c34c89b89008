package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.assessment.StudyPriors;
import broodtide.catalog.Assumptions;
import broodtide.catalog.Catalog;
import broodtide.catalog.ClimateFile;
import broodtide.catalog.Surroundings;
import broodtide.control.DroneCombRemoval;
import broodtide.control.MiticideCourse;
import broodtide.engine.DailyEngine;
import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;
import broodtide.mite.Immigration;
import broodtide.season.DailyHighs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class StudyFileTest {
  @Test
  void leftOutFieldsTakeTheirDefaults() {
    Study study = Texts.read(Texts.STUDY);
    assertThat(study.southern()).isFalse();
    assertThat(study.surroundings()).isEqualTo(Surroundings.ISOLATED);
    assertThat(study.thresholds().written()).isEqualTo("kulhanek-2021");
    assertThat(study.given()).isEmpty();
    assertThat(study.model().immigration()).isEqualTo(Immigration.NONE);
    assertThat(study.member().infestation()).isEqualTo(1);
    assertThat(study.member().startSize()).isEqualTo(1);
    assertThat(study.scenarios()).hasSize(2);
    assertThat(study.scenarios().get(0).days()).isEqualTo(306);
  }

  @ParameterizedTest
  @MethodSource("broodtide.lesson.LibraryTest#studies")
  void whatIsWrittenReadsTheSame(String name, @TempDir Path dir) throws IOException {
    Path folder = Path.of("library", "studies");
    Study study = StudyFile.read(folder.resolve(name + ".json"));
    Path copy = dir.resolve("copy.json");
    Files.writeString(copy, StudyFile.write(study));
    if (study.washes().isPresent()) {
      String washes = study.washes().get().written();
      Files.copy(folder.resolve(washes), dir.resolve(washes));
    }
    Study again = StudyFile.read(copy);
    assertThat(again).usingRecursiveComparison().ignoringFields("washes.value").isEqualTo(study);
    assertThat(StudyFile.write(again)).isEqualTo(Files.readString(copy));
  }

  @Test
  void theYardIsKept() {
    Study study =
        Texts.read(Texts.study("\"infestation\"", "\"yard\": \"Ridge\", \"infestation\""));
    assertThat(study.colony().yard()).isEqualTo("Ridge");
    assertThat(StudyFile.write(study)).contains("\"yard\": \"Ridge\"");
    assertThat(Texts.read(Texts.STUDY).colony().yard()).isEmpty();
    assertThat(StudyFile.write(Texts.read(Texts.STUDY))).doesNotContain("yard");
  }

  @Test
  void ownClimateIsWrittenOutInFull() {
    String own = ClimateFile.write(Catalog.climate("temperate")).replace("25.5", "26.5");
    Study study = Texts.read(Texts.study("\"temperate\"", own));
    assertThat(study.climate().warmth().peak()).isEqualTo(26.5);
    assertThat(StudyFile.write(study)).contains("\"07-15\": 26.5");
  }

  @ParameterizedTest
  @CsvSource({"\"adults\": 9000, 9000", "\"framesOfBees\": 5, 11000"})
  void sizeOfTheColonyIsMet(String given, double adults) {
    Study study = Texts.read(Texts.study("\"infestation\"", given + ", \"infestation\""));
    Trajectory run = DailyEngine.run(study.scenarios().get(0), study.member());
    assertThat(run.at(Quantity.ADULTS, study.start())).isCloseTo(adults, within(0.01));
    assertThat(run.at(Quantity.INFESTATION, study.start())).isCloseTo(1, within(1e-9));
  }

  @Test
  void southTurnsTheClimateAndTheWordsButNotTheFigures() {
    String south = Texts.study("\"plans\":", "\"hemisphere\": \"south\", \"plans\":");
    String word = south.replace("\"plans\":", "\"surroundings\": \"dense\", \"plans\":");
    String figure =
        south.replace(
            "\"plans\":",
            "\"immigration\": [{\"from\": \"07-01\", \"to\": \"08-01\", \"perDay\": 2}],"
                + " \"plans\":");
    LocalDate january = LocalDate.of(2027, 1, 15);
    LocalDate july = LocalDate.of(2027, 7, 15);
    assertThat(Texts.read(south).model().climate().warmth().at(january)).isGreaterThan(25);
    assertThat(Texts.read(word).model().immigration().on(january)).isEqualTo(5.22);
    assertThat(Texts.read(word).model().immigration().on(july)).isZero();
    assertThat(Texts.read(figure).model().immigration().on(july)).isEqualTo(2);
    assertThat(Texts.read(figure).model().immigration().on(january)).isZero();
  }

  /**
   * Sparse 0.7 to 2.3 and dense 2.5 to 10.9 mites a day from July to November, Frey & Rosenkranz
   * 2014; mites arriving from June on, Greatti et al. 1992.
   */
  @Tag("outside")
  @Test
  void arrivalsLieInTheMiddleOfWhatWasCounted() {
    Assumptions usual = Assumptions.usual();
    assertThat(usual.sparseArrivals()).isCloseTo(Math.sqrt(0.7 * 2.3), within(0.005));
    assertThat(usual.denseArrivals()).isCloseTo(Math.sqrt(2.5 * 10.9), within(0.005));
    Immigration sparse = Surroundings.SPARSE.immigration(usual);
    assertThat(sparse.windows()).hasSize(2);
    assertThat(sparse.on(LocalDate.of(2026, 5, 31))).isZero();
    assertThat(sparse.on(LocalDate.of(2026, 6, 1))).isEqualTo(usual.sparseArrivals());
    assertThat(sparse.on(LocalDate.of(2026, 7, 31))).isEqualTo(usual.sparseArrivals());
    assertThat(sparse.on(LocalDate.of(2026, 8, 1))).isEqualTo(2 * usual.sparseArrivals());
    assertThat(sparse.on(LocalDate.of(2026, 11, 30))).isEqualTo(2 * usual.sparseArrivals());
    assertThat(sparse.on(LocalDate.of(2026, 12, 1))).isZero();
  }

  @Test
  void controlsOfTheLibraryTakeOtherRhythmsAndNames() {
    Study study =
        Texts.read(
            Texts.study(
                "{\"name\": \"wait\"}",
                """
                {"name": "x", "controls": [
                  {"use": "oxalic-vapour", "start": "2027-08-01", "applications": 3, "every": 5,
                   "name": "three times"},
                  {"use": "drone-comb", "start": "2027-04-20"}]}\
                """));
    assertThat(study.plans().get(0).controls())
        .satisfiesExactly(
            c -> {
              MiticideCourse course = (MiticideCourse) c;
              assertThat(course.name()).isEqualTo("three times");
              assertThat(course.applications()).isEqualTo(3);
              assertThat(course.every()).isEqualTo(5);
              assertThat(course.substance().name()).isEqualTo("oxalic-vapour");
            },
            c -> {
              DroneCombRemoval comb = (DroneCombRemoval) c;
              assertThat(comb.cuts().get(0)).isEqualTo(LocalDate.of(2027, 5, 18));
            });
  }

  @Test
  void plansShareWhatWasAlreadyDone() {
    String given =
        "\"given\": [{\"kind\": \"split\", \"on\": \"2027-05-01\", \"beesLeaving\": 0.5,"
            + " \"broodLeaving\": 0.5, \"daysWithoutLaying\": 20}], \"plans\":";
    Study study = Texts.read(Texts.study("\"plans\":", given));
    assertThat(study.plans().get(0).controls()).isEmpty();
    assertThat(study.scenarios())
        .allSatisfy(s -> assertThat(s.plan().controls().get(0).name()).isEqualTo("split"));
    assertThat(study.scenarios().get(1).plan().controls()).hasSize(2);
  }

  @Test
  void infestationLeftToWashesMustBeGiven() {
    Study study = Studies.named("larkmeadow");
    assertThatThrownBy(study::member)
        .isInstanceOf(IllegalStateException.class)
        .hasMessageContaining("leaves the infestation to its washes");
    assertThat(study.member(2.5).infestation()).isEqualTo(2.5);
  }

  @Test
  void traitsOfTheStockAreUsedOnce() {
    Study study =
        Texts.read(
            Texts.study(
                "\"infestation\": 1", "\"infestation\": 1, \"hygiene\": 0.3, \"vigour\": 2"));
    assertThat(study.model().stock().fertility() * study.member().vigour())
        .isCloseTo(2 * 0.7, within(1e-12));
  }

  /**
   * What a beekeeper knows of the weather and of resistance goes into the study, and comes back.
   */
  @Test
  void highsAndResistanceAreReadWrittenAndUsed() {
    Study study =
        Texts.read(
            Texts.study(
                "\"plans\"",
                "\"highs\": [{\"date\": \"2027-08-02\", \"high\": 31},"
                    + " {\"date\": \"2027-08-01\", \"high\": 12.5}],"
                    + " \"resistant\": [\"amitraz\"], \"plans\""));
    LocalDate cool = LocalDate.of(2027, 8, 1);
    assertThat(study.model().climate().high(cool)).isEqualTo(12.5);
    assertThat(study.model().climate().high(cool.plusDays(1))).isEqualTo(31);
    assertThat(study.model().climate().high(cool.plusDays(2)))
        .isEqualTo(study.climate().high(cool.plusDays(2)));
    assertThat(StudyPriors.of(study).efficacies()).containsOnlyKeys("amitraz-strips");
    Study back = Texts.read(StudyFile.write(study));
    assertThat(back.highs()).isEqualTo(study.highs());
    assertThat(back.resistant()).isEqualTo(study.resistant());
    assertThat(StudyFile.write(back)).isEqualTo(StudyFile.write(study));
    Study plain = Texts.read(Texts.STUDY);
    assertThat(plain.highs()).isEqualTo(DailyHighs.NONE);
    assertThat(StudyPriors.of(plain).efficacies()).isEmpty();
    assertThat(StudyFile.write(plain)).doesNotContain("highs", "resistant");
  }
}
