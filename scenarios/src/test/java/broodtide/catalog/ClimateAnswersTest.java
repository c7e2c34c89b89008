package broodtide.catalog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.measure.OutOfRange;
import broodtide.season.Climate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ClimateAnswersTest {
  static List<String> names() {
    return Catalog.CLIMATES.names();
  }

  private static Map<ClimateQuestion, Double> answersOf(Climate climate) {
    Map<ClimateQuestion, Double> out = new EnumMap<>(ClimateQuestion.class);
    for (ClimateQuestion q : ClimateQuestion.values()) {
      out.put(q, q.of(climate));
    }
    return out;
  }

  @ParameterizedTest
  @MethodSource("names")
  void eachClimateIsFoundByItsOwnAnswers(String name) {
    Climate climate = Catalog.climate(name);
    assertThat(new ClimateAnswers(answersOf(climate), false).ranked().get(0).climate().name())
        .isEqualTo(name);
    ClimateAnswers south = new ClimateAnswers(answersOf(climate.inSouth()), true);
    assertThat(south.ranked().get(0).climate().name()).isEqualTo(name);
    assertThat(south.ranked().get(0).misfit()).isLessThan(0.1);
  }

  /** Days that are a week off still lead to the climate, or to one that is about as good. */
  @ParameterizedTest
  @MethodSource("names")
  void aWeekOffStillLeadsToTheClimate(String name) {
    Climate climate = Catalog.climate(name);
    Map<ClimateQuestion, Double> answers = answersOf(climate);
    answers.replaceAll((q, v) -> q.kind() == ClimateQuestion.Kind.DAY ? (v + 7) % 365 : v);
    var ranked = new ClimateAnswers(answers, false).ranked();
    assertThat(ranked.stream().filter(ranked.get(0)::tiedWith).map(f -> f.climate().name()))
        .contains(name);
  }

  @Test
  void theTurnOfTheYearIsNoDistance() {
    ClimateQuestion q = ClimateQuestion.DRONE_BROOD;
    Climate subtropical = Catalog.climate("subtropical");
    assertThat(Math.abs(q.difference(q.read("12-28"), subtropical))).isLessThan(30);
  }

  @Test
  void noAnswerIsNoChoice() {
    ClimateAnswers none = new ClimateAnswers(Map.of(), false);
    assertThatThrownBy(none::ranked).isInstanceOf(OutOfRange.class).hasMessageContaining("answer");
  }

  @ParameterizedTest
  @ValueSource(strings = {"13-01", "02-30", "August", "8-20", "", "08-20-2025"})
  void whatIsNoDayIsRefused(String text) {
    assertThatThrownBy(() -> ClimateQuestion.WINTER_BEES.read(text))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("08-20");
  }

  @ParameterizedTest
  @CsvSource({
    "midwinter-brood, some, little",
    "summer-high, 75, 10 to 50",
    "summer-high, warm, 10 to 50"
  })
  void otherAnswersAreHeldToTheirKind(String id, String text, String expected) {
    ClimateQuestion question = ClimateQuestion.named(id).orElseThrow();
    assertThatThrownBy(() -> question.read(text))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining(expected);
  }
}
