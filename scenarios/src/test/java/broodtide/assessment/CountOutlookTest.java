package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

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

  @Test
  void nothingIsSaidOnceTheWinterBeesAreRaised() {
    assertThat(of(LocalDate.of(2026, 10, 1), 9)).isEmpty();
    assertThat(of(LocalDate.of(2026, 12, 1), 9)).isEmpty();
  }
}
