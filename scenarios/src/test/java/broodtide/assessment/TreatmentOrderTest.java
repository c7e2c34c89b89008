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
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
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

  @ParameterizedTest
  @ValueSource(strings = {"cool-maritime", "temperate"})
  void mitesAtTheEndOfTheYear(String climate) {
    double untreated = mites(climate);
    Map<String, Double> weak =
        Map.of(
            "drone comb", mites(climate, Catalog.control("drone-comb").at(MAY)),
            "one dribble", mites(climate, Shipped.course("oxalic-dribble", AUGUST)));
    Map<String, Double> lateSummer =
        Map.of(
            "formic", mites(climate, Shipped.course("formic-slow", AUGUST)),
            "thymol", mites(climate, Shipped.course("thymol", AUGUST)),
            "amitraz", mites(climate, Shipped.course("amitraz-strips", AUGUST)));
    double winter = mites(climate, Shipped.course("oxalic-dribble", DECEMBER));

    assertThat(weak.values()).allSatisfy(m -> assertThat(m).isLessThan(0.7 * untreated));
    assertThat(lateSummer.values())
        .as("%s against %s", lateSummer, weak)
        .allSatisfy(m -> assertThat(m).isLessThan(Collections.min(weak.values())));
    assertThat(winter).isLessThan(Collections.min(lateSummer.values()));
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
