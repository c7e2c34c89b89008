package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Percentage.withPercentage;

import broodtide.catalog.Catalog;
import broodtide.engine.Workers;
import broodtide.season.Climate;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What one count leads to. */
class CountOutlookTest {
  private static final Climate TEMPERATE = Catalog.climate("temperate");

  private static Optional<CountOutlook.Ahead> of(LocalDate day, int mites) {
    try (Workers workers = new Workers(2)) {
      return CountOutlook.of(
              Wash.of(day, "A", mites, 300), TEMPERATE, Catalog.threshold("kulhanek-2021"), workers)
          .ahead();
    }
  }

  @Test
  void moreMitesInJulyAreMoreInAutumn() {
    LocalDate july = LocalDate.of(2026, 7, 15);
    CountOutlook.Ahead few = of(july, 1).orElseThrow();
    CountOutlook.Ahead many = of(july, 9).orElseThrow();
    assertThat(few.day()).isEqualTo(LocalDate.of(2026, 10, 5));
    assertThat(many.infestation().median()).isGreaterThan(2 * few.infestation().median());
    assertThat(few.infestation().q05()).isLessThan(few.infestation().median());
    assertThat(many.infestation().median()).isGreaterThan(3);
  }

  /** South of the equator all that belongs to the calendar is half a year later. */
  @Test
  void mitesFlyInByTheCalendarOfThePlace() {
    LocalDate january = LocalDate.of(2026, 1, 13);
    CountOutlook south;
    try (Workers workers = new Workers(2)) {
      south =
          CountOutlook.of(
              Wash.of(january, "A", 3, 300),
              TEMPERATE.inSouth(),
              Catalog.threshold("kulhanek-2021"),
              workers);
    }
    assertThat(south.colony().model().immigration().on(LocalDate.of(2026, 3, 1))).isPositive();
    assertThat(south.colony().model().immigration().on(LocalDate.of(2026, 9, 1))).isZero();
    CountOutlook.Ahead north = of(LocalDate.of(2026, 7, 15), 3).orElseThrow();
    CountOutlook.Ahead here = south.ahead().orElseThrow();
    assertThat(here.infestation().median())
        .isCloseTo(north.infestation().median(), withPercentage(5));
  }

  @Test
  void nothingIsSaidOnceTheWinterBeesAreRaised() {
    assertThat(of(LocalDate.of(2026, 10, 1), 9)).isEmpty();
    assertThat(of(LocalDate.of(2026, 12, 1), 9)).isEmpty();
  }
}
