package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Member;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.StartState;
import broodtide.engine.Workers;
import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WinteringTest {
  private static final SpringLow LOW = new SpringLow(LocalDate.of(2022, 4, 20), 10_000);
  private static final Wintering PLAIN =
      Wintering.with(Map.of("weakest", 0.4, "spread", 0.5, "otherLosses", 0.2));

  /** Normal distribution by R 4.2.2: {@code pnorm(-log(c(10000, 4000, 2000)/4000)/0.5)}. */
  @ParameterizedTest
  @CsvSource({"10000, 0.0334324184", "4000, 0.5", "2000, 0.9171714810", "0, 1", "1e-300, 1"})
  void tooWeakFollowsALognormal(double adults, double chance) {
    assertThat(PLAIN.tooWeak(adults, LOW)).isCloseTo(chance, within(1e-8));
    assertThat(PLAIN.lost(adults, LOW)).isCloseTo(0.2 + 0.8 * chance, within(1e-8));
  }

  @Test
  void rangesAreChecked() {
    assertThatThrownBy(() -> Wintering.with(Map.of("otherLosses", 1.0)))
        .isInstanceOf(OutOfRange.class)
        .hasMessageContaining("otherLosses");
  }

  /**
   * Standard years are smallest as winter ends: later where it lasts longer. Common practice. In
   * the subtropics there is no winter to speak of, only a lull of the brood until March.
   */
  @ParameterizedTest
  @CsvSource({
    "boreal,2022-04-15,2022-05-15",
    "cold-continental,2022-04-05,2022-05-05",
    "temperate,2022-03-01,2022-04-05",
    "cool-maritime,2022-02-20,2022-03-31",
    "warm-temperate,2022-01-10,2022-02-15",
    "subtropical,2022-01-15,2022-03-31"
  })
  void theLowComesAsWinterEnds(String climate, LocalDate from, LocalDate to) {
    LocalDate autumn = LocalDate.of(2021, 9, 25);
    SpringLow low = SpringLow.after(Shipped.model(climate), autumn);
    assertThat(low.day()).isBetween(from, to);
    assertThat(low.adults()).isBetween(3_000.0, 15_000.0);
  }

  @Test
  void theLowIsHalfAYearLaterInTheSouth() {
    ColonyModel north = Shipped.model("temperate");
    ColonyModel south = ColonyModel.in(north.climate().inSouth());
    SpringLow there = SpringLow.after(south, LocalDate.of(2022, 3, 27));
    SpringLow here = SpringLow.after(north, LocalDate.of(2021, 9, 25));
    assertThat(there.day()).isBetween(here.day().plusDays(182), here.day().plusDays(183));
    assertThat(there.adults()).isCloseTo(here.adults(), within(20.0));
  }

  @Test
  void aRunGivesTheChanceOfEachMember() {
    LocalDate start = LocalDate.of(2021, 8, 1);
    ColonyModel model = Shipped.model("temperate");
    SpringLow low = SpringLow.after(model, start);
    List<Member> members = List.of(Member.average(0), Member.average(3), Member.average(20));
    Scenario season = Scenario.until(model, Plan.waiting("wait"), start, low.day());
    try (Workers workers = new Workers(1)) {
      EnsembleRun run =
          EnsembleRun.of(
              season,
              StartState.on(model, start),
              members,
              Set.of(Quantity.ADULTS),
              workers,
              Progress.NONE);
      double[] lost = PLAIN.lost(run, low);
      assertThat(lost).hasSize(3).isSorted();
      assertThat(lost[0]).isCloseTo(PLAIN.lost(low.adults(), low), within(1e-3));
      assertThat(lost[2]).isGreaterThan(0.99);
      SpringLow later = new SpringLow(low.day().plusDays(30), low.adults());
      assertThatThrownBy(() -> PLAIN.lost(run, later)).hasMessageContaining("lies outside");
    }
  }
}
