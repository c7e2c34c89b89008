package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.colony.BeeRates;
import broodtide.control.Plan;
import broodtide.flow.FlowEngine;
import broodtide.mite.MiteRates;
import broodtide.mite.Renewal;
import broodtide.pages.Check;
import broodtide.pages.Figures;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * In constant surroundings and with few mites each engine grows at the root of its own renewal
 * (Euler-Lotka) equation. The roots are found without running an engine.
 */
@Tag("outside")
public class RenewalCheckTest {
  private static final LocalDate START = LocalDate.of(2026, 1, 1);
  private static final SimulatedColony FEW = SimulatedColony.average(1e-3);

  /** Checks for the page, too. */
  public static Stream<Check> checks() {
    List<Check> checks = new ArrayList<>();
    checks.add(daily(1500, 0.04));
    checks.add(daily(900, 0));
    checks.add(daily(2200, 0.12));
    for (int stages : new int[] {1, 3, 12, 40}) {
      checks.add(flow(stages));
    }
    return checks.stream();
  }

  private static Check daily(double laying, double droneShare) {
    ColonyModel model = uncrowded(laying, droneShare);
    Scenario scenario = new Scenario(model, Plan.waiting("wait"), START, 800);
    Trajectory t = DailyEngine.run(scenario, FEW);
    double[] mites = t.of(Quantity.MITES_ON_BEES);
    return root(
        String.format(
            Locale.ROOT,
            "mites' growth factor a day, daily engine, %.0f eggs a day, %.0f %% drones",
            laying,
            100 * droneShare),
        surroundings(model, t, 800).daily(),
        mites[800] / mites[799]);
  }

  private static Check flow(int stages) {
    ColonyModel model = uncrowded(1500, 0.04);
    Scenario scenario = new Scenario(model, Plan.waiting("wait"), START, 1400);
    Trajectory t = FlowEngine.run(scenario, FEW, stages, 1e-12).trajectory();
    double[] mites = t.of(Quantity.MITES_ON_BEES);
    return root(
        "mites' growth rate, flow engine, chains of " + stages + ", 1/day",
        surroundings(model, t, 1400).chained(stages),
        Math.log(mites[1400] / mites[1300]) / 100);
  }

  private static Check root(String what, double root, double grown) {
    return Check.within(
        what,
        Figures.of(root, 9) + ", the root",
        root - 1e-9,
        root + 1e-9,
        "renewal (Euler-Lotka) equation, solved without running an engine",
        () -> grown);
  }

  @ParameterizedTest
  @MethodSource("checks")
  void eachEngineGrowsAtItsRoot(Check check) {
    check.verify();
  }

  @Test
  void longerChainsApproachTheDelay() {
    ColonyModel model = uncrowded(1500, 0.04);
    Scenario scenario = new Scenario(model, Plan.waiting("wait"), START, 700);
    double previous = Double.POSITIVE_INFINITY;
    for (int stages : new int[] {4, 16, 64}) {
      Trajectory t = FlowEngine.run(scenario, FEW, stages, 1e-10).trajectory();
      double[] mites = t.of(Quantity.MITES_ON_BEES);
      double error =
          Math.abs(Math.log(mites[700] / mites[699]) - surroundings(model, t, 700).delayed());
      assertThat(error).isLessThan(previous / 3);
      previous = error;
    }
    assertThat(previous).isLessThan(2e-4);
  }

  /** Mites that neither crowd nor shorten a life act as few mites do, however many they become. */
  private static ColonyModel uncrowded(double laying, double droneShare) {
    return ColonyModel.in(Places.constant(laying, droneShare))
        .with(MiteRates.with(Map.of("workerCrowding", 0.0, "droneCrowding", 0.0)))
        .with(
            BeeRates.with(
                Map.of("adultInfections", 0.0, "cappedDeathPerMite", 0.0, "overtDeath", 1.0)));
  }

  /**
   * Brood per bee as the run has it, where as many bees die as are born; the growth that follows is
   * the renewal equation's alone.
   */
  private static Renewal surroundings(ColonyModel model, Trajectory t, int day) {
    BeeRates bees = model.bees();
    MiteRates mites = model.mites();
    double perBee = bees.beesPerGram() / t.of(Quantity.ADULTS)[day];
    double cells = t.of(Quantity.WORKER_CELLS)[day];
    double worker = cells / 12 * perBee;
    double drone = t.of(Quantity.DRONE_CELLS)[day] / 14 * perBee;
    double born = cells / 12 / t.of(Quantity.ADULTS)[day];
    return Renewal.of(mites, worker, drone, born, 1);
  }
}
