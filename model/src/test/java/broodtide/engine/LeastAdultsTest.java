package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Plan;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The running minimum of adults, from a block and from a finished run. */
class LeastAdultsTest {
  private static final LocalDate START = LocalDate.of(2026, 8, 1);
  private static final int DAYS = 330;
  private static final Scenario SEASON =
      new Scenario(ColonyModel.in(Places.seasonal()), Plan.waiting("wait"), START, DAYS);
  private static final List<SimulatedColony> MEMBERS =
      List.of(SimulatedColony.average(0.2), SimulatedColony.average(4));

  @Test
  void itIsTheLeastSinceItsDayOn() {
    StandardColony start = StandardColony.on(SEASON.model(), START);
    double[][] adults = new double[DAYS + 1][2];
    LeastAdults sinceStart = new LeastAdults(2, 0);
    LeastAdults sinceMay = new LeastAdults(2, 280);
    assertThat(sinceMay.of(0)).isInfinite();
    DailyEngine.of(SEASON, start, MEMBERS)
        .run(
            (day, view) -> {
              sinceStart.see(day, view);
              sinceMay.see(day, view);
              adults[day][0] = view.adults(0);
              adults[day][1] = view.adults(1);
            });
    try (Workers workers = new Workers(1)) {
      EnsembleRun run =
          EnsembleRun.of(
              SEASON,
              start,
              MEMBERS,
              Watched.daily(Set.of(Quantity.ADULTS)),
              workers,
              Progress.NONE);
      LocalDate end = START.plusDays(DAYS);
      for (int l = 0; l < 2; l++) {
        int lane = l;
        double all = Arrays.stream(adults).mapToDouble(row -> row[lane]).min().orElseThrow();
        double late =
            Arrays.stream(adults).skip(280).mapToDouble(row -> row[lane]).min().orElseThrow();
        assertThat(sinceStart.of(l)).isEqualTo(all);
        assertThat(sinceMay.of(l)).isEqualTo(late).isGreaterThan(all);
        assertThat(run.least(Quantity.ADULTS, START, end)[l]).isCloseTo(all, within(1e-6 * all));
        assertThat(run.least(Quantity.ADULTS, START.plusDays(280), end)[l])
            .isCloseTo(late, within(1e-6 * late));
      }
    }
  }
}
