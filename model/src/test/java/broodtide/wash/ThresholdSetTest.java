package broodtide.wash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.measure.OutOfRange;
import broodtide.measure.Tag;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ThresholdSetTest {
  private static final LocalDate DAY = LocalDate.of(2026, 8, 10);
  private static final Threshold FLOW = new Threshold(Stage.HONEY_FLOW, null, 6, 9.0, null, null);
  private static final Threshold ALWAYS = new Threshold(null, null, 3, null, null, null);

  private static Threshold days(int from, int to, double mites) {
    YearSpan span = new YearSpan(MonthDay.of(from, 1), MonthDay.of(to, 28));
    return new Threshold(null, span, mites, null, null, null);
  }

  private static ThresholdSet set(Threshold... thresholds) {
    return new ThresholdSet(
        "invented",
        "Invented",
        "nowhere",
        "none",
        Tag.CHOICE,
        Optional.empty(),
        300,
        List.of(thresholds));
  }

  @Test
  void countsAreReadInTheSetsOwnUnit() {
    assertThat(set(FLOW).perHundred(Stage.HONEY_FLOW, DAY, false).orElseThrow())
        .isCloseTo(2, within(1e-12));
    assertThat(set(FLOW).perHundred(Stage.BROODLESS, DAY, false)).isEmpty();
    assertThat(ThresholdSet.given("9/300", 9, 300).perHundred(Stage.BROODLESS, DAY, true))
        .contains(3.0);
  }

  @Test
  void daysHoldBetweenTheirEndsAndHalfAYearLaterInTheSouth() {
    ThresholdSet set = set(days(4, 4, 3), days(8, 8, 14));
    LocalDate october = LocalDate.of(2026, 10, 10);
    assertThat(set.on(Stage.HONEY_FLOW, DAY, false).orElseThrow().mites()).isEqualTo(14);
    assertThat(set.on(Stage.HONEY_FLOW, DAY, true)).isEmpty();
    assertThat(set.on(Stage.HONEY_FLOW, october, false)).isEmpty();
    assertThat(set.on(Stage.HONEY_FLOW, october, true).orElseThrow().mites()).isEqualTo(3);
  }

  @Test
  void oneWithNeitherStageNorDaysHoldsAlways() {
    for (Stage stage : Stage.values()) {
      assertThat(set(ALWAYS).perHundred(stage, DAY, false)).contains(1.0);
    }
  }

  @Test
  void twoOfOneDayAreRefused() {
    assertThatThrownBy(() -> set(FLOW, FLOW)).hasMessageContaining("honey-flow twice");
    assertThatThrownBy(() -> set(ALWAYS, FLOW)).hasMessageContaining("never hold on the same day");
    assertThatThrownBy(() -> set(FLOW, days(8, 8, 3))).hasMessageContaining("all by stage");
    assertThatThrownBy(() -> set(days(7, 8, 3), days(8, 9, 4))).isInstanceOf(OutOfRange.class);
    assertThatThrownBy(ThresholdSetTest::set).hasMessageContaining("at least one threshold");
  }

  @Test
  void figuresOutsideTheirRangesAreRefused() {
    YearSpan august = new YearSpan(MonthDay.of(8, 1), MonthDay.of(8, 31));
    assertThatThrownBy(() -> new Threshold(Stage.BROODLESS, null, 3, 2.0, null, null))
        .hasMessageContaining("upTo is 2");
    assertThatThrownBy(() -> new Threshold(Stage.BROODLESS, null, -1, null, null, null))
        .hasMessageContaining("mites is -1");
    assertThatThrownBy(() -> new Threshold(Stage.BROODLESS, august, 3, null, null, null))
        .hasMessageContaining("one of the two");
  }
}
