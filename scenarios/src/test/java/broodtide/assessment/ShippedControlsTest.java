package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.EfficacyFit.Setting;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlKind;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.ControlTemplate.Against;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every shipped control owes its reader. */
class ShippedControlsTest {
  static List<String> miticides() {
    return Shipped.controls(MiticideCourse.class);
  }

  static List<String> all() {
    return Catalog.CONTROLS.names();
  }

  @Test
  void everyKindIsThereAndEverySubstanceOfTheTable() {
    assertThat(ControlKind.ALL.stream().map(ControlKind::type))
        .allSatisfy(kind -> assertThat(Shipped.controls(kind)).isNotEmpty());
    assertThat(miticides().stream().flatMap(n -> Catalog.control(n).substance().stream()))
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
    ControlTemplate control = Catalog.control(name);
    assertThat(control.name()).isEqualTo(name);
    assertThat(control.notes()).isNotEmpty();
    assertThat(control.cautions()).isNotEmpty();
  }

  @Test
  void everyFileIsInTheIndex() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("library/controls"))) {
      assertThat(
              files.map(f -> f.getFileName().toString()).filter(f -> f.endsWith(".json")).toList())
          .containsExactlyInAnyOrderElementsOf(all().stream().map(n -> n + ".json").toList());
    }
  }

  @ParameterizedTest
  @MethodSource("miticides")
  void theLabelDecidesAndAcidsAreHandledWithCare(String name) {
    String substance = Catalog.control(name).substance().orElseThrow();
    String cautions = String.join(" ", Catalog.control(name).cautions());
    assertThat(cautions).contains("label and local law decide");
    if (substance.matches("(oxalic|formic|lactic) acid")) {
      assertThat(cautions).contains("gloves", "goggles");
    }
    if (substance.matches("amitraz|pyrethroid")) {
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
    if (setting.against() != Against.START) {
      assertThat((long) setting.measuredAfter()).isGreaterThanOrEqualTo(acting);
    }
  }
}
