package broodtide.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.catalog.Catalog;
import broodtide.catalog.ClimateFile;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.ControlTemplateFile;
import broodtide.catalog.Shelf;
import broodtide.catalog.ThresholdFile;
import broodtide.forms.BadInput;
import broodtide.forms.Source;
import broodtide.season.Climate;
import broodtide.study.Studies;
import broodtide.study.Study;
import broodtide.study.StudyFile;
import broodtide.study.Texts;
import broodtide.study.WashFile;
import broodtide.wash.ThresholdSet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LibraryTest {
  static List<Shelf<?>> shelves() {
    return List.of(
        Catalog.CLIMATES, Catalog.CONTROLS, Catalog.THRESHOLDS, Studies.SHELF, Lessons.SHELF);
  }

  static List<String> climates() {
    return Catalog.CLIMATES.names();
  }

  static List<String> thresholds() {
    return Catalog.THRESHOLDS.names();
  }

  static List<String> controls() {
    return Catalog.CONTROLS.names();
  }

  static List<String> studies() {
    return Studies.SHELF.names();
  }

  static List<String> lessons() {
    return Lessons.SHELF.names();
  }

  @ParameterizedTest
  @MethodSource("shelves")
  void indexListsWhatTheFolderHolds(Shelf<?> shelf) throws IOException {
    try (Stream<Path> files = Files.list(Path.of("library", shelf.folder()))) {
      assertThat(shelf.files())
          .as("index.txt lists every other file of its folder")
          .containsExactlyInAnyOrderElementsOf(
              files
                  .map(f -> f.getFileName().toString())
                  .filter(f -> !f.equals("index.txt"))
                  .toList());
    }
    assertThat(shelf.names()).isNotEmpty().isSorted();
  }

  @ParameterizedTest
  @MethodSource("thresholds")
  void thresholdsReadAndAreWrittenAsTheyStand(String name) {
    ThresholdSet set = Catalog.threshold(name);
    assertThat(set.name()).isEqualTo(name);
    String written = ThresholdFile.write(set);
    assertThat(ThresholdFile.read(Source.of(name, written))).isEqualTo(set);
  }

  @ParameterizedTest
  @MethodSource("climates")
  void climatesReadAndAreWrittenAsTheyStand(String name) throws IOException {
    Climate climate = Catalog.climate(name);
    assertThat(climate.name()).isEqualTo(name);
    assertThat(climate.sources().toString()).doesNotContain("\"x\"").contains("choice");
    assertThat(ClimateFile.write(climate))
        .isEqualTo(Files.readString(Path.of("library", "climates", name + ".json")));
  }

  @ParameterizedTest
  @MethodSource("controls")
  void controlsReadAndCanBePlaced(String name) {
    ControlTemplate template = Catalog.control(name);
    LocalDate day = LocalDate.of(2027, 8, 1);
    assertThat(template.name()).isEqualTo(name);
    assertThat(template.at(day).from()).isEqualTo(day);
    assertThat(template.at(day).name()).isEqualTo(template.title());
    template.efficacy().ifPresent(e -> assertThat(climates()).contains(e.setting().climate()));
    Source written = Source.of("again", ControlTemplateFile.write(template));
    assertThat(ControlTemplateFile.read(written)).isEqualTo(template);
  }

  @ParameterizedTest
  @MethodSource("studies")
  void studiesReadAndTheirScenariosAreReady(String name) throws IOException {
    Study study = Studies.named(name);
    assertThat(study.scenarios()).hasSameSizeAs(study.plans()).hasSizeGreaterThan(1);
    if (study.washes().isPresent()) {
      Source washes = study.washes().get().value();
      WashFile file = WashFile.read(washes.open(), washes.name(), study.until());
      assertThat(file.byColony()).containsKey(study.colony().name());
    } else {
      assertThat(study.member().infestation()).isPositive();
    }
  }

  @ParameterizedTest
  @MethodSource("lessons")
  void lessonsReadAndCanBePlayed(String name) {
    Lesson lesson = Lessons.named(name);
    assertThat(lesson.name()).isEqualTo(name);
    assertThat(lesson.lines())
        .isNotEmpty()
        .allSatisfy(line -> assertThat(line.setting().member().infestation()).isPositive());
    String written = LessonFile.write(lesson);
    assertThat(LessonFile.write(LessonFile.read(Source.of("again", written)))).isEqualTo(written);
  }

  @Test
  void lessonsAreNumberedInTheirOrder() {
    List<Lesson> lessons = Lessons.all();
    assertThat(lessons).hasSizeGreaterThanOrEqualTo(6);
    for (int i = 0; i < lessons.size(); i++) {
      assertThat(lessons.get(i).number()).isEqualTo(i + 1);
    }
  }

  @Test
  void unknownNamesListTheKnownOnes() {
    assertThatThrownBy(() -> Catalog.climate("cool-martime"))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("known are boreal, cold-continental, cool-maritime")
        .hasMessageEndingWith("did you mean \"cool-maritime\"?");
    assertThatThrownBy(() -> Studies.named("index"))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("larkmeadow");
    assertThatThrownBy(() -> Catalog.control("../studies/larkmeadow"))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("there is no such file");
    assertThatThrownBy(() -> Catalog.control("a\0/b")).isInstanceOf(BadInput.class);
    assertThatThrownBy(() -> Catalog.control("a\0")).isInstanceOf(BadInput.class);
  }

  @Test
  void pathsLeadToOwnFiles(@TempDir Path dir) throws IOException {
    Path file = dir.resolve("mine.json");
    String text = ClimateFile.write(Catalog.climate("boreal")).replace("boreal", "mine");
    Files.writeString(file, text);
    assertThat(Catalog.climate(file.toString()).name()).isEqualTo("mine");
    Path study = dir.resolve("s.json");
    Files.writeString(study, Texts.study("temperate", "mine.json"));
    assertThat(StudyFile.read(study).climate().name()).isEqualTo("mine");
  }
}
