package broodtide.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Plan;
import broodtide.engine.ColonyBlock;
import broodtide.engine.ColonyModel;
import broodtide.engine.Places;
import broodtide.engine.Scenario;
import broodtide.engine.Schedule;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.season.Climate;
import broodtide.season.Curve;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rates of change against the model's page, worked out in other code. */
class FlowEquationsTest {
  private static final ColonyBlock BLOCK =
      StandardColony.on(FlowSeason.usual(), FlowSeason.START)
          .colonies(List.of(FlowSeason.member()));

  private final SplittableRandom random = new SplittableRandom(5);

  @ParameterizedTest
  @CsvSource({"1,2,1", "2,2,4", "3,0.7,3", "4,40,2", "5,3,9"})
  void everyRateIsThatOfThePage(int seed, double clumping, int stages) {
    ColonyModel model = FlowSeason.drawn(seed, clumping);
    Schedule schedule = Schedule.of(FlowSeason.scenario(model));
    FlowState at = FlowState.of(BLOCK, stages, clumping);
    FlowEquations equations = new FlowEquations(at, schedule, model, FlowSeason.member());
    PlainFlow plain = new PlainFlow(model, schedule, FlowSeason.member(), stages);
    double[] rate = new double[equations.getDimension()];
    for (int day = 0; day < FlowSeason.DAYS; day++) {
      equations.enter(day);
      // the last has the curves of autumn, when winter bees are raised
      for (double t : new double[] {day, day + random.nextDouble(), day + 1, day + 120.3}) {
        PlainFlow.State s = drawn(at);
        Arrays.fill(rate, 7);
        equations.computeDerivatives(t, s.vector(at), rate);
        double[] expected = plain.change(s, t, day).vector(at);
        for (int i = 0; i < rate.length; i++) {
          assertThat(rate[i])
              .as("variable %d at %f", i, t)
              .isCloseTo(expected[i], within(1e-9 * (1 + Math.abs(expected[i]))));
        }
      }
    }
  }

  /** The equations of the usual season on a day. */
  private static FlowEquations usual(FlowState at, int day) {
    ColonyModel model = FlowSeason.usual();
    FlowEquations equations =
        new FlowEquations(at, Schedule.of(FlowSeason.scenario(model)), model, FlowSeason.member());
    equations.enter(day);
    return equations;
  }

  private PlainFlow.State drawn(FlowState at) {
    double[] y = new double[at.vector().length];
    for (int i = 0; i < y.length; i++) {
      y[i] = random.nextDouble(10, 3000);
    }
    return PlainFlow.State.of(y, at);
  }

  /** What rounding takes below nothing counts as nothing. */
  @Test
  void lessThanNothingCountsAsNothing() {
    FlowState at = FlowState.of(BLOCK, 2, 2);
    FlowEquations equations = usual(at, 8);
    double[] below = new double[equations.getDimension()];
    double[] with = new double[below.length];
    double[] without = new double[below.length];
    for (int i = 0; i < below.length; i++) {
      double[] y = drawn(at).vector(at);
      y[i] = -7;
      equations.computeDerivatives(8.4, y, with);
      y[i] = 0;
      equations.computeDerivatives(8.4, y, without);
      assertThat(with).as("variable %d", i).containsExactly(without);
    }
  }

  /** Without bees, cells and mites only what arrives changes anything; nothing is divided by 0. */
  @Test
  void anEmptyHiveIsBroughtMitesAlone() {
    FlowState at = FlowState.of(BLOCK, 3, 2);
    FlowEquations equations = usual(at, 30);
    double[] rate = new double[equations.getDimension()];
    equations.computeDerivatives(30.2, new double[rate.length], rate);
    // three a day, the colony's factor of 1.7 and the season's of a half
    double arriving = 3 * 1.7 * 0.5;
    for (int i = 0; i < rate.length; i++) {
      boolean arrives = i == FlowState.PHORETIC || i == FlowState.IMMIGRANTS;
      assertThat(rate[i]).isCloseTo(arrives ? arriving : 0, within(1e-12));
    }
  }

  /** What comes in, less what goes out, is what there is more of. */
  @ParameterizedTest
  @CsvSource({"6,2", "7,5"})
  void mitesAreNeitherMadeNorLost(int seed, double clumping) {
    ColonyModel model = FlowSeason.drawn(seed, clumping);
    FlowState at = FlowState.of(BLOCK, 4, clumping);
    FlowEquations equations =
        new FlowEquations(at, Schedule.of(FlowSeason.scenario(model)), model, FlowSeason.member());
    equations.enter(23);
    double[] rate = new double[equations.getDimension()];
    equations.computeDerivatives(23.6, drawn(at).vector(at), rate);
    PlainFlow.State d = PlainFlow.State.of(rate, at);
    assertThat(d.mites())
        .isCloseTo(
            d.daughters + d.immigrants - d.diedOnBees - d.diedInCells - d.killed, within(1e-8));
  }

  /** A curve bends at the noon of each day of a knot, every year; warmth moves nothing here. */
  @Test
  void bendsAreTheNoonsOfKnots() {
    Climate climate = Places.seasonal();
    for (int days : new int[] {1, 30, 500, 900}) {
      // no leap day within: the engine takes every year to be as long as the first
      LocalDate start = LocalDate.of(2025, 3, 15);
      Scenario scenario = new Scenario(ColonyModel.in(climate), Plan.waiting("wait"), start, days);
      Set<MonthDay> knots = new HashSet<>();
      for (Curve curve :
          List.of(
              climate.laying(),
              climate.droneShare(),
              climate.winterShare(),
              climate.springRelease())) {
        curve.knots().forEach(knot -> knots.add(knot.day()));
      }
      List<Double> noons = new ArrayList<>();
      for (int d = 0; d < days; d++) {
        if (knots.contains(MonthDay.from(start.plusDays(d)))) {
          noons.add(d + 0.5);
        }
      }
      double[] bends =
          new FlowEquations(
                  FlowState.of(BLOCK, 1, 2),
                  Schedule.of(scenario),
                  scenario.model(),
                  SimulatedColony.average(1))
              .bends();
      assertThat(bends).hasSize(noons.size());
      for (int i = 0; i < bends.length; i++) {
        assertThat(bends[i]).isCloseTo(noons.get(i), within(1e-9));
      }
    }
  }
}
