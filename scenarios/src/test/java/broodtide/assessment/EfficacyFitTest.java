package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.assessment.EfficacyFit.Setting;
import broodtide.catalog.ControlTemplate.Against;
import broodtide.control.Miticide;
import broodtide.control.Miticide.SupersRule;
import broodtide.control.MiticideCourse;
import broodtide.engine.ColonyModel;
import broodtide.measure.Unworkable;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class EfficacyFitTest {
  private static final ColonyModel TEMPERATE = Shipped.model("temperate");
  private static final LocalDate AUGUST = LocalDate.of(2001, 8, 15);
  private static final LocalDate NOVEMBER = LocalDate.of(2001, 11, 20);

  @Test
  void withoutBroodTheShareIsThatOfAnExponentialDecay() {
    Setting setting = Setting.quiet(TEMPERATE, NOVEMBER, true, 4, Against.UNTREATED);
    assertThat(EfficacyFit.efficacy(course(0.5, 0, 4), setting))
        .isCloseTo(1 - Math.exp(-0.5 * 4), within(1e-9));
  }

  @Test
  void aHazardAsHighUnderCappingsAsOnBeesIsAnExponentialDecayWithBroodToo() {
    Setting setting = Setting.quiet(TEMPERATE, AUGUST, false, 1, Against.UNTREATED);
    assertThat(EfficacyFit.efficacy(course(0.7, 0.7, 1), setting))
        .as("mites that leave cells on the day meet both hazards in part, hence the margin")
        .isCloseTo(1 - Math.exp(-0.7), within(0.03));
  }

  @ParameterizedTest
  @EnumSource(Against.class)
  void theFittedSubstanceShowsTheShareItWasFittedTo(Against against) {
    Setting setting = Setting.quiet(TEMPERATE, AUGUST, false, 28, against);
    Miticide fitted = EfficacyFit.fit(course(1, 0.5, 10), setting, 0.6);
    MiticideCourse given = MiticideCourse.once("fitted", fitted, AUGUST);
    assertThat(EfficacyFit.efficacy(given, setting)).isCloseTo(0.6, within(1e-6));
    assertThat(fitted.inCells() / fitted.onBees()).isCloseTo(0.5, within(1e-12));
  }

  @Test
  void theSameSubstanceTakesLessWhereThereIsBrood() {
    MiticideCourse dribble = course(1.7, 0, 3);
    double broodless =
        EfficacyFit.efficacy(dribble, Setting.quiet(TEMPERATE, AUGUST, true, 14, Against.FOLLOWUP));
    double withBrood =
        EfficacyFit.efficacy(
            dribble, Setting.quiet(TEMPERATE, AUGUST, false, 14, Against.FOLLOWUP));
    assertThat(withBrood).isLessThan(0.55 * broodless);
  }

  @Test
  void aShareOutOfReachIsRefusedWithTheSharesInReach() {
    Setting setting = Setting.quiet(TEMPERATE, AUGUST, false, 14, Against.UNTREATED);
    assertThatThrownBy(() -> EfficacyFit.fit(course(1, 0, 1), setting, 0.9))
        .isInstanceOf(Unworkable.class)
        .hasMessageStartingWith("tried cannot take a share of 0.900 in this setting")
        .hasMessageContaining("with a hazard of 20 a day 0.");
  }

  private static MiticideCourse course(double onBees, double inCells, int days) {
    Miticide substance =
        new Miticide("tried", days, onBees, inCells, 0, 0, -40, 60, SupersRule.OFF);
    return MiticideCourse.once("tried", substance, AUGUST);
  }
}
