package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.wash.Stage;
import broodtide.wash.ThresholdSet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  /** The published figures with the numbers per 300 bees that their papers and reviews give. */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({
    "all-season-three,  HONEY_FLOW,    9", // Kulhanek et al. 2021
    "dry-summer-inland, BUILD_UP,      3", // Strange & Sheppard 2001, April
    "dry-summer-inland, AFTER_HARVEST, 14", // Strange & Sheppard 2001, August
    "dry-summer-inland, WINTER_BEES,   3", // Strange & Sheppard 2001, October
    "long-season-south, AFTER_HARVEST, 15", // Delaplane & Hood 1999, August, lower end
    "prairie-spring,    BUILD_UP,      6", // Currie & Gatien 2006
    "cold-winter-east,  AFTER_HARVEST, 9" // from memory
  })
  void publishedThresholds(String name, Stage stage, int perThreeHundred) {
    double found = ThresholdLibrary.shipped(name).perHundred(stage).orElseThrow();
    assertThat(found * 3).isCloseTo(perThreeHundred, within(0.5));
  }

  /** Common practice, no source. */
  @Tag("outside")
  @ParameterizedTest
  @CsvSource({
    "BUILD_UP, 1, no all-clear",
    "BUILD_UP, 2, worth treating before the flow",
    "HONEY_FLOW, 6, still tolerable",
    "HONEY_FLOW, 7, drone comb",
    "HONEY_FLOW, 12, the label decides",
    "AFTER_HARVEST, 1, no all-clear",
    "AFTER_HARVEST, 3, worth treating",
    "WINTER_BEES, 1, no all-clear",
    "WINTER_BEES, 2, closing up for winter"
  })
  void commonPractice(Stage stage, int perHalfCup, String words) {
    ThresholdSet set = ThresholdLibrary.shipped("common-practice");
    assertThat(set.words(stage, perHalfCup / 3.0).orElseThrow()).contains(words);
    assertThat(set.sign(15 / 3.0).orElseThrow()).contains("virus");
    assertThat(set.sign(45 / 3.0).orElseThrow()).contains("abscond");
  }

  @Test
  void unknownNameListsTheChoice() {
    assertThatThrownBy(() -> ThresholdLibrary.shipped("nowhere"))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("\"nowhere\" cannot be used; choose one of common-practice, ");
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
      })
  void faultsNameLineAndPath(String from, String to, String line, String path, String words) {
    String json = GOOD.replace(from, to);
    assertThat(json).isNotEqualTo(GOOD);
    assertThatThrownBy(() -> read(json))
        .isInstanceOf(BadInput.class)
        .hasMessageStartingWith("mine.json, " + line)
        .hasMessageContaining(path == null ? "" : path)
        .hasMessageContaining(words);
  }

  @Test
  void leftOutListsAreEmpty() throws IOException {
    assertThat(read(GOOD).signs()).isEmpty();
    assertThat(read(GOOD).thresholds().get(0).bands()).isEmpty();
    assertThatThrownBy(() -> read("null")).isInstanceOf(BadInput.class);
    assertThatThrownBy(() -> read(""))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("is empty");
    assertThatThrownBy(() -> read(GOOD.substring(0, GOOD.indexOf("}]"))))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("the file ends too early");
  }
}
