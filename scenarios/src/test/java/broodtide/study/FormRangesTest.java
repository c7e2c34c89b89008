package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.catalog.ClimateFile;
import broodtide.catalog.ControlFields;
import broodtide.control.DroneCombRemoval;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.QueenCaging;
import broodtide.control.Requeening;
import broodtide.control.Split;
import broodtide.control.TrappingComb;
import broodtide.engine.SimulatedColony;
import broodtide.forms.CurveForm;
import broodtide.forms.Field;
import broodtide.forms.NumberForm;
import broodtide.forms.WholeForm;
import broodtide.measure.OutOfRange;
import broodtide.mite.Immigration;
import broodtide.mite.StockTraits;
import broodtide.season.Climate;
import broodtide.season.Curve;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What files allow and what the model's records allow is the same. */
class FormRangesTest {
  private static final LocalDate DAY = LocalDate.of(2027, 6, 1);

  /**
   * A range of a file and the record that takes its values.
   *
   * @param min smallest that the file allows
   * @param max largest that the file allows
   * @param step the step to the first value outside
   * @param make builds the record
   */
  record Range(String name, double min, double max, double step, DoubleFunction<Object> make) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Range> ranges() {
    return Stream.of(
        of(ControlFields.DAYS, v -> miticide((int) v, 0, 0, 0, 0, 0)),
        of(ControlFields.ON_BEES, v -> miticide(9, v, 0, 0, 0, 0)),
        of(ControlFields.IN_CELLS, v -> miticide(9, 0, v, 0, 0, 0)),
        of(ControlFields.BEE_COST, v -> miticide(9, 0, 0, v, 0, 0)),
        of(ControlFields.BROOD_COST, v -> miticide(9, 0, 0, 0, v, 0)),
        of(ControlFields.COOLEST, v -> miticide(9, 0, 0, 0, 0, v)),
        of(ControlFields.APPLICATIONS, v -> course((int) v, 30)),
        of(ControlFields.EVERY, v -> course(2, (int) v)),
        of(ControlFields.TAKEN, v -> comb(v, 0)),
        of(ControlFields.DRONE_SHARE, v -> comb(0, v)),
        of(ControlFields.BEES_LEAVING, v -> new Split("s", DAY, v, 0, 0)),
        of(ControlFields.BROOD_LEAVING, v -> new Split("s", DAY, 0, v, 0)),
        of(ControlFields.WITHOUT_LAYING, v -> new Split("s", DAY, 0, 0, (int) v)),
        of(
            ControlFields.WITHOUT_LAYING,
            v -> new Requeening("q", DAY, StockTraits.AVERAGE, (int) v)),
        new Range("caged", 1, 121, 1, v -> new QueenCaging("c", DAY, DAY.plusDays((int) v - 1))),
        new Range("cagedDays", 15, 60, 1, v -> new TrappingComb("t", DAY, (int) v, 12, 1)),
        new Range("trappingDays", 9, 20, 1, v -> new TrappingComb("t", DAY, 24, (int) v, 1)),
        new Range("taken", 0, 1, 1e-6, v -> new TrappingComb("t", DAY, 24, 12, v)),
        of(ColonyForm.ADULTS, v -> colony(OptionalDouble.of(v), empty(), empty(), 1)),
        of(ColonyForm.FRAMES, v -> colony(empty(), OptionalDouble.of(v), empty(), 1)),
        of(ColonyForm.INFESTATION, v -> colony(empty(), empty(), OptionalDouble.of(v), 1)),
        of(ColonyForm.INFESTATION, SimulatedColony::average),
        of(ColonyForm.STRENGTH, v -> colony(empty(), empty(), empty(), v)),
        of(ColonyForm.STRENGTH, v -> new SimulatedColony(v, 1, 0, 1, 1, List.of())),
        of(ControlFields.VIGOUR, v -> new SimulatedColony(1, 1, 0, v, 1, List.of())),
        of(ControlFields.HYGIENE, v -> new StockTraits(v, 1)),
        of(
            StudyForm.WINDOW_RATE,
            v -> new Immigration.Window(new YearSpan(MonthDay.of(1, 1), MonthDay.of(2, 1)), v)),
        knots(ClimateFile.LAYING, c -> climate(c, one(), one(), one(), one())),
        knots(ClimateFile.DRONE_SHARE, c -> climate(one(), c, one(), one(), one())),
        knots(ClimateFile.WINTER_SHARE, c -> climate(one(), one(), c, one(), one())),
        knots(ClimateFile.SPRING_RELEASE, c -> climate(one(), one(), one(), c, one())),
        of(ClimateFile.WINTER_DEATH, v -> climate(one(), one(), one(), one(), one(), v)),
        knots(ClimateFile.WARMTH, c -> climate(one(), one(), one(), one(), c)));
  }

  @ParameterizedTest
  @MethodSource("ranges")
  void bothEndsAreAllowedAndNothingBeyond(Range range) {
    assertThat(range.make().apply(range.min())).isNotNull();
    assertThat(range.make().apply(range.max())).isNotNull();
    assertThatThrownBy(() -> range.make().apply(range.min() - range.step()))
        .isInstanceOf(OutOfRange.class);
    assertThatThrownBy(() -> range.make().apply(range.max() + range.step()))
        .isInstanceOf(OutOfRange.class);
  }

  private static Range of(Field<? extends Number> field, DoubleFunction<Object> make) {
    Object form = field.form();
    if (form instanceof WholeForm whole) {
      return new Range(field.name(), whole.min(), whole.max(), 1, make);
    }
    NumberForm number = (NumberForm) form;
    return new Range(field.name(), number.min(), number.max(), 1e-6, make);
  }

  private static Range knots(Field<Curve> field, Function<Curve, Object> make) {
    NumberForm form = ((CurveForm) field.form()).value();
    return new Range(field.name(), form.min(), form.max(), 1e-6, v -> make.apply(curve(v)));
  }

  private static Curve curve(double value) {
    return Curve.through(
        List.of(new Curve.Knot(MonthDay.of(3, 1), value), new Curve.Knot(MonthDay.of(6, 1), 0.25)));
  }

  private static Curve one() {
    return curve(0.25);
  }

  private static Climate climate(Curve a, Curve b, Curve c, Curve d, Curve e) {
    return climate(a, b, c, d, e, Climate.USUAL_WINTER_DEATH);
  }

  private static Climate climate(Curve a, Curve b, Curve c, Curve d, Curve e, double death) {
    YearSpan span = new YearSpan(MonthDay.of(5, 1), MonthDay.of(8, 1));
    return new Climate("n", "t", a, b, c, d, death, e, span, span, false, List.of("x"));
  }

  private static Miticide miticide(
      int days, double onBees, double inCells, double bees, double brood, double coolest) {
    return new Miticide(
        "m", days, onBees, inCells, bees, brood, coolest, 60, Miticide.SupersRule.OFF);
  }

  private static MiticideCourse course(int applications, int every) {
    return new MiticideCourse("c", miticide(1, 0, 0, 0, 0, 0), DAY, applications, every);
  }

  private static DroneCombRemoval comb(double taken, double droneShare) {
    return new DroneCombRemoval("d", DAY, List.of(DAY.plusDays(1)), taken, droneShare);
  }

  private static ColonyStart colony(
      OptionalDouble adults, OptionalDouble frames, OptionalDouble infestation, double strength) {
    return new ColonyStart("A", adults, frames, infestation, strength, StockTraits.AVERAGE);
  }

  private static OptionalDouble empty() {
    return OptionalDouble.empty();
  }
}
