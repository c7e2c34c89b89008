package broodtide.fit;

import broodtide.wash.Interval;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.util.FastMath;

/**
 * How fast mites grow over the hives of a table together. Each hive has a growth rate of its own,
 * and the rates are normal about a common mean ({@link RandomEffects}); the washes of a hive see
 * its rate with the error that its interval shows.
 *
 * <p>The interval uses Student's t with one degree of freedom less than there are hives (Follmann
 * &amp; Proschan 1999, Biometrics 55:732), since few hives tell little of how far they differ.
 *
 * <p>It says nothing of any one hive: neighbours are not used to sharpen a hive's own growth.
 * Immutable, and safe to share between threads.
 *
 * @param hives hives whose washes bound their growth on both sides
 * @param perDay mean growth rate, 1/day
 * @param perDayInterval interval of the mean, 1/day
 * @param between standard deviation of the growth rate from hive to hive, 1/day
 */
public record PooledGrowth(int hives, double perDay, Interval perDayInterval, double between) {
  /** Fewest hives; with fewer, how far they differ cannot be told. */
  public static final int FEWEST = 3;

  /**
   * {@return the growth over the hives; empty when fewer than {@value #FEWEST} bound theirs}
   *
   * @param hives growth of each hive, with intervals of one level
   */
  public static Optional<PooledGrowth> of(Collection<Growth> hives) {
    List<Growth> bounded = hives.stream().filter(PooledGrowth::bounded).toList();
    int n = bounded.size();
    if (n < FEWEST) {
      return Optional.empty();
    }
    double level = bounded.get(0).perDayInterval().level();
    double reach = new NormalDistribution(null, 0, 1).inverseCumulativeProbability(end(level));
    RandomEffects all =
        RandomEffects.of(
            bounded.stream().mapToDouble(g -> g.perDay().orElseThrow()).toArray(),
            bounded.stream().mapToDouble(g -> FastMath.pow(error(g, reach), 2)).toArray());
    return Optional.of(
        new PooledGrowth(
            n, all.mean(), about(all.mean(), n - 1, all.standardError(), level), all.between()));
  }

  private static boolean bounded(Growth g) {
    return g.perDay().isPresent()
        && Double.isFinite(g.perDayInterval().low())
        && Double.isFinite(g.perDayInterval().high())
        && g.perDayInterval().high() > g.perDayInterval().low();
  }

  /** Half of the interval's width, in standard errors of a normal. */
  private static double error(Growth g, double reach) {
    return (g.perDayInterval().high() - g.perDayInterval().low()) / (2 * reach);
  }

  private static Interval about(double mean, int freedom, double error, double level) {
    double reach = new TDistribution(null, freedom).inverseCumulativeProbability(end(level));
    return new Interval(mean - reach * error, mean + reach * error, level);
  }

  private static double end(double level) {
    return (1 + level) / 2;
  }

  /** {@return the mean and its interval as the growth of one hive is told} */
  public Growth mean() {
    return new Growth(OptionalDouble.of(perDay), perDayInterval);
  }
}
