package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.control.QueenCaging;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Trajectory;
import broodtide.mite.Immigration;
import broodtide.pages.Check;
import broodtide.pages.Figures;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A caged queen and oxalic acid once the brood is out. */
@Tag("outside")
class CagingWithOxalicTest {
  private static final LocalDate CAGED = LocalDate.of(2001, 7, 1);
  private static final LocalDate BEGIN = CAGED.minusDays(30);

  /**
   * Caging for 21 to 25 days with oxalic acid. Mites from outside at both ends of the 1.6 to 13.7 a
   * day seen from June to early August (Greatti et al. 1992); follow-up two to four weeks later by
   * choice.
   */
  static Stream<Check> checks() {
    return Stream.of(
        caging("oxalic-dribble-caged", "temperate", 21, 1.6, 14),
        caging("oxalic-dribble-caged", "temperate", 21, 13.7, 28),
        caging("oxalic-dribble-caged", "temperate", 25, 1.6, 14),
        caging("oxalic-dribble-caged", "cool-maritime", 25, 13.7, 28),
        caging("oxalic-dribble-caged", "warm-temperate", 23, 1.6, 28),
        caging("oxalic-vapour", "temperate", 21, 1.6, 14)
            .missedBecause("vapour is pooled with sprays, 95.2 %; in this trial it took 88.3 %"),
        caging("oxalic-vapour", "temperate", 25, 13.7, 28),
        caging("oxalic-vapour", "warm-temperate", 21, 13.7, 14));
  }

  private static Check caging(String name, String climate, int days, double flownIn, int followUp) {
    return Check.within(
        "efficacy of "
            + days
            + " days of caging and "
            + name
            + ", "
            + Figures.of(flownIn, 3)
            + " mites a day flying in, follow-up after "
            + followUp
            + " days, "
            + climate,
        "0.48 to 0.90 by way of caging",
        0.48,
        0.90,
        "Buchler et al. 2020, ten countries",
        () -> taken(name, climate, days, flownIn, followUp));
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  private static double taken(String name, String climate, int days, double flownIn, int followUp) {
    LocalDate treated = CAGED.plusDays(days);
    Trajectory t =
        run(
            climate,
            flownIn,
            treated.plusDays(followUp),
            caged(days),
            Shipped.course(name, treated));
    double killed = t.ledger().killed();
    return killed / (killed + t.at(Quantity.MITES, treated.plusDays(followUp)));
  }

  /**
   * 21 days let the workers out, 24 the drones: after 25 days no mite is under a capping, after 21
   * those in drone brood are. Handbook figures, common practice.
   */
  @Test
  void broodlessTreatmentsReachNearlyAllMites() {
    assertThat(shareOnBees(25)).isGreaterThan(0.99);
    assertThat(shareOnBees(21)).isBetween(0.9, 0.99);
    assertThat(shareOnBees(1)).isLessThan(0.45);
  }

  private static double shareOnBees(int days) {
    LocalDate released = CAGED.plusDays(days);
    return run("cool-maritime", 0, released, caged(days)).at(Quantity.SHARE_ON_BEES, released);
  }

  private static QueenCaging caged(int days) {
    return new QueenCaging("queen caged", CAGED, CAGED.plusDays(days - 1L));
  }

  private static Trajectory run(
      String climate, double flownIn, LocalDate end, Control... controls) {
    Immigration robbed =
        new Immigration(
            List.of(
                new Immigration.Window(
                    new YearSpan(MonthDay.of(6, 1), MonthDay.of(8, 31)), flownIn)));
    ColonyModel model = Shipped.model(climate).with(robbed);
    return DailyEngine.run(
        Scenario.until(model, new Plan("caged", List.of(controls)), BEGIN, end.minusDays(1)),
        SimulatedColony.average(1));
  }
}
