package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import broodtide.catalog.ControlTemplate.Efficacy;
import broodtide.catalog.PooledEfficacy;
import broodtide.control.HazardSpread;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The hazards in the shipped files are those that the fit gives, to three digits. */
class ShippedHazardsTest {
  private static final double HALF_OF_THE_THIRD_DIGIT = 0.5;

  /** Spreads are written with two decimals. */
  private static final double HALF_OF_THE_SECOND_DECIMAL = 0.0051;

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

  /** The share that hazards are fitted to is what the trials of the file say together. */
  @ParameterizedTest
  @MethodSource("miticides")
  void theStatedEfficacyIsThatOfTheTrials(String name) {
    Efficacy stated = Shipped.efficacy(name);
    stated
        .pooled()
        .ifPresent(
            pooled ->
                assertThat(stated.share())
                    .as("share in library/controls/%s.json; pooled %.4f", name, pooled.share())
                    .isCloseTo(pooled.share(), within(0.0005)));
  }

  /**
   * A standard deviation below the middle the hazards show the share that the trials have there.
   */
  @ParameterizedTest
  @MethodSource("miticides")
  void hazardsSpreadAsTheTrialsDo(String name) {
    Efficacy stated = Shipped.efficacy(name);
    EfficacyFit.Setting setting = Shipped.setting(name);

    HazardSpread fitted =
        EfficacyFit.spread(
            Shipped.course(name, setting.start()),
            setting,
            stated.share(),
            stated.between(),
            PooledEfficacy.COLONIES);

    HazardSpread shipped = Shipped.substance(name).spread();
    String written =
        String.format(
            Locale.ROOT,
            "spread in library/controls/%s.json; the fit gives trials %.2f, colonies %.2f",
            name,
            fitted.trials(),
            fitted.colonies());
    assertThat(shipped.trials())
        .as(written)
        .isCloseTo(fitted.trials(), within(HALF_OF_THE_SECOND_DECIMAL));
    assertThat(shipped.colonies())
        .as(written)
        .isCloseTo(fitted.colonies(), within(HALF_OF_THE_SECOND_DECIMAL));
  }
}
