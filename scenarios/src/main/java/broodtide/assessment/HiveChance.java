package broodtide.assessment;

import broodtide.engine.Quantity;
import broodtide.engine.SpringLow;
import broodtide.engine.Survival;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.SharedDraws;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.util.FastMath;

/**
 * The chance that one colony of an apiary is counted: over its treatment threshold on a day, or
 * lost by spring. It keeps what {@link ApiaryCount} must know of the colony, a few tens of
 * kilobytes, so that the simulated colonies may be forgotten. Immutable, and safe to share between
 * threads.
 *
 * @since 0.2.0
 */
public final class HiveChance {
  /** Most simulated colonies that are kept of each colony. */
  static final int MOST = 1000;

  private final String colony;
  private final String yard;
  private final double own;
  private final List<Ranked> shared;
  private final Counted counted;

  /**
   * What colonies share, by rank among the simulated colonies of this one.
   *
   * @param what what it is
   * @param share share of its variance that is shared
   * @param ranks rank of each simulated colony, from 0
   */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  record Ranked(String what, double share, short[] ranks) {
    static Ranked of(SharedDraws drawn, int n) {
      double[] z = drawn.draws();
      int[] order =
          IntStream.range(0, n)
              .boxed()
              .sorted(Comparator.<Integer>comparingDouble(i -> z[i]).thenComparing(i -> i))
              .mapToInt(i -> i)
              .toArray();
      short[] ranks = new short[n];
      for (int r = 0; r < n; r++) {
        ranks[order[r]] = (short) r;
      }
      return new Ranked(drawn.what(), drawn.share(), ranks);
    }
  }

  /** The chance of being counted when simulated colonies weigh differently. */
  @FunctionalInterface
  interface Counted {
    /**
     * The chance.
     *
     * @param weights by simulated colony
     * @param bees luck of the yard: how many bees a colony needs there
     * @param others luck of the yard: how often other causes take one
     */
    double at(double[] weights, double bees, double others);
  }

  HiveChance(String colony, String yard, double own, List<Ranked> shared, Counted counted) {
    this.colony = colony;
    this.yard = yard;
    this.own = own;
    this.shared = List.copyOf(shared);
    this.counted = counted;
  }

  /**
   * {@return the chance that a colony, if it lives, is over its treatment threshold on a day, as a
   * wash would show it; empty when there is no threshold on that day}
   *
   * @param posterior what the washes say of the colony
   * @param run a plan that was played with it
   * @param day a day of the run
   */
  public static Optional<HiveChance> over(SeasonPosterior posterior, PlanRun run, LocalDate day) {
    return run.colony()
        .thresholdOn(day)
        .map(
            threshold -> {
              int n = kept(run);
              double[] living = Arrays.copyOf(run.living(day), n);
              double[] infestation = run.infestation(day);
              boolean[] over = new boolean[n];
              for (int i = 0; i < n; i++) {
                over[i] = Decision.over(infestation[i], threshold);
              }
              return new HiveChance(
                  run.colony().colony(),
                  run.colony().yard(),
                  run.chanceOver(threshold, day),
                  ranked(posterior, run, day, n),
                  (weights, bees, others) -> share(weights, living, over));
            });
  }

  private static double share(double[] weights, double[] living, boolean[] over) {
    double all = 0;
    double some = 0;
    for (int i = 0; i < over.length; i++) {
      double w = weights[i] * living[i];
      all += w;
      some += over[i] ? w : 0;
    }
    return all > 0 ? some / all : 0;
  }

  /**
   * {@return the chance that a colony is lost by the low in spring, for whatever cause; empty when
   * the run ends before it, or where winter losses cannot be told}
   *
   * @param posterior what the washes say of the colony
   * @param run a plan that was played with it
   */
  public static Optional<HiveChance> lost(SeasonPosterior posterior, PlanRun run) {
    return run.springLow().map(SpringLow::day).map(day -> lost(posterior, run, day));
  }

  private static HiveChance lost(SeasonPosterior posterior, PlanRun run, LocalDate day) {
    int n = kept(run);
    LocalDate from = run.knownAlive();
    double[] then = logs(run.run().values(Quantity.ADULTS, from), n);
    double[] least = logs(run.run().least(Quantity.ADULTS, from, day), n);
    Survival survival = run.colony().winter().survival();
    return new HiveChance(
        run.colony().colony(),
        run.colony().yard(),
        run.shareLost(day),
        ranked(posterior, run, day, n),
        (weights, bees, others) -> {
          double before = 0;
          double after = 0;
          for (int i = 0; i < n; i++) {
            before += weights[i] * survival.enoughOfLog(then[i], bees);
            after += weights[i] * survival.enoughOfLog(least[i], bees);
          }
          return before > 0 ? 1 - after / before * survival.spared(from, day, others) : 1;
        });
  }

  private static double[] logs(double[] values, int n) {
    double[] out = new double[n];
    Arrays.setAll(out, i -> FastMath.log(values[i]));
    return out;
  }

  private static int kept(PlanRun run) {
    return Math.min(MOST, run.run().members());
  }

  private static List<Ranked> ranked(SeasonPosterior posterior, PlanRun run, LocalDate day, int n) {
    return SharedDraws.of(posterior, run.run().scenario(), day).stream()
        .map(drawn -> Ranked.of(drawn, n))
        .toList();
  }

  /** {@return name of the colony} */
  public String colony() {
    return colony;
  }

  /** {@return the yard in which it stands; empty where none is named} */
  public String yard() {
    return yard;
  }

  /** {@return its own chance from all of its simulated colonies, 0 to 1} */
  public double chance() {
    return own;
  }

  List<Ranked> shared() {
    return shared;
  }

  Counted counted() {
    return counted;
  }
}
