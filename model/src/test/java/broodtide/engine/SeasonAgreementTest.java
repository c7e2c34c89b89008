package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.control.Plan;
import broodtide.flow.FlowEngine;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Whole seasons: the flow engine approaches the daily engine as its chains grow. The untreated
 * colony starts with few mites: one that collapses before the end loses its bees within days, and
 * half a day between the engines is then much of what is left.
 */
class SeasonAgreementTest {
  private static final LocalDate START = LocalDate.of(2026, 3, 15);

  @Test
  void untreatedSeason() {
    agree(Plan.waiting("wait"), SimulatedColony.average(0.3), 100);
  }

  /** Mites that breed faster or slower from a day on, among them one within the lead. */
  @Test
  void seasonThatChanges() {
    List<SeasonChange> changes =
        List.of(
            new SeasonChange(START.minusDays(20), 0.8, 1),
            new SeasonChange(START.plusDays(75), 1.3, 1),
            new SeasonChange(START.plusDays(140), 0.6, 1));
    agree(Plan.waiting("wait"), SimulatedColony.average(0.3).changing(changes), 100);
  }

  /**
   * While no brood is capped mites die with their bees, and a little brood spares most of them; a
   * chain smears the ends of such a gap, so it takes a longer one to come as near.
   */
  @Test
  void seasonWithEveryControl() {
    agree(Plans.everything(START), SimulatedColony.average(0.7), 300);
  }

  /** In a colony that collapses, the engines agree on when it falls below a tenth of its peak. */
  @Test
  void collapse() {
    Scenario season =
        new Scenario(ColonyModel.in(Places.seasonal()), Plan.waiting("wait"), START, 300);
    Trajectory daily = DailyEngine.run(season, SimulatedColony.average(1.5));
    Trajectory flow = FlowEngine.run(season, SimulatedColony.average(1.5), 100, 1e-8).trajectory();
    assertThat(fallen(daily)).isBetween(150, 299);
    assertThat(Math.abs(fallen(daily) - fallen(flow))).as("days apart").isLessThanOrEqualTo(2);
  }

  private static int fallen(Trajectory t) {
    double[] adults = t.of(Quantity.ADULTS);
    double peak = Arrays.stream(adults).max().orElseThrow();
    int day = t.days();
    while (day > 0 && adults[day] < peak / 10) {
      day--;
    }
    return day;
  }

  private static void agree(Plan plan, SimulatedColony colony, int longest) {
    Scenario season = new Scenario(ColonyModel.in(Places.seasonal()), plan, START, 240);
    Trajectory daily = DailyEngine.run(season, colony);
    double coarse = worst(daily, FlowEngine.run(season, colony, 8, 1e-8).trajectory());
    double fine = worst(daily, FlowEngine.run(season, colony, 32, 1e-8).trajectory());
    double finest = worst(daily, FlowEngine.run(season, colony, longest, 1e-8).trajectory());
    assertThat(fine).isLessThan(coarse);
    assertThat(finest).isLessThan(fine);
    assertThat(finest).as("few per cent").isLessThan(0.04);
  }

  /**
   * Largest difference of all mites or adults on any month's end. Relative to the value, but not to
   * less than a tenth of the season's peak: where a treatment kills 999 in 1,000, the few left
   * depend on the last cells to open, which is where a chain and an exact delay differ by design.
   */
  private static double worst(Trajectory a, Trajectory b) {
    double worst = 0;
    for (Quantity q : new Quantity[] {Quantity.MITES, Quantity.ADULTS}) {
      double peak = Arrays.stream(a.of(q)).max().orElseThrow();
      for (int day = 30; day <= 240; day += 30) {
        double scale = Math.max(a.of(q)[day], peak / 10);
        worst = Math.max(worst, Math.abs(b.of(q)[day] - a.of(q)[day]) / scale);
      }
    }
    return worst;
  }
}
