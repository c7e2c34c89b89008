package broodtide.bench;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Outcome;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.decision.WindowSearch;
import broodtide.decision.Windows;
import broodtide.engine.ColonyModel;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;

/** An invented colony with four monthly washes, and the decisions that are measured over it. */
final class BenchCase {
  static final List<Wash> WASHES =
      List.of(
          Wash.of(LocalDate.of(2026, 5, 15), "A", 2, 310),
          Wash.of(LocalDate.of(2026, 6, 14), "A", 3, 295),
          Wash.of(LocalDate.of(2026, 7, 16), "A", 8, 320),
          Wash.of(LocalDate.of(2026, 8, 15), "A", 15, 305));

  private static final long SEED = 11;
  private static final int STARTS = 30;
  private static final int COLONIES = 512;
  private static final LocalDate NOW = LocalDate.of(2026, 8, 16);
  private static final List<ControlTemplate> CONTROLS =
      Stream.of(
              "drone-comb-part",
              "formic-strips",
              "formic-slow",
              "thymol",
              "amitraz-strips",
              "oxalic-dribble")
          .map(Catalog::control)
          .toList();

  private BenchCase() {}

  static ColonyCase colony() {
    return new ColonyCase(
        "A",
        ColonyModel.in(Catalog.climate("temperate")),
        BenchSeason.START,
        NOW,
        LocalDate.of(2027, 3, 1),
        WASHES,
        List.of(),
        Catalog.threshold("kulhanek-2021"),
        Priors.defaults());
  }

  static SeasonPosterior posterior(int particles, Workers workers) {
    return SeasonPosterior.of(
        BenchSeason.scenario(200),
        WASHES,
        Priors.defaults(),
        new SeasonPosterior.SamplerSettings(
            particles, SeasonPosterior.SamplerSettings.usual(SEED).moves(), SEED),
        workers,
        Progress.NONE);
  }

  static SeasonPosterior sample(Workers workers) {
    return colony()
        .posterior(SeasonPosterior.SamplerSettings.usual(SEED), workers, Progress.NONE)
        .thinned(COLONIES);
  }

  /** Thirty days in a row by six controls, over a sample of 512 colonies. */
  static Windows windows(SeasonPosterior sample, Workers workers) {
    List<LocalDate> starts = Stream.iterate(NOW, d -> d.plusDays(1)).limit(STARTS).toList();
    return WindowSearch.of(
        colony(), sample, CONTROLS, starts, Outcome.WINTER_BROOD, workers, Progress.NONE);
  }
}
