package broodtide.assessment;

import java.time.LocalDate;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * Figures of each simulated colony on the days that are asked about most, kept where a run is not
 * kept itself. Safe to share between threads.
 */
final class FiguresByMember {
  private final Map<Asked, double[]> known = new ConcurrentHashMap<>();
  private volatile Set<LocalDate> days = Set.of();

  /** What is asked of a day. */
  enum Kind {
    INFESTATION,
    ADULTS,
    FEWEST,
    LIVING,
    LOST,
    LOST_IN_WINTER
  }

  private record Asked(Kind kind, LocalDate day) {}

  /** Keeps what is asked of some days from now on. */
  void keep(Set<LocalDate> some) {
    days = Set.copyOf(some);
  }

  /** What is known, or else what the work finds; a copy of what is kept. */
  double[] get(Kind kind, LocalDate day, Supplier<double[]> work) {
    if (!days.contains(day)) {
      return work.get();
    }
    Asked asked = new Asked(kind, day);
    double[] figures = known.get(asked);
    if (figures == null) {
      figures = work.get();
      known.put(asked, figures);
    }
    return figures.clone();
  }
}
