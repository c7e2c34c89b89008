package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.EfficacyFit.Setting;
import broodtide.catalog.ControlTemplate.Against;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.MiteLedger;
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
import java.util.stream.Stream;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Oxalic acid while there is brood. Its hazard is fitted to broodless colonies alone, so these
 * trials are checks: what falls short with brood is the share of mites in capped cells, the brood
 * that opens later, and mites flown in before the follow-up.
 */
@Tag("outside")
class OxalicWithBroodTest {
  private static final LocalDate MID_AUGUST = LocalDate.of(2001, 8, 15);

  private static final String ONTARIO =
      "Thurston et al. 2025 (title and journal not noted), Ontario";
  private static final String SLOVENIA = "Gregorc & Planinc 2001, Slovenia";

  /**
   * When Ontario's follow-up came is not known; the COLOSS handbook asks for two weeks at least.
   *
   * <p>The three dribbles of Slovenia: 39.2, 40.7 and 52.3 % by solution, with 18.33 mites fallen a
   * day over the treatments and 0.52 a day before them; the next treatment named came on 28
   * October. The trial had few mites, so those flown in weigh: 5 a day is in the range of 2.5 to
   * 10.9 seen from July to November among many colonies (Frey & Rosenkranz 2014). Taken by choice:
   * a week between dribbles, efficacy reckoned with late October as the follow-up.
   */
  static Stream<Check> checks() {
    List<Check> checks = new ArrayList<>();
    for (int followUp : new int[] {14, 21, 28}) {
      checks.add(
          Check.within(
                  "efficacy of one oxalic dribble in mid-August, follow-up after "
                      + followUp
                      + " days, cold-continental",
                  "0.395 +- 0.043",
                  0.395 - 0.043,
                  0.395 + 0.043,
                  ONTARIO,
                  () -> oneDribbleInMidAugust(followUp))
              .missedBecause(
                  "the dribble is fitted to all broodless trials together, 93.7 %, no longer to the"
                      + " best, 99.4 %"));
    }
    checks.add(
        Check.within(
            "efficacy of three oxalic dribbles in August, 5 mites a day flying in, temperate",
            "0.392, 0.407 and 0.523 by solution",
            0.392,
            0.523,
            SLOVENIA,
            () -> efficacy(august(5, infestationFor(5)))));
    checks.add(
        Check.within(
                "mites dying on bees a day before them, temperate",
                "0.52 fallen; 0.1 either way by choice",
                0.42,
                0.62,
                SLOVENIA,
                () -> fallenBefore(august(5, infestationFor(5))))
            .missedBecause(
                "with brood mites leave dying bees; mites groomed off or lost with cappings fall,"
                    + " too, and are booked as dead in cells"));
    checks.add(
        Check.within(
                "efficacy of the three dribbles if nothing flew in, temperate",
                "0.392, 0.407 and 0.523 by solution",
                0.392,
                0.523,
                SLOVENIA,
                () -> efficacy(august(0, infestationFor(0))))
            .missedBecause("mites flown in before the follow-up are what the trial saw"));
    return checks.stream();
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  private static double oneDribbleInMidAugust(int followUp) {
    Setting ontario =
        Setting.quiet(
            Shipped.model("cold-continental"), MID_AUGUST, false, followUp, Against.FOLLOWUP);
    return EfficacyFit.efficacy(Shipped.course("oxalic-dribble", MID_AUGUST), ontario);
  }

  /**
   * One short treatment that reaches mites on bees alone takes well under half in full brood.
   * Common practice, no source.
   */
  @ParameterizedTest
  @CsvSource({
    "oxalic-dribble,cool-maritime",
    "oxalic-dribble,temperate",
    "oxalic-dribble,cold-continental",
    "oxalic-vapour,cool-maritime",
    "oxalic-vapour,temperate",
    "lactic-spray,temperate"
  })
  void onceInFullBroodWellUnderHalf(String name, String climate) {
    LocalDate june = LocalDate.of(2001, 6, 15);
    Setting fullBrood = Setting.quiet(Shipped.model(climate), june, false, 14, Against.FOLLOWUP);
    assertThat(EfficacyFit.efficacy(Shipped.course(name, june), fullBrood)).isBetween(0.1, 0.42);
  }

  /** Order: once with brood < three times with brood < broodless (Gregorc & Planinc 2001). */
  @Test
  void broodlessTakesFarMoreThanThreeTimesWithBrood() {
    ColonyModel slovenia = Shipped.model("temperate");
    Setting withBrood = Setting.quiet(slovenia, MID_AUGUST, false, 28, Against.FOLLOWUP);
    double once = EfficacyFit.efficacy(Shipped.course("oxalic-dribble", MID_AUGUST), withBrood);
    double thrice = EfficacyFit.efficacy(weekly(MID_AUGUST), withBrood);
    double broodless =
        EfficacyFit.efficacy(
            Shipped.course("oxalic-dribble", MID_AUGUST),
            Setting.quiet(slovenia, MID_AUGUST, true, 28, Against.FOLLOWUP));
    assertThat(once).isLessThan(thrice - 0.2);
    assertThat(thrice).isLessThan(broodless - 0.1);
  }

  private static final LocalDate FIRST = LocalDate.of(2001, 8, 5);
  private static final LocalDate FOLLOW_UP = LocalDate.of(2001, 10, 28);
  private static final LocalDate BEGIN = LocalDate.of(2001, 7, 5);

  private static MiticideCourse weekly(LocalDate start) {
    return new MiticideCourse("weekly", Shipped.substance("oxalic-dribble"), start, 3, 7);
  }

  private static Trajectory august(double flownIn, double infestation) {
    Immigration apiary =
        new Immigration(
            List.of(
                new Immigration.Window(
                    new YearSpan(MonthDay.of(7, 1), MonthDay.of(11, 30)), flownIn)));
    ColonyModel slovenia = Shipped.model("temperate").with(apiary);
    Plan plan = new Plan("three dribbles", List.of(weekly(FIRST)));
    return DailyEngine.run(
        Scenario.until(slovenia, plan, BEGIN, FOLLOW_UP.minusDays(1)),
        SimulatedColony.average(infestation));
  }

  /** The infestation at the start with which 18.33 mites a day fall over three weeks. */
  private static double infestationFor(double flownIn) {
    return new BrentSolver(1e-6)
        .solve(200, x -> august(flownIn, x).ledger().killed() - 18.33 * 21, 0.001, 5);
  }

  private static double efficacy(Trajectory trial) {
    double killed = trial.ledger().killed();
    return killed / (killed + trial.at(Quantity.MITES, FOLLOW_UP));
  }

  private static double fallenBefore(Trajectory trial) {
    int first = Math.toIntExact(FIRST.toEpochDay() - BEGIN.toEpochDay());
    MiteLedger week = trial.ledger(first - 7);
    return (trial.ledger(first).diedOnBees() - week.diedOnBees()) / 7;
  }
}
