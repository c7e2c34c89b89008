package broodtide.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import org.junit.jupiter.api.Test;

class CurveTest {
  private static final Curve CURVE =
      Curve.through(
          List.of(
              new Curve.Knot(MonthDay.of(3, 1), 10),
              new Curve.Knot(MonthDay.of(3, 11), 30),
              new Curve.Knot(MonthDay.of(12, 1), 0)));

  @Test
  void straightBetweenKnotsAndThroughThem() {
    assertThat(CURVE.at(LocalDate.of(2027, 3, 1))).isEqualTo(10);
    assertThat(CURVE.at(LocalDate.of(2027, 3, 6))).isCloseTo(20, within(1e-9));
    assertThat(CURVE.at(LocalDate.of(2027, 3, 11))).isEqualTo(30);
  }

  @Test
  void runsOverNewYear() {
    // 1 December to 1 March is 90 days in a common year; 1 January is day 31 of them
    assertThat(CURVE.at(LocalDate.of(2027, 1, 1))).isCloseTo(10 * 31 / 90.0, within(1e-9));
    assertThat(CURVE.at(LocalDate.of(2027, 12, 31))).isCloseTo(10 * 30 / 90.0, within(1e-9));
  }

  @Test
  void leapYearsMoveADateByLessThanADay() {
    double step = 2;
    assertThat(CURVE.at(LocalDate.of(2028, 3, 6))).isCloseTo(20, within(step));
    assertThat(CURVE.at(LocalDate.of(2028, 2, 29))).isBetween(9.0, 11.0 + step);
  }

  @Test
  void southernIsHalfAYearLater() {
    for (int i = 0; i < 10; i++) {
      double phase = i / 10.0;
      assertThat(CURVE.southern().at(phase + 0.5)).isCloseTo(CURVE.at(phase), within(1e-9));
    }
  }

  @Test
  void dailyValuesPeakAndLowest() {
    assertThat(CURVE.daily(LocalDate.of(2027, 3, 1), 3)[1])
        .isEqualTo(CURVE.at(LocalDate.of(2027, 3, 2)));
    assertThat(CURVE.peak()).isEqualTo(30);
    assertThat(CURVE.lowest()).isZero();
    assertThat(Curve.constant(7).at(0.123)).isEqualTo(7);
  }

  @Test
  void refusesWhatIsNoCurve() {
    assertThatThrownBy(() -> Curve.through(List.of())).hasMessageContaining("at least one knot");
    assertThatThrownBy(
            () ->
                Curve.through(
                    List.of(
                        new Curve.Knot(MonthDay.of(5, 1), 1),
                        new Curve.Knot(MonthDay.of(4, 1), 1))))
        .hasMessageContaining("--04-01");
    assertThatThrownBy(() -> new Curve.Knot(MonthDay.of(2, 29), 1)).hasMessageContaining("02-28");
    assertThatThrownBy(() -> new Curve.Knot(MonthDay.of(2, 1), Double.NaN))
        .hasMessageContaining("NaN");
  }

  @Test
  void spansThatMeetLeaveOutNoDayOfALeapYear() {
    YearSpan first = new YearSpan(MonthDay.of(9, 1), MonthDay.of(2, 28));
    YearSpan second = new YearSpan(MonthDay.of(3, 1), MonthDay.of(8, 31));
    LocalDate.of(2028, 1, 1)
        .datesUntil(LocalDate.of(2029, 1, 1))
        .forEach(d -> assertThat(first.holds(d)).as(d.toString()).isNotEqualTo(second.holds(d)));
    assertThat(new YearSpan(MonthDay.of(2, 29), MonthDay.of(4, 1)).holds(LocalDate.of(2028, 2, 29)))
        .isTrue();
    assertThat(new YearSpan(MonthDay.of(2, 29), MonthDay.of(4, 1)).holds(LocalDate.of(2028, 2, 28)))
        .isFalse();
  }

  @Test
  void spansHoldBothEndsAndRunOverNewYear() {
    YearSpan winter = new YearSpan(MonthDay.of(11, 15), MonthDay.of(2, 10));
    assertThat(winter.holds(LocalDate.of(2026, 11, 15))).isTrue();
    assertThat(winter.holds(LocalDate.of(2026, 11, 14))).isFalse();
    assertThat(winter.holds(LocalDate.of(2027, 2, 10))).isTrue();
    assertThat(winter.holds(LocalDate.of(2027, 2, 11))).isFalse();
    assertThat(winter.southern()).isEqualTo(new YearSpan(MonthDay.of(5, 15), MonthDay.of(8, 10)));
    assertThat(new YearSpan(MonthDay.of(2, 29), MonthDay.of(8, 31)).southern())
        .isEqualTo(new YearSpan(MonthDay.of(8, 29), MonthDay.of(2, 28)));
  }
}
