package broodtide.fit;

import broodtide.control.Control;
import broodtide.engine.Scenario;
import broodtide.engine.SharedPast;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StartedColonies;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Days with which several seasons of the same colonies begin, each up to where one of them first
 * does something of its own. Safe to share between threads.
 */
final class SharedPasts {
  /** Colonies whose days are kept, over all days at which they are: some 20 MB. */
  private static final int MOST_COLONIES = 16_384;

  /** To go on for fewer days than this costs as much as to keep what they led to. */
  private static final int SHORT = 3;

  /** The one that was last used comes last. */
  private final List<SharedPast> kept = new ArrayList<>();

  /**
   * The days from which a season goes on; empty where it has none to share.
   *
   * @param season the season
   * @param own the day, counted from its start, before which the seasons do not differ
   * @param members its colonies
   * @param watched what is kept
   * @param started the colonies on the start day
   * @param workers threads
   */
  synchronized Optional<SharedPast> of(
      Scenario season,
      int own,
      List<SimulatedColony> members,
      Watched watched,
      Function<Workers, StartedColonies> started,
      Workers workers) {
    int target = target(season, own);
    if (target == 0) {
      return Optional.empty();
    }
    SharedPast best = best(season, target, members, watched);
    if (best == null || best.days() < target - SHORT) {
      TrimmedScenario part = TrimmedScenario.to(season, target);
      List<SimulatedColony> fitted = members.stream().map(part::fitted).toList();
      best =
          best == null
              ? SharedPast.of(
                  part.scenario(), started.apply(workers), fitted, together(watched), workers)
              : best.upTo(part.scenario(), fitted, workers);
    }
    keep(best);
    return Optional.of(best);
  }

  /** Where the season's first control after the counts begins; where there is none, the counts. */
  private static int target(Scenario season, int own) {
    LocalDate counted = season.start().plusDays(own);
    long first =
        season.plan().controls().stream()
            .map(Control::from)
            .filter(from -> !from.isBefore(counted))
            .mapToLong(from -> from.toEpochDay() - season.start().toEpochDay())
            .min()
            .orElse(own);
    return Math.toIntExact(Math.min(first, season.days() - 1L));
  }

  private @Nullable SharedPast best(
      Scenario season, int target, List<SimulatedColony> members, Watched watched) {
    return kept.stream()
        .filter(p -> p.days() <= target)
        .sorted((a, b) -> Integer.compare(b.days(), a.days()))
        .filter(p -> p.begins(season, members, watched))
        .findFirst()
        .orElse(null);
  }

  /** What was kept before is asked for again, most likely. */
  private Watched together(Watched watched) {
    Watched all = watched;
    for (SharedPast p : kept) {
      all = all.with(p.watched());
    }
    return all;
  }

  private void keep(SharedPast used) {
    kept.remove(used);
    kept.add(used);
    int most = Math.max(2, MOST_COLONIES / used.members());
    while (kept.size() > most) {
      kept.remove(0);
    }
  }
}
