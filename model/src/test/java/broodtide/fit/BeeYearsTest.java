package broodtide.fit;

import static broodtide.fit.Invented.START;
import static broodtide.fit.Invented.posterior;
import static broodtide.fit.Invented.season;
import static broodtide.fit.Invented.strips;
import static broodtide.fit.Invented.wash;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.Places;
import broodtide.engine.Scenario;
import broodtide.engine.SeasonChange;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.stat.StatUtils;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** Growth so far and to come, late reinvasion, and what begins anew in spring. */
class BeeYearsTest {
  private static final Workers TWO = new Workers(2);
  private static final LocalDate MARCH = LocalDate.of(2026, 3, 1);
  private static final LocalDate AUGUST = LocalDate.of(2025, 8, 1);

  @AfterAll
  static void close() {
    TWO.close();
  }

  @Test
  void theYearIsCutWhereSomethingBeginsAnew() {
    LocalDate seen = START.plusDays(40);
    BeeYears years = BeeYears.of(season(365), seen);
    assertThat(years.starts()).containsExactly(MARCH);
    assertThat(years.seen()).isZero();
    assertThat(years.stretches().stream().map(BeeYears.Stretch::from))
        .containsExactly(START.minusDays(60), seen, AUGUST, LocalDate.of(2025, 12, 1), MARCH);
    assertThat(years.stretches().stream().filter(BeeYears.Stretch::late)).hasSize(1);
    assertThat(years.late(0, START, AUGUST)).isFalse();
    assertThat(years.late(0, START, AUGUST.plusDays(1))).isTrue();
    assertThat(years.late(0, LocalDate.of(2025, 12, 1), MARCH)).isFalse();
  }

  @Test
  void theSouthIsHalfAYearLater() {
    ColonyModel south = ColonyModel.in(Places.seasonal().inSouth());
    LocalDate start = LocalDate.of(2025, 12, 20);
    BeeYears years = BeeYears.of(new Scenario(south, Plan.waiting("w"), start, 365), start);
    assertThat(years.starts()).containsExactly(LocalDate.of(2026, 9, 1));
    assertThat(years.late(0, start, LocalDate.of(2026, 2, 1))).isFalse();
    assertThat(years.late(0, start, LocalDate.of(2026, 2, 2))).isTrue();
    assertThat(BeeYears.year(true, start)).isEqualTo(2025);
    assertThat(BeeYears.year(true, LocalDate.of(2026, 8, 31))).isEqualTo(2025);
  }

  /** Spreads of growth, before any wash: as they are said to be, with the correlation said. */
  @Test
  void growthSoFarAndToComeAreAsWideAsSaid() {
    SeasonPosterior p = posterior(season(60), List.of(), 4096, 1, TWO);
    List<SimulatedColony> colonies = p.members();
    double[] before = new double[colonies.size()];
    double[] after = new double[before.length];
    for (int i = 0; i < before.length; i++) {
      SimulatedColony m = colonies.get(i);
      SeasonChange change = m.changeOn(START);
      before[i] = Math.log(m.vigour());
      after[i] = before[i] + Math.log(change.growth());
    }
    // no factor is above 3, which cuts the upper 1.4 % and takes a little of the spread
    assertThat(Math.sqrt(StatUtils.variance(before))).isCloseTo(0.5, within(0.01));
    assertThat(Math.sqrt(StatUtils.variance(after))).isCloseTo(0.5, within(0.015));
    assertThat(new PearsonsCorrelation().correlation(before, after)).isCloseTo(0.25, within(0.03));
  }

  /** A fast year before the winter says nothing of the next, and each year has its own answer. */
  @Test
  void everySpringHasItsOwnGrowth() {
    List<Wash> washes = new ArrayList<>();
    int[] days = {0, 31, 61, 380, 410, 440};
    int[] mites = {1, 5, 26, 6, 7, 8};
    for (int i = 0; i < days.length; i++) {
      washes.add(wash(days[i], mites[i], 300));
    }
    SeasonPosterior p = posterior(season(470, strips(75)), washes, 1024, 3, TWO);
    List<UnknownSummary> growth =
        p.summaries().stream().filter(s -> s.unknown() == Unknown.REPRODUCTION_FACTOR).toList();
    assertThat(growth).hasSize(2);
    assertThat(growth.get(0).median()).isGreaterThan(1.15);
    assertThat(growth.get(1).median()).isLessThan(0.9);
    assertThat(growth.get(1).season()).isOne();
    assertThat(p.seasonStart(1)).isEqualTo(MARCH);
  }

  /** What lies ahead is drawn for all colonies; a part of them keeps its draws. */
  @Test
  void aPartKeepsItsDraws() {
    SeasonPosterior whole = posterior(season(500), List.of(wash(0, 3, 300)), 128, 1, TWO);
    SeasonPosterior part = whole.thinned(32);
    assertThat(part.members()).isEqualTo(whole.members().subList(0, 32));
    assertThat(SharedDraws.of(whole, season(500), START.plusDays(450)))
        .extracting(SharedDraws::what)
        .containsExactly(
            "growthToCome 2025",
            "reproductionFactor 2025",
            "lateReinvasion 2025",
            "reproductionFactor 2026");
    assertThat(SharedDraws.of(whole, season(500), START.plusDays(30)))
        .extracting(SharedDraws::what)
        .containsExactly("growthToCome 2025", "reproductionFactor 2025");
  }
}
