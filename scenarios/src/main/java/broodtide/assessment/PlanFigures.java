package broodtide.assessment;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Optional;

/** Figures of a plan's colonies taken together. */
public final class PlanFigures {
  private PlanFigures() {}

  /**
   * {@return share of members for which something happens; -1 marks those for which it does not}
   *
   * @param days days until it happens, by member; -1 where it does not
   */
  public static double share(int[] days) {
    return Arrays.stream(days).filter(d -> d >= 0).count() / (double) days.length;
  }

  /**
   * {@return share of members for which it happens within a number of days}
   *
   * @param days days until it happens, by member; -1 where it does not
   * @param within days, 0 or more
   */
  public static double shareWithin(int[] days, int within) {
    return Arrays.stream(days).filter(d -> d >= 0 && d <= within).count() / (double) days.length;
  }

  /**
   * {@return the day by which it has happened for half of all members; empty when that never comes}
   *
   * @param days days until it happens, by member; -1 where it does not
   * @param now the day from which they count
   */
  public static Optional<LocalDate> medianDay(int[] days, LocalDate now) {
    return dayFor(days, now, 0.5);
  }

  /**
   * {@return the day by which it has happened for a share of all members; empty when that never
   * comes}
   *
   * @param share 0 to 1
   * @param days days until it happens, by member; -1 where it does not
   * @param now the day from which they count
   */
  public static Optional<LocalDate> dayFor(int[] days, LocalDate now, double share) {
    int[] sorted = Arrays.stream(days).map(d -> d < 0 ? Integer.MAX_VALUE : d).sorted().toArray();
    int needed = (int) Math.ceil(share * sorted.length - 1e-9);
    int day = sorted[Math.max(0, Math.min(sorted.length, needed) - 1)];
    return day == Integer.MAX_VALUE ? Optional.empty() : Optional.of(now.plusDays(day));
  }
}
