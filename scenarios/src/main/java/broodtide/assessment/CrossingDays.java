package broodtide.assessment;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Days on which simulated colonies first stand over the treatment threshold, each weighing as the
 * living colony that it then is. A colony that dies before it gets there never does.
 */
public final class CrossingDays {
  private final LocalDate now;
  private final int[] days;
  private final double[] weights;

  /**
   * Days of simulated colonies.
   *
   * @param now the day from which they count
   * @param days days until it happens, by member, at least one; -1 where it does not
   * @param weights weight of each member on its day as a living colony, 0 or more; their mean over
   *     all members is the chance that it happens
   */
  CrossingDays(LocalDate now, int[] days, double[] weights) {
    this.now = now;
    this.days = days.clone();
    this.weights = weights.clone();
  }

  /** {@return the chance that it happens} */
  public double share() {
    return shareWithin(Integer.MAX_VALUE);
  }

  /**
   * {@return the chance that it happens within a number of days}
   *
   * @param within days, 0 or more
   */
  public double shareWithin(int within) {
    double sum = 0;
    for (int m = 0; m < days.length; m++) {
      sum += days[m] >= 0 && days[m] <= within ? weights[m] : 0;
    }
    return Math.min(1, sum / days.length);
  }

  /** {@return the day by which it has happened with even odds; empty when that never comes} */
  public Optional<LocalDate> medianDay() {
    return dayFor(0.5);
  }

  /**
   * {@return the day by which it has happened with a chance; empty when that never comes}
   *
   * @param chance 0 to 1
   */
  public Optional<LocalDate> dayFor(double chance) {
    double[] byDay = new double[Arrays.stream(days).max().orElse(-1) + 1];
    for (int m = 0; m < days.length; m++) {
      if (days[m] >= 0) {
        byDay[days[m]] += weights[m];
      }
    }
    double needed = chance * days.length * (1 - 1e-9);
    double[] sum = {0};
    return IntStream.range(0, byDay.length)
        .filter(d -> (sum[0] += byDay[d]) >= needed)
        .mapToObj(now::plusDays)
        .findFirst();
  }
}
