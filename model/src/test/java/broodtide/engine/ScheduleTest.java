package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.control.Plan;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a solver must stop: the dates of a plan, found from the plan's own words. */
class ScheduleTest {
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6})
  void stopsOnEveryDayOnWhichThePlanChangesAndOnNoOther(int seed) {
    DrawnSeason drawn = new DrawnSeason(seed, 2);
    Scenario s =
        new Scenario(
            ColonyModel.in(Places.constant(1200, 0.05)).with(drawn.scenario.model().immigration()),
            drawn.scenario.plan(),
            DrawnSeason.START,
            DrawnSeason.DAYS);
    PlainCalendar calendar = new PlainCalendar(s, drawn.members.get(0));
    List<Integer> expected = new ArrayList<>();
    for (int t = 1; t < s.days(); t++) {
      LocalDate day = s.start().plusDays(t);
      PlainColony.Day d = calendar.on(day);
      boolean happens = d.beesStaying() * d.broodStaying() * d.droneBroodKept() < 1;
      if (happens || !lasting(d).equals(lasting(calendar.on(day.minusDays(1))))) {
        expected.add(t);
      }
    }
    expected.add(s.days());
    assertThat(stops(s)).isEqualTo(expected);
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 30})
  void anEmptyPlanStopsAtTheEndAlone(int days) {
    assertThat(
            stops(
                new Scenario(
                    ColonyModel.in(Places.seasonal()),
                    Plan.waiting("wait"),
                    DrawnSeason.START,
                    days)))
        .containsExactly(days);
  }

  private static List<Integer> stops(Scenario s) {
    Schedule schedule = Schedule.of(s);
    List<Integer> found = new ArrayList<>();
    for (int t = schedule.nextBreak(0); t < s.days(); t = schedule.nextBreak(t)) {
      found.add(t);
    }
    found.add(s.days());
    return found;
  }

  /** What holds from day to day, without a requeening's slow change of stock. */
  private static List<Double> lasting(PlainColony.Day d) {
    return List.of(
        d.eggs(),
        d.droneShare(),
        d.arriving(),
        d.killOnBees(),
        d.killInCells(),
        d.beeCost(),
        d.broodKept());
  }
}
