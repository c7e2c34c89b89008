package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The table is held to a growth that can be turned round with pen and paper. */
class LeadOutcomesTest {
  private static final double HIGHEST = 300;

  /** What an infestation grows to, less as it harms the bees; what comes in counts for 0.3. */
  private static double then(SimulatedColony m) {
    double first = m.infestation() + 0.3 * m.immigration();
    double growth = Math.exp(1 + m.vigour());
    return growth * first / (1 + harm(m.vigour(), m.infectivity()) * first);
  }

  /** Share of the growth that each mite per 100 bees on the first day costs. */
  private static double harm(double vigour, double infectivity) {
    return 0.002 * (1 + vigour) * (1 + infectivity);
  }

  private static double first(double then, double vigour, double infectivity) {
    return then / (Math.exp(1 + vigour) - harm(vigour, infectivity) * then);
  }

  private static LeadOutcomes table() {
    return new LeadOutcomes(
        HIGHEST, members -> members.stream().mapToDouble(LeadOutcomesTest::then).toArray());
  }

  @Test
  void theFirstDayIsReadBetweenThePlacesOfTheTable() {
    LeadOutcomes table = table();
    SplittableRandom random = new SplittableRandom(5);
    for (int i = 0; i < 2000; i++) {
      double vigour = 3 * random.nextDouble();
      double infectivity = random.nextDouble();
      double wanted = 0.001 * Math.pow(50_000, random.nextDouble());
      double expected = first(wanted, vigour, infectivity);
      assertThat(table.firstDay(wanted, vigour, infectivity))
          .as("%s at vigour %s and infectivity %s", wanted, vigour, infectivity)
          .isCloseTo(expected, within(1e-3 * expected));
    }
  }

  @Test
  void fewMitesFromOutsideStandForThoseOfTheFirstDay() {
    for (double vigour : new double[] {0, 0.4, 1, 1.7, 3}) {
      assertThat(table().arrivals(vigour)).isCloseTo(0.3, within(0.003));
    }
  }

  @Test
  void coloniesThatBreakDownEndTheTable() {
    LeadOutcomes table =
        new LeadOutcomes(
            HIGHEST,
            members ->
                members.stream()
                    .mapToDouble(m -> Math.min(20, 2 * m.infestation()) - 0.01 * m.infestation())
                    .toArray());
    assertThat(table.firstDay(5, 1, 0.8)).isCloseTo(5 / 1.99, within(0.05));
    assertThat(table.firstDay(100, 1, 0.8)).isBetween(10.0, HIGHEST);
  }

  @Test
  void oneColonyStandsAloneInTheSearch() {
    StandardColony start =
        StandardColony.on(ColonyModel.in(Places.seasonal()), LocalDate.of(2026, 6, 1));
    for (double infestation : new double[] {0, 1e-4, 0.5, 7, 60, 290}) {
      SimulatedColony m = new SimulatedColony(1.1, 0.8, infestation, 1.3, 2, 0.35, List.of());
      ColonyBlock block = start.colonies(List.of(m));
      assertThat(Quantity.INFESTATION.of(block, 0))
          .isCloseTo(infestation, within(1e-9 * infestation));
    }
  }

  @Test
  void aStartThatIsAboutRightHasTheInfestationAndNearlyTheSameBees() {
    StandardColony start =
        StandardColony.on(ColonyModel.in(Places.seasonal()), LocalDate.of(2026, 6, 1));
    List<SimulatedColony> members =
        List.of(
            new SimulatedColony(1, 1.2, 0.3, 0.8, 1, 0.9, List.of()),
            new SimulatedColony(1, 0.7, 12, 1.6, 3, 0.1, List.of()));
    ColonyBlock exact = start.colonies(members);
    ColonyBlock about = start.about().colonies(members);
    for (int l = 0; l < members.size(); l++) {
      double wanted = members.get(l).infestation();
      assertThat(Quantity.INFESTATION.of(about, l)).isCloseTo(wanted, within(1e-9 * wanted));
      assertThat(about.adults(l)).isCloseTo(exact.adults(l), within(3e-3 * exact.adults(l)));
    }
  }
}
