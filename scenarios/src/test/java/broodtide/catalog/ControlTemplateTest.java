package broodtide.catalog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.control.Control;
import broodtide.control.DroneCombRemoval;
import broodtide.control.MiticideCourse;
import broodtide.control.QueenCaging;
import broodtide.control.Requeening;
import broodtide.control.Split;
import broodtide.forms.BadInput;
import broodtide.forms.Source;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ControlTemplateTest {
  private static final LocalDate DAY = LocalDate.of(2027, 5, 1);

  private static final String STRIPS =
      """
      {
        "kind": "miticide", "name": "strips", "title": "Strips", "substance": "an acid",
        "days": 7, "onBees": 0.5, "inCells": 0.1, "coolest": 10, "warmest": 30,
        "applications": 2, "every": 9,
        "efficacy": {
          "share": 0.8,
          "setting": {
            "climate": "temperate", "date": "08-01", "broodless": false, "measuredAfter": 28,
            "against": "followup"
          },
          "tag": "CHOICE", "source": "invented"
        },
        "cautions": ["gloves"]
      }
      """;

  private static ControlTemplate read(String text) {
    return ControlTemplateFile.read(Source.of("c.json", text));
  }

  private static Control placed(String kind, String fields) {
    return read("{\"kind\": \"" + kind + "\", \"name\": \"n\", \"title\": \"t\"," + fields + "}")
        .at(DAY);
  }

  @Test
  void miticideIsPlacedWithItsRhythm() {
    ControlTemplate strips = read(STRIPS);
    MiticideCourse course = (MiticideCourse) strips.at(DAY);
    assertThat(course.name()).isEqualTo("Strips");
    assertThat(course.substance().name()).isEqualTo("strips");
    assertThat(course.to()).isEqualTo(LocalDate.of(2027, 5, 16));
    assertThat(strips.efficacy().orElseThrow().setting().against())
        .isEqualTo(ControlTemplate.Against.FOLLOWUP);
    assertThat(strips.cautions()).containsExactly("gloves");
    assertThat(strips.notes()).isEmpty();
  }

  @Test
  void otherKindsCountDaysFromTheirStart() {
    DroneCombRemoval comb =
        (DroneCombRemoval)
            placed("drone-comb", "\"cutsAfter\": [20, 40], \"taken\": 1, \"droneShare\": 0.1");
    assertThat(comb.cuts()).containsExactly(LocalDate.of(2027, 5, 21), LocalDate.of(2027, 6, 10));
    QueenCaging cage = (QueenCaging) placed("queen-caging", "\"days\": 25");
    assertThat(cage.to()).isEqualTo(LocalDate.of(2027, 5, 25));
    assertThat(cage.daysWithoutLaying()).isEqualTo(25);
    Split split =
        (Split) placed("split", "\"beesLeaving\":0.5,\"broodLeaving\":1,\"daysWithoutLaying\":27");
    assertThat(split.beesLeaving()).isEqualTo(0.5);
    Requeening queen =
        (Requeening) placed("requeening", "\"hygiene\": 0.3, \"daysWithoutLaying\": 4");
    assertThat(queen.stock().fertility()).isEqualTo(0.7);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "\"every\": 9 | \"every\": 6 | $.every: \"6\" is not valid; expected 7 to 120",
        "\"warmest\": 30 | \"warmest\": 3 | $.warmest: \"3\" is not valid; expected 10 to 60",
        "08-01 | 08-32 | $.efficacy.setting.date: \"08-32\" is not valid",
        "false | \"no\" | $.efficacy.setting.broodless: \"no\" is not valid; expected true",
        "followup | before | $.efficacy.setting.against: \"before\" is not valid; expected one",
        "CHOICE | GUESS | $.efficacy.tag: \"GUESS\" is not valid; expected one of \"SEEN\"",
        "\"share\": 0.8, | | $.efficacy: the field \"share\" is missing",
        "\"gloves\" | 5 | $.cautions[0]: \"5\" is not valid; expected text",
      })
  void faultsNameTheirPlace(String from, String to, String said) {
    String text = STRIPS.replace(from, to == null ? "" : to);
    assertThat(text).isNotEqualTo(STRIPS);
    assertThatThrownBy(() -> read(text)).isInstanceOf(BadInput.class).hasMessageContaining(said);
  }

  @Test
  void cutsMustRise() {
    assertThatThrownBy(
            () -> placed("drone-comb", "\"cutsAfter\": [9, 9], \"taken\": 1, \"droneShare\": 0"))
        .hasMessageContaining("$.cutsAfter: cutsAfter is [9, 9]; expected days that rise");
  }
}
