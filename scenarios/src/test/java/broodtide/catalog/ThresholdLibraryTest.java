package broodtide.catalog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.forms.BadInput;
import broodtide.forms.Source;
import broodtide.wash.Stage;
import broodtide.wash.ThresholdSet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ThresholdLibraryTest {
  private static final String GOOD =
      """
      {
        "name": "mine", "title": "t", "region": "r", "source": "s", "tag": "choice",
        "perBees": 100,
        "thresholds": [{"stage": "build-up", "mites": 2}]
      }
      """;

  private static ThresholdSet read(String json) throws IOException {
    return ThresholdLibrary.read(Source.of("mine.json", json));
  }

  @Test
  void everyFileOfTheFolderIsListedAndReads() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("library", "thresholds"))) {
      assertThat(files.map(f -> f.getFileName().toString().replace(".json", "")))
          .containsExactlyInAnyOrderElementsOf(ThresholdLibrary.names());
    }
    for (String name : ThresholdLibrary.names()) {
      assertThat(ThresholdLibrary.shipped(name).name()).isEqualTo(name);
    }
  }

  /** The published figures: mites per 100 bees, or in a roll of 300, and the day they stand for. */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({
    "kulhanek-2021,                BROODLESS,     01-10, 3,  100", // Kulhanek et al. 2021
    "kulhanek-2021,                HONEY_FLOW,    06-10, 3,  100", // Kulhanek et al. 2021
    "gds-france,                   BUILD_UP,      04-10, 1,  100", // page 4419, spring
    "gds-france,                   AFTER_HARVEST, 08-01, 3,  100", // page 4419, before treatment
    "gds-france,                   WINTER_BEES,   09-10, 2,  100", // page 4419, after treatment
    "ages-2015,                    HONEY_FLOW,    07-20, 1,  100", // first visit
    "ages-2015,                    WINTER_BEES,   10-01, 3,  100", // second visit
    "strange-sheppard-2001,        BUILD_UP,      04-10, 3,  300", // April
    "strange-sheppard-2001,        AFTER_HARVEST, 08-10, 14, 300", // August
    "strange-sheppard-2001,        WINTER_BEES,   10-10, 3,  300", // October
    "delaplane-hood-1999,          AFTER_HARVEST, 08-10, 15, 300", // August, lower end
    "kretzschmar-maisonnasse-2022, HONEY_FLOW,    06-20, 3,  100" // start of the lavender flow
  })
  void publishedThresholds(String name, Stage stage, String day, double mites, int bees) {
    LocalDate date = LocalDate.parse("2026-" + day);
    double found = ThresholdLibrary.shipped(name).perHundred(stage, date, false).orElseThrow();
    assertThat(found * bees / 100).isCloseTo(mites, within(1e-9));
  }

  @Test
  void shippedSetsAreSeenAndCitedWithTheirYear() {
    for (String name : ThresholdLibrary.names()) {
      ThresholdSet set = ThresholdLibrary.shipped(name);
      assertThat(set.tag()).as(name).isEqualTo(broodtide.measure.Tag.SEEN);
      assertThat(set.source())
          .as(name)
          .hasSizeGreaterThan(100)
          .containsPattern("\\b[12]\\d{3}\\b|undated");
    }
    assertThat(ThresholdLibrary.usual()).isEqualTo("kulhanek-2021");
  }

  @ParameterizedTest
  @CsvSource({"3, 3", "2.5, 2.5", "9/300, 3", "300/300, 100", "0.01, 0.01"})
  void aFigureHoldsOnEveryDay(String text, double perHundred) {
    ThresholdSet set = ThresholdLibrary.find(text);
    assertThat(set.name()).isEqualTo(text);
    assertThat(set.isGiven()).isTrue();
    assertThat(set.perHundred(Stage.BROODLESS, LocalDate.of(2026, 1, 1), true).orElseThrow())
        .isCloseTo(perHundred, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "101", "301/300", "3/0", "9/99999", "0/300", "9999/9999"})
  void aFigureThatCannotBeIsRefused(String text) {
    assertThatThrownBy(() -> ThresholdLibrary.find(text))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining(text);
  }

  @Test
  void unknownNameListsTheChoice() {
    assertThatThrownBy(() -> ThresholdLibrary.shipped("nowhere"))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("\"nowhere\" is not valid; choose one of kulhanek-2021, ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"mites\": 2     | \"mites\": -2      | line 4  | thresholds[0]       | mites is -2",
        "\"mites\": 2     | \"mites\": \"2\"   | line 4  | thresholds[0].mites | a number without"
            + " quotes",
        "\"mites\": 2     | \"mites\": null    | line 4  | thresholds[0].mites | a value",
        "\"mites\": 2     | \"note\": \"x\"    | line 4  | thresholds[0].mites | add it",
        "\"mites\": 2     | \"mites\": 2, \"mite\": 3 | line 4 | thresholds[0].mite | no such"
            + " field",
        "\"mites\": 2     | \"mites\": 2, \"mites\": 3 | line 4 |     | the field stands twice",
        "\"build-up\"     | \"spring\"         | line 4  | thresholds[0].stage | one of build-up,"
            + " ho",
        "\"source\": \"s\", | \"source\": null, | line 2 | source          | give a value",
        "\"source\": \"s\", | ''               | line    | source          | add it",
        "\"perBees\": 100 | \"perBees\": 1.5   | line 3  | perBees         | a whole number",
        "\"mine\"         | \"Mine!\"          | line    |                 | lower-case letters",
        "2}]              | 2}                | line    |                 | must be closed first",
        "{\"stage\": \"build-up\", \"mites\": 2} | null | line 4 | thresholds[0]  | give a value",
        "[{\"stage\": \"build-up\", \"mites\": 2}] | null | line 4 | thresholds   | give a value",
        "\"title\": \"t\"    | \"title\": 3        | line 2  | title           | text in quotes",
        "\"title\": \"t\"    | \"title\": true     | line 2  | title           | text in quotes",
        "\"perBees\": 100 | \"perBees\": \"100\" | line 3  | perBees         | a whole number",
        "\"build-up\"     | 5                  | line 4  | thresholds[0].stage | text in quotes",
        "\"mites\": 2     | \"mites\": 2, \"upTo\": \"5\" | line 4 | thresholds[0].upTo | a number",
        "\"mites\": 2     | \"mites\": 2, \"note\": 5 | line 4 | thresholds[0].note | text in"
            + " quotes",
        "\"mites\": 2     | \"mites\": 2, \"days\": 5 | line 4 | thresholds[0].days | 08-31",
        "\"mites\": 2     | \"mites\": 2, \"days\": [\"02-30\"; \"03-01\"] | line 4 |  | 08-31",
        "\"mites\": 2     | \"mites\": 2, \"days\": null, \"note\": null, \"signs\": [null] | line"
            + " 4 |  | no such",
        "\"perBees\": 100 | \"perBees\": 100, \"signs\": [null] | line 3 | signs      | no such"
            + " field",
        "\"thresholds\":  | \"limits\":       | line 4  | limits          | \"thresholds\" now",
      })
  void faultsNameLineAndPath(String from, String to, String line, String path, String words) {
    String json = GOOD.replace(from, to.replace(';', ','));
    assertThat(json).isNotEqualTo(GOOD);
    assertThatThrownBy(() -> read(json))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith("mine.json, " + line)
        .hasMessageContaining(path == null ? "" : path)
        .hasMessageContaining(words);
  }

  @Test
  void emptyAndBrokenFilesAreRefused() throws IOException {
    assertThatThrownBy(() -> read("null")).isInstanceOf(BadInput.class);
    assertThatThrownBy(() -> read(""))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("is empty");
    assertThatThrownBy(() -> read(GOOD.substring(0, GOOD.indexOf("}]"))))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("the file ends too early");
  }
}
