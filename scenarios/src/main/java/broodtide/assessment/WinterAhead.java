package broodtide.assessment;

import broodtide.engine.ColonyModel;
import broodtide.engine.SpringLow;
import broodtide.engine.Survival;
import java.time.LocalDate;

/**
 * What colonies of a place meet in the winter that a decision looks to. Each part takes years of a
 * standard colony, so it is worked out once, for all colonies and plans of the place.
 */
final class WinterAhead {
  private final ColonyModel model;
  private final Lazy<Survival> survival;
  private final Lazy<SpringLow> low;

  private WinterAhead(ColonyModel model, Lazy<Survival> survival, LocalDate now) {
    this.model = model;
    this.survival = survival;
    low = new Lazy<>(() -> new YearStages(model.climate()).springLow(model, now));
  }

  /** The winter of a place that a decision of a day looks to. */
  static WinterAhead of(ColonyModel model, LocalDate now) {
    return new WinterAhead(model, new Lazy<>(() -> Survival.in(model)), now);
  }

  /** The one that a decision of another day looks to. */
  WinterAhead from(LocalDate now) {
    return new WinterAhead(model, survival, now);
  }

  /** Chances of life in the place. */
  Survival survival() {
    return survival.get();
  }

  /** The day in spring on which colonies have the fewest bees. */
  SpringLow low() {
    return low.get();
  }
}
