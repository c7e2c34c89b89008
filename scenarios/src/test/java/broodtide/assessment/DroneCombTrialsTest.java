package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.control.DroneCombRemoval;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Trajectory;
import broodtide.mite.Immigration;
import broodtide.pages.Check;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleSupplier;
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Drone comb as a trap for mites. */
@Tag("outside")
class DroneCombTrialsTest {
  private static final LocalDate BEGIN = LocalDate.of(2013, 4, 1);
  private static final ColonyModel SUSSEX = Shipped.model("cool-maritime");

  private static final LocalDate MAY = LocalDate.of(2013, 5, 2);
  private static final LocalDate JUNE = LocalDate.of(2013, 6, 3);
  private static final LocalDate END = LocalDate.of(2013, 6, 28);
  private static final String SUSSEX_TRIAL = "Al Toufailia & Ratnieks, southern England";

  /**
   * Two test frames in 20 colonies, 2 May to 3 June and 3 June to 28 June 2013: all capped drone
   * cells were in the frame, 14 and 11 % of all capped cells, and held 44 and 48 % of all mites, 46
   * % on average; a drone cell held 13 times the mites of a worker cell. Two to three removals a
   * season are held for the comb of which part of the drone brood is taken, where a few mites fly
   * in (2.3 a day, Frey & Rosenkranz 2014, sparse apiaries).
   */
  static Stream<Check> checks() {
    List<Check> checks = new ArrayList<>();
    checks.add(
        share(
            "a month of drone comb in May, 14 % of capped cells drone",
            DroneCombTrialsTest::inMay, "0.44"));
    checks.add(
        share("a month of drone comb in June, 11 % drone", DroneCombTrialsTest::inJune, "0.48")
            .missedBecause(
                "in the trial fewer drone cells held more mites, which the model cannot do"));
    checks.add(share("drone comb, mean of both months", () -> (inMay() + inJune()) / 2, "0.46"));
    checks.add(
        Check.within(
            "mites in a drone cell per mite in a worker cell, early June, cool-maritime",
            "13; 2 either way by choice",
            11,
            15,
            SUSSEX_TRIAL,
            () -> preference(trap(MAY, JUNE, 0.14), JUNE)));
    for (String climate : List.of("temperate", "cool-maritime")) {
      for (int removals : new int[] {2, 3}) {
        checks.add(
            Check.within(
                "share of mites fewer on 1 August after "
                    + removals
                    + " removals of part of the drone brood, "
                    + climate,
                "up to 0.50; 0.25 or more by choice",
                0.25,
                0.50,
                "Bienengesundheitsdienst, apiservice, Switzerland, leaflet 1.4.1",
                () -> severalRemovals(climate, removals)));
      }
    }
    return checks.stream();
  }

  private static Check share(String what, DoubleSupplier measured, String published) {
    return Check.within(
        "share of mites in " + what + ", cool-maritime",
        published + "; the trial's months 0.44 to 0.48",
        0.44,
        0.48,
        SUSSEX_TRIAL,
        measured);
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  /** The shipped drone comb gives the capped drone share of the trial, 11 to 14 %. */
  @Test
  void shippedDroneCombGivesTheTrialsDroneShare() {
    LocalDate in = LocalDate.of(2013, 5, 5);
    LocalDate out = in.plusDays(28);
    double share = Shipped.control(DroneCombRemoval.class, "drone-comb").droneShare();
    assertThat(cappedShare(run(SUSSEX, in, List.of(out), 1, share), out)).isBetween(0.11, 0.14);
  }

  private static double inMay() {
    return trapped(trap(MAY, JUNE, 0.14), JUNE);
  }

  private static double inJune() {
    return trapped(trap(JUNE, END, 0.11), END);
  }

  private static double severalRemovals(String climate, int removals) {
    DroneCombRemoval part = Shipped.control(DroneCombRemoval.class, "drone-comb-part");
    Immigration sparse =
        new Immigration(
            List.of(
                new Immigration.Window(new YearSpan(MonthDay.of(6, 1), MonthDay.of(9, 30)), 2.3)));
    ColonyModel model = Shipped.model(climate).with(sparse);
    LocalDate in = LocalDate.of(2013, 5, 1);
    List<LocalDate> cuts = part.startingOn(in).cuts().subList(0, removals);
    Trajectory cut = run(model, in, cuts, part.taken(), part.droneShare());
    Trajectory left = run(model, Plan.waiting("left alone"));
    LocalDate august = LocalDate.of(2013, 8, 1);
    return 1 - cut.at(Quantity.MITES, august) / left.at(Quantity.MITES, august);
  }

  /**
   * A comb from foundation to the cut, laid in so that drones are a given share of capped cells.
   */
  private static Trajectory trap(LocalDate in, LocalDate out, double cappedDrone) {
    double share =
        new BrentSolver(1e-6)
            .solve(
                100,
                x -> cappedShare(run(SUSSEX, in, List.of(out), 1, x), out) - cappedDrone,
                0.05,
                0.3);
    return run(SUSSEX, in, List.of(out), 1, share);
  }

  private static double cappedShare(Trajectory t, LocalDate day) {
    double drones = t.at(Quantity.DRONE_CELLS, day);
    return drones / (drones + t.at(Quantity.WORKER_CELLS, day));
  }

  private static double trapped(Trajectory t, LocalDate day) {
    return t.at(Quantity.MITES_IN_DRONE_CELLS, day) / t.at(Quantity.MITES, day);
  }

  private static double preference(Trajectory t, LocalDate day) {
    double inDrone = t.at(Quantity.MITES_IN_DRONE_CELLS, day);
    double inWorker = t.at(Quantity.MITES_IN_CELLS, day) - inDrone;
    return (inDrone / t.at(Quantity.DRONE_CELLS, day))
        / (inWorker / t.at(Quantity.WORKER_CELLS, day));
  }

  private static Trajectory run(
      ColonyModel model, LocalDate in, List<LocalDate> cuts, double taken, double share) {
    return run(
        model,
        new Plan("trap", List.of(new DroneCombRemoval("drone comb", in, cuts, taken, share))));
  }

  private static Trajectory run(ColonyModel model, Plan plan) {
    return DailyEngine.run(new Scenario(model, plan, BEGIN, 150), SimulatedColony.average(0.5));
  }
}
