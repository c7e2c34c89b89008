package broodtide.fit;

import broodtide.engine.ColonyModel;
import broodtide.engine.StandardColony;
import broodtide.engine.Survival;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What records of one place share from their first day on: what colonies start from, and their
 * chances of life. Each takes years of a standard colony, so it is worked out once. Safe to share
 * between threads.
 */
final class RecordOrigin {
  private final ColonyModel model;
  private final StandardColony start;
  private volatile @Nullable Survival survival;

  /** What invented records of some visits say, under the priors. */
  final Memo<Agreement.Visits, Agreement.Invented> invented = new Memo<>();

  /** Colonies of the priors on the days of some visits. */
  final Memo<Agreement.Days, Agreement.Unwashed> unwashed = new Memo<>();

  /** Infestations of colonies of the priors, whose unknowns were exchanged one by one. */
  final Memo<PriorSensitivity.Question, List<double[]>> exchanged = new Memo<>();

  RecordOrigin(ColonyModel model, LocalDate firstDay) {
    this.model = model;
    start = StandardColony.on(model, firstDay);
  }

  /** The standard year's state on the first day. */
  StandardColony start() {
    return start;
  }

  /** Chances of life; threads that ask at once may work out the same twice. */
  Survival survival() {
    Survival known = survival;
    if (known == null) {
      known = Survival.in(model);
      survival = known;
    }
    return known;
  }
}
