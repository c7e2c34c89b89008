package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Assumptions;
import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Washes without a mite lower what is believed, and each further one lowers it more. */
class CountsOfZeroTest {
  private static final List<Wash> WASHES =
      Stream.of("2025-04-15", "2025-05-15", "2025-06-12", "2025-07-08", "2025-08-01")
          .map(day -> Wash.of(LocalDate.parse(day), "A", 0, 300))
          .toList();
  private static final LocalDate TODAY = LocalDate.of(2025, 8, 2);
  private static final double THRESHOLD = 0.67;

  @ParameterizedTest
  @ValueSource(strings = {"temperate", "cool-maritime"})
  void fiveOfThemLeaveLittleChanceOfBeingOver(String climate) {
    double before = 1;
    for (int washes = 1; washes <= WASHES.size(); washes++) {
      double now = chanceOver(climate, WASHES.subList(0, washes));
      assertThat(now).as("after %d washes", washes).isLessThan(before);
      before = now;
    }
    assertThat(before).isLessThan(0.25);
  }

  /** What may still come in is told apart: without it there would be fewer in autumn. */
  @Test
  void whatMayStillComeInIsToldApart() {
    LocalDate autumn = LocalDate.of(2025, 10, 5);
    Comparison sparse = play(colony("temperate", WASHES, Surroundings.SPARSE).until(autumn));
    double all = sparse.runs().get(0).on(Quantity.INFESTATION, autumn).median();
    assertThat(sparse.withoutArrivals(autumn).orElseThrow()).isBetween(0.1 * all, 0.95 * all);
    Comparison alone = play(colony("temperate", WASHES, Surroundings.ISOLATED).until(autumn));
    assertThat(alone.withoutArrivals(autumn)).isEmpty();
  }

  private static double chanceOver(String climate, List<Wash> washes) {
    return play(colony(climate, washes, Surroundings.SPARSE))
        .runs()
        .get(0)
        .chanceOver(THRESHOLD, TODAY);
  }

  private static Comparison play(ColonyCase c) {
    try (Workers workers = new Workers(2)) {
      SeasonPosterior posterior =
          c.posterior(new SeasonPosterior.SamplerSettings(1024, 3, 1), workers, Progress.NONE);
      return Comparison.of(c, posterior, List.of(Plan.waiting("wait")), workers, Progress.NONE);
    }
  }

  private static ColonyCase colony(String climate, List<Wash> washes, Surroundings around) {
    return new ColonyCase(
        "A",
        Shipped.model(climate).with(around.immigration(Assumptions.usual())),
        washes.get(0).date(),
        TODAY,
        TODAY.plusDays(1),
        washes,
        List.of(),
        Catalog.threshold("kulhanek-2021"),
        Priors.defaults());
  }
}
