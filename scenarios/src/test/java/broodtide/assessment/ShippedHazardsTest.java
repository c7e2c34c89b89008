package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The hazards in the shipped files are those that the fit gives, to three digits. */
class ShippedHazardsTest {
  private static final double HALF_OF_THE_THIRD_DIGIT = 0.5;

  static List<String> miticides() {
    return Shipped.controls(MiticideCourse.class);
  }

  @ParameterizedTest
  @MethodSource("miticides")
  void hazardsMeetTheStatedEfficacyInTheStatedSetting(String name) {
    double share = Shipped.efficacy(name).share();
    EfficacyFit.Setting setting = Shipped.setting(name);
    Miticide shipped = Shipped.substance(name);

    Miticide fitted = EfficacyFit.fit(Shipped.course(name, setting.start()), setting, share);

    assertThat(shipped.onBees())
        .as("onBees in library/controls/%s.json; the fit gives %.3g", name, fitted.onBees())
        .isCloseTo(fitted.onBees(), withinPercentage(HALF_OF_THE_THIRD_DIGIT));
    assertThat(shipped.inCells())
        .as("inCells in library/controls/%s.json; the fit gives %.3g", name, fitted.inCells())
        .isCloseTo(fitted.inCells(), withinPercentage(HALF_OF_THE_THIRD_DIGIT));
  }
}
