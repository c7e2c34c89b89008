package broodtide.compare;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.compare.EfficacyFit.Setting;
import broodtide.control.Miticide;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every shipped control owes its reader. */
class ShippedControlsTest {
  private static final List<String> KINDS =
      List.of("miticide", "drone-comb", "queen-caging", "split", "requeening");

  static List<String> miticides() {
    return Shipped.controls("miticide");
  }

  static List<String> all() {
    return KINDS.stream().flatMap(kind -> Shipped.controls(kind).stream()).toList();
  }

  @Test
  void everyKindIsThereAndEverySubstanceOfTheTable() {
    assertThat(KINDS).allSatisfy(kind -> assertThat(Shipped.controls(kind)).isNotEmpty());
    assertThat(miticides().stream().map(n -> Shipped.control(n).get("substance").asText()))
        .contains(
            "oxalic acid",
            "formic acid",
            "thymol",
            "amitraz",
            "pyrethroid",
            "hop beta acids",
            "lactic acid");
  }

  @ParameterizedTest
  @MethodSource("all")
  void nameIsTheFilesAndNotesAndCautionsAreThere(String name) {
    JsonNode control = Shipped.control(name);
    assertThat(control.get("name").asText()).isEqualTo(name);
    assertThat(control.get("title").asText()).isNotBlank();
    assertThat(lines(control.get("notes"))).isNotEmpty().noneMatch(String::isBlank);
    assertThat(lines(control.get("cautions"))).isNotEmpty().noneMatch(String::isBlank);
  }

  @ParameterizedTest
  @MethodSource("miticides")
  void theLabelDecidesAndAcidsAreHandledWithCare(String name) {
    JsonNode control = Shipped.control(name);
    String cautions = String.join(" ", lines(control.get("cautions")));
    assertThat(cautions).contains("label and local law decide");
    if (control.get("substance").asText().matches("(oxalic|formic|lactic) acid")) {
      assertThat(cautions).contains("gloves", "goggles");
    }
    if (control.get("substance").asText().matches("amitraz|pyrethroid")) {
      assertThat(cautions).contains("Where mites are resistant it fails");
    }
  }

  @ParameterizedTest
  @MethodSource("miticides")
  void theSettingOfTheFitIsWarmAndCoolEnoughForTheSubstance(String name) {
    Setting setting = Shipped.setting(name);
    Miticide substance = Shipped.substance(name);
    double high = setting.model().climate().warmth().at(setting.start());
    assertThat(high).isBetween(substance.coolest(), substance.warmest());
  }

  @ParameterizedTest
  @MethodSource("miticides")
  void theMeasurementComesAfterTheTreatmentHasActedUnlessSetAgainstTheStart(String name) {
    Setting setting = Shipped.setting(name);
    long acting =
        Shipped.course(name, setting.start()).to().toEpochDay() - setting.start().toEpochDay() + 1;
    if (setting.against() != EfficacyFit.Against.START) {
      assertThat((long) setting.measuredAfter()).isGreaterThanOrEqualTo(acting);
    }
  }

  private static List<String> lines(JsonNode array) {
    return StreamSupport.stream(array.spliterator(), false).map(JsonNode::asText).toList();
  }
}
