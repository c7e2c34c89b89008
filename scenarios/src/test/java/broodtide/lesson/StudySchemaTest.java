package broodtide.lesson;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import broodtide.catalog.Catalog;
import broodtide.catalog.ClimateFile;
import broodtide.forms.BadInput;
import broodtide.forms.Source;
import broodtide.study.SchemaCheck;
import broodtide.study.Studies;
import broodtide.study.StudyFile;
import broodtide.study.Texts;
import com.fasterxml.jackson.databind.JsonNode;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Reader and schema held against each other by an independent validator. */
@Tag("outside")
class StudySchemaTest {
  private static final SchemaCheck STUDY = new SchemaCheck(StudySchema.study());
  private static final SchemaCheck CLIMATE = new SchemaCheck(StudySchema.climate());
  private static final SchemaCheck CONTROL = new SchemaCheck(StudySchema.control());
  private static final SchemaCheck LESSON = new SchemaCheck(StudySchema.lesson());

  static List<String> schemas() {
    return List.of(
        StudySchema.study(), StudySchema.climate(), StudySchema.control(), StudySchema.lesson());
  }

  @ParameterizedTest
  @MethodSource("schemas")
  void schemasAreThemselvesValid(String text) {
    assertThat(
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(SchemaLocation.of("https://json-schema.org/draft/2020-12/schema"))
                .validate(SchemaCheck.parse(text)))
        .isEmpty();
  }

  @ParameterizedTest
  @MethodSource("broodtide.lesson.LibraryTest#studies")
  void shippedStudiesAreValid(String name) {
    String text = Studies.SHELF.find(name).text();
    assertThat(STUDY.errors(SchemaCheck.parse(text))).isEmpty();
    assertThat(STUDY.errors(SchemaCheck.parse(StudyFile.write(Studies.named(name))))).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("broodtide.lesson.LibraryTest#climates")
  void shippedClimatesAreValid(String name) {
    String text = Catalog.CLIMATES.find(name).text();
    assertThat(CLIMATE.errors(SchemaCheck.parse(text))).isEmpty();
    assertThat(STUDY.errors(SchemaCheck.parse(Texts.study("\"temperate\"", text)))).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("broodtide.lesson.LibraryTest#controls")
  void shippedControlsAreValid(String name) {
    String text = Catalog.CONTROLS.find(name).text();
    assertThat(CONTROL.errors(SchemaCheck.parse(text))).isEmpty();
  }

  @ParameterizedTest
  @MethodSource("broodtide.lesson.LibraryTest#lessons")
  void shippedLessonsAreValid(String name) {
    String text = Lessons.SHELF.find(name).text();
    assertThat(LESSON.errors(SchemaCheck.parse(text))).isEmpty();
    assertThat(LESSON.errors(SchemaCheck.parse(LessonFile.write(Lessons.named(name))))).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"title\": \"t\", | ",
        "\"title\": \"t\" | \"titel\": \"t\"",
        "\"title\": \"t\" | \"title\": \"\"",
        "\"title\": \"t\" | \"title\": null",
        "\"temperate\" | 5",
        "\"temperate\" | {\"name\": \"x\"}",
        "2027-03-01 | 2027-02-30",
        "2027-03-01 | 1.3.2027",
        "2027-03-01 | 1027-03-01",
        "\"infestation\": 1 | \"infestation\": -1",
        "\"infestation\": 1 | \"infestation\": \"1\"",
        "\"infestation\": 1 | \"infestation\": 1, \"strength\": 4",
        "\"infestation\": 1 | \"infestation\": 1, \"hygiene\": true",
        "{\"name\": \"wait\"}, | \"wait\",",
        "{\"name\": \"wait\"} | {\"name\": \"wait\", \"controls\": {}}",
        "queen-caging | queen-cage",
        "\"kind\": \"queen-caging\", | ",
        "\"2027-07-25\" | \"2027-07-25\", \"start\": \"2027-07-01\"",
        "\"plans\": | \"surroundings\": \"dens\", \"plans\":",
        "\"plans\": | \"immigration\": [{\"from\": \"07-32\", \"to\": \"08-01\", \"perDay\": 1}],"
            + " \"plans\":",
        "\"plans\": | \"immigration\": [], \"plans\":",
        "\"plans\": | \"resistant\": [\"amitras\"], \"plans\":",
        "\"plans\": | \"highs\": [{\"date\": \"2027-08-01\"}], \"plans\":",
        "\"plans\": | \"highs\": [{\"date\": \"2027-08-01\", \"high\": 88}], \"plans\":",
        "\"plans\": | \"overrides\": {\"mites\": {\"clumping\": 0}}, \"plans\":",
        "\"plans\": | \"overrides\": {\"mites\": {\"clumpin\": 3}}, \"plans\":",
      })
  void bothRefuse(String from, String to) {
    String text = Texts.study(from, to == null ? "" : to);
    assertThat(STUDY.errors(SchemaCheck.parse(text))).isNotEmpty();
    assertThat(Texts.faults(text)).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"02-29", "02-30", "06-31", "13-01", "00-10", "1-1", "01-00", "x"})
  void bothRefuseKnotsThatNoYearHas(String day) {
    String text = ClimateFile.write(Catalog.climate("boreal")).replace("06-15", day);
    assertThat(CLIMATE.errors(SchemaCheck.parse(text))).isNotEmpty();
    assertThat(catchThrowable(() -> ClimateFile.read(Source.of("c", text))))
        .isInstanceOf(BadInput.class);
  }

  /** Everything a file may hold is told to whoever writes one. */
  @Test
  void everyFieldIsDescribed() {
    for (String text : schemas()) {
      assertThat(undescribed(SchemaCheck.parse(text), "$")).isEmpty();
    }
    JsonNode colony = SchemaCheck.parse(StudySchema.study()).at("/$defs/colony/properties");
    assertThat(colony.at("/strength/default").asDouble()).isEqualTo(1);
    assertThat(colony.at("/strength/minimum").asDouble()).isEqualTo(0.05);
    assertThat(colony.at("/infestation/description").asText())
        .endsWith("(mites per 100 adult bees)");
  }

  private static List<String> undescribed(JsonNode node, String path) {
    List<String> found = new ArrayList<>();
    node.path("properties")
        .properties()
        .forEach(
            p -> {
              if (p.getValue().path("description").asText().length() < 5) {
                found.add(path + "." + p.getKey());
              }
            });
    node.properties()
        .forEach(p -> found.addAll(undescribed(p.getValue(), path + "." + p.getKey())));
    return found;
  }
}
