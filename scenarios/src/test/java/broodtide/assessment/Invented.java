package broodtide.assessment;

import broodtide.catalog.Catalog;
import broodtide.control.Control;
import broodtide.engine.ColonyModel;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.Prior;
import broodtide.fit.Priors;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.Unknown;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;

/** An invented colony for tests of the decision tools. */
public final class Invented {
  public static final LocalDate START = LocalDate.of(2026, 5, 10);
  public static final LocalDate NOW = LocalDate.of(2026, 7, 9);
  static final LocalDate UNTIL = LocalDate.of(2026, 12, 14);
  static final List<Wash> WASHES =
      List.of(
          Wash.of(START, "A", 2, 300),
          Wash.of(LocalDate.of(2026, 6, 10), "A", 5, 310),
          Wash.of(LocalDate.of(2026, 7, 8), "A", 9, 295));

  private Invented() {}

  public static ColonyCase colony(Control... given) {
    return new ColonyCase(
        "A",
        ColonyModel.in(Catalog.climate("temperate")),
        START,
        NOW,
        UNTIL,
        WASHES,
        List.of(given),
        Catalog.threshold("kulhanek-2021"),
        Priors.defaults());
  }

  /** A colony of which everything is known, so that all of its members are the same. */
  public static ColonyCase known(double infestation) {
    Priors sure = Priors.defaults();
    for (Unknown unknown : Unknown.values()) {
      sure = sure.with(unknown, sure(sure.of(unknown)));
    }
    sure =
        sure.with(Unknown.INFESTATION, sure.of(Unknown.INFESTATION).with(infestation, 0))
            .with(Unknown.OVERDISPERSION, sure.of(Unknown.OVERDISPERSION).with(1e6, 0));
    ColonyCase c = colony();
    return new ColonyCase(
        "known", c.model(), START, START, UNTIL, List.of(), List.of(), c.thresholds(), sure);
  }

  private static Prior sure(Prior prior) {
    return prior.with(prior.median(), 0);
  }

  public static SeasonPosterior posterior(ColonyCase c, int members, Workers workers) {
    return c.posterior(new SeasonPosterior.SamplerSettings(members, 2, 1), workers, Progress.NONE);
  }
}
