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

class ThresholdFileTest {
  private static final String GOOD =
      """
      {
        "name": "mine", "title": "t", "region": "r", "source": "s", "tag": "choice",
        "perBees": 100,
        "thresholds": [{"stage": "build-up", "mites": 2}]
      }
      """;

  private static ThresholdSet read(String json) throws IOException {
    return ThresholdFile.read(Source.of("mine.json", json));
  }

  @Test
  void everyFileOfTheFolderIsListedAndReads() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("library", "thresholds"))) {
      assertThat(
              files
                  .map(f -> f.getFileName().toString())
                  .filter(f -> f.endsWith(".json"))
                  .map(f -> f.replace(".json", "")))
          .containsExactlyInAnyOrderElementsOf(Catalog.THRESHOLDS.names());
    }
    for (String name : Catalog.THRESHOLDS.names()) {
      assertThat(Catalog.threshold(name).name()).isEqualTo(name);
    }
  }

  /** The published figures: mites per 100 bees, or in a roll of 300, and the day they stand for. */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({
    "kulhanek-2021,                BROODLESS,     01-10, 3,  100", // Kulhanek et al. 2021
    "kulhanek-2021,                HONEY_FLOW,    06-10, 3,  100", // Kulhanek et al. 2021
    "gds-france-2026,                   BUILD_UP,      04-10, 1,  100", // page 4419, spring
    "gds-france-2026,                   AFTER_HARVEST, 08-01, 3,  100", // page 4419, before
    // treatment
    "gds-france-2026,                   WINTER_BEES,   09-10, 2,  100", // page 4419, after
    // treatment
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
    double found = Catalog.threshold(name).perHundred(stage, date, false).orElseThrow();
    assertThat(found * bees / 100).isCloseTo(mites, within(1e-9));
  }

  /** Farm health network, France, page 4419: 5, 10 and 1 mites a day before, until and after. */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({
    "BUILD_UP, 04-10, 5",
    "HONEY_FLOW, 06-10, 10",
    "AFTER_HARVEST, 08-01, 10",
    "WINTER_BEES, 09-10, 1"
  })
  void publishedDailyFall(Stage stage, String day, double mites) {
    LocalDate date = LocalDate.parse("2026-" + day);
    assertThat(Catalog.threshold("gds-france-2026").dailyFall(stage, date, false)).contains(mites);
    assertThat(Catalog.threshold("kulhanek-2021").dailyFall(stage, date, false)).isEmpty();
  }

  @Test
  void shippedSetsAreSeenAndCitedWithTheirYear() {
    for (String name : Catalog.THRESHOLDS.names()) {
      ThresholdSet set = Catalog.threshold(name);
      assertThat(set.tag()).as(name).isEqualTo(broodtide.measure.Tag.SEEN);
      assertThat(set.source())
          .as(name)
          .hasSizeGreaterThan(100)
          .containsPattern("\\b[12]\\d{3}\\b|undated");
    }
    assertThat(Catalog.USUAL_THRESHOLD).isEqualTo("kulhanek-2021");
  }

  @Test
  void aFormerNameIsAnsweredWithThatOfToday() {
    assertThatThrownBy(() -> Catalog.threshold("gds-france"))
        .isInstanceOf(broodtide.forms.BadInput.class)
        .hasMessageContaining("gds-france-2026");
  }

  /** Ether rolls of another age are not what a beekeeper washes today. */
  @Test
  void oldEtherRollsCarryACaution() {
    for (String name : Catalog.THRESHOLDS.names()) {
      ThresholdSet set = Catalog.threshold(name);
      boolean ether =
          set.thresholds().stream().anyMatch(t -> t.note() != null && t.note().contains("ether"));
      assertThat(set.caution().isPresent()).as(name).isEqualTo(ether);
      assertThat(ThresholdFile.read(Source.of("same.json", ThresholdFile.write(set))))
          .isEqualTo(set);
    }
    assertThat(Catalog.threshold("delaplane-hood-1999").caution().orElseThrow()).contains("1999");
  }

  @ParameterizedTest
  @CsvSource({"3, 3", "2.5, 2.5", "9/300, 3", "300/300, 100", "0.01, 0.01"})
  void aFigureHoldsOnEveryDay(String text, double perHundred) {
    ThresholdSet set = Catalog.threshold(text);
    assertThat(set.name()).isEqualTo(text);
    assertThat(set.isGiven()).isTrue();
    assertThat(set.perHundred(Stage.BROODLESS, LocalDate.of(2026, 1, 1), true).orElseThrow())
        .isCloseTo(perHundred, within(1e-12));
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "101", "301/300", "3/0", "9/99999", "0/300", "9999/9999"})
  void aFigureThatCannotBeIsRefused(String text) {
    assertThatThrownBy(() -> Catalog.threshold(text))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining(text);
  }

  @Test
  void unknownNameListsTheChoice() {
    assertThatThrownBy(() -> Catalog.threshold("nowhere"))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("\"nowhere\" is not valid; known are ages-2015, ");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "\"mites\": 2     | \"mites\": -2      | line 4  | thresholds[0].mites | a number, 0.01 to"
            + " 1000 (mites)",
        "\"mites\": 2     | \"mites\": \"2\"   | line 4  | thresholds[0].mites | a number,"
            + " 0.01 to 1000 (mites), without quotes",
        "\"mites\": 2     | \"mites\": null    | line 4  | thresholds[0].mites | a number,",
        "\"mites\": 2     | \"note\": \"x\"    | line 4  | thresholds[0] | field \"mites\" is"
            + " missing",
        "\"mites\": 2     | \"mites\": 2, \"mite\": 3 | line 4 | thresholds[0].mite | no such"
            + " field",
        "\"mites\": 2     | \"mites\": 2, \"mites\": 3 | line 4 |     | the field stands twice",
        "\"build-up\"     | \"spring\"         | line 4  | thresholds[0].stage | one of"
            + " \"build-up\", \"ho",
        "\"source\": \"s\", | \"source\": null, | line 2 | source          | text in double quotes",
        "\"source\": \"s\", | ''               | line    |                 | field \"source\" is"
            + " missing",
        "\"perBees\": 100 | \"perBees\": 1.5   | line 3  | perBees         | a whole number",
        "\"mine\"         | \"Mine!\"          | line 2  | name            | lower-case letters",
        "2}]              | 2}                | line    |                 | must be closed first",
        "{\"stage\": \"build-up\", \"mites\": 2} | null | line 4 | thresholds[0]  | an object { ..."
            + " }",
        "[{\"stage\": \"build-up\", \"mites\": 2}] | null | line 4 | thresholds   | a list [ ... ]",
        "\"title\": \"t\"    | \"title\": 3        | line 2  | title           | text in double"
            + " quotes",
        "\"title\": \"t\"    | \"title\": true     | line 2  | title           | text in double"
            + " quotes",
        "\"perBees\": 100 | \"perBees\": \"100\" | line 3  | perBees         | a whole number",
        "\"build-up\"     | 5                  | line 4  | thresholds[0].stage | one of"
            + " \"build-up\"",
        "\"mites\": 2     | \"mites\": 2, \"upTo\": \"5\" | line 4 | thresholds[0].upTo | a number",
        "\"mites\": 2     | \"mites\": 2, \"note\": 5 | line 4 | thresholds[0].note | text in"
            + " double quotes",
        "\"mites\": 2     | \"mites\": 2, \"days\": 5 | line 4 | thresholds[0].days | a list [ ..."
            + " ]",
        "\"mites\": 2     | \"mites\": 2, \"days\": [\"02-30\"; \"03-01\"] | line 4 |"
            + " thresholds[0].days[0] | a day of the year",
        "\"mites\": 2     | \"mites\": 2, \"signs\": [null] | line 4 | thresholds[0].signs | no"
            + " such field",
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
