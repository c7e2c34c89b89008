package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.control.QueenCaging;
import broodtide.engine.DailyEngine;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.pages.Check;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The order of plans by the mites left at the end of the year, as beekeepers know it: untreated,
 * then drone comb alone or one dribble with brood, then a late-summer treatment, then oxalic acid
 * without brood. Common practice, no single source.
 */
@Tag("outside")
class TreatmentOrderTest {
  private static final LocalDate BEGIN = LocalDate.of(2001, 4, 1);
  private static final LocalDate MAY = LocalDate.of(2001, 5, 1);
  private static final LocalDate AUGUST = LocalDate.of(2001, 8, 10);
  private static final LocalDate DECEMBER = LocalDate.of(2001, 12, 10);
  private static final LocalDate CAGED = LocalDate.of(2001, 7, 5);

  private static final String PRACTICE = "common practice, no single source; bounds by choice";
  private static final String POOLED =
      "the dribble is fitted to all broodless trials together, 93.7 %, no longer to the best, 99.4"
          + " %";

  static Stream<Check> checks() {
    return Stream.of(
        weak("drone comb in May", "cool-maritime", MAY, "drone-comb"),
        weak("drone comb in May", "temperate", MAY, "drone-comb"),
        weak("one dribble with brood in August", "cool-maritime", AUGUST, "oxalic-dribble"),
        weak("one dribble with brood in August", "temperate", AUGUST, "oxalic-dribble")
            .missedBecause(POOLED),
        lateSummer("cool-maritime"),
        lateSummer("temperate"),
        winter("cool-maritime").missedBecause(POOLED),
        winter("temperate").missedBecause(POOLED));
  }

  private static Check weak(String what, String climate, LocalDate day, String control) {
    return Check.within(
        "mites at the end of the year after " + what + ", as a share of untreated, " + climate,
        "clearly fewer; 0.7 at most",
        0,
        0.7,
        PRACTICE,
        () -> mites(climate, Catalog.control(control).at(day)) / mites(climate));
  }

  private static Check lateSummer(String climate) {
    return Check.within(
        "mites after the worst late-summer treatment, as a share of the best of those two, "
            + climate,
        "fewer",
        0,
        1,
        PRACTICE,
        () -> Collections.max(lateSummerMites(climate)) / bestOfTheWeak(climate));
  }

  private static Check winter(String climate) {
    return Check.within(
        "mites after a broodless dribble in December, as a share of the best late-summer treatment,"
            + " "
            + climate,
        "fewer",
        0,
        1,
        PRACTICE,
        () ->
            mites(climate, Shipped.course("oxalic-dribble", DECEMBER))
                / Collections.min(lateSummerMites(climate)));
  }

  private static List<Double> lateSummerMites(String climate) {
    return Stream.of("formic-slow", "thymol", "amitraz-strips")
        .map(name -> mites(climate, Shipped.course(name, AUGUST)))
        .toList();
  }

  private static double bestOfTheWeak(String climate) {
    return Math.min(
        mites(climate, Catalog.control("drone-comb").at(MAY)),
        mites(climate, Shipped.course("oxalic-dribble", AUGUST)));
  }

  @ParameterizedTest
  @MethodSource("checks")
  void published(Check check) {
    check.verify();
  }

  /** Of the same substance, the broodless dribble beats the one with brood by far. */
  @ParameterizedTest
  @ValueSource(strings = {"cool-maritime", "temperate"})
  void cagingBeforeADribbleBeatsADribbleWithBrood(String climate) {
    double withBrood = mites(climate, Shipped.course("oxalic-dribble", CAGED.plusDays(25)));
    double caged =
        mites(
            climate,
            new QueenCaging("caged", CAGED, CAGED.plusDays(24)),
            Shipped.course("oxalic-dribble-caged", CAGED.plusDays(25)));
    double formic = mites(climate, Shipped.course("formic-slow", AUGUST));
    assertThat(caged).isLessThan(withBrood / 3).isLessThan(formic);
  }

  private static double mites(String climate, Control... controls) {
    LocalDate end = LocalDate.of(2001, 12, 31);
    return DailyEngine.run(
            Scenario.until(
                Shipped.model(climate), new Plan("order", List.of(controls)), BEGIN, end),
            SimulatedColony.average(0.05))
        .at(Quantity.MITES, end);
  }
}
