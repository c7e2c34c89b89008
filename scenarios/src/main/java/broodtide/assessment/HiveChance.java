package broodtide.assessment;

import broodtide.engine.SpringLow;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.SharedDraws;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/**
 * The chance that one colony of an apiary is counted: over its treatment threshold on a day, or
 * lost by spring. It keeps what {@link ApiaryCount} must know of the colony, a few tens of
 * kilobytes, so that the simulated colonies may be forgotten; where it was put away in a {@link
 * HiveRecords}, it reads them there again each time a count asks. Immutable, and safe to share
 * between threads.
 *
 * @since 0.2.0
 */
public final class HiveChance {
  /** Most simulated colonies that are kept of each colony. */
  static final int MOST = 1000;

  private final String colony;
  private final String yard;
  private final double own;
  private final List<Share> shared;
  private final Supplier<Seasons> seasons;

  /**
   * What colonies share.
   *
   * @param what what it is
   * @param share share of its variance that is shared in the yard
   * @param common share of its variance that is shared by all yards, no more than {@code share}
   */
  record Share(String what, double share, double common) {
    Share(String what, double share) {
      this(what, share, 0);
    }
  }

  /**
   * What colonies share, by rank among the simulated colonies of this one.
   *
   * @param what what it is, and how much of it is shared
   * @param ranks rank of each simulated colony, from 0
   */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  record Ranked(Share what, short[] ranks) {
    Ranked(String what, double share, short[] ranks) {
      this(new Share(what, share), ranks);
    }

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
      return new Ranked(new Share(drawn.what(), drawn.share(), drawn.common()), ranks);
    }
  }

  /**
   * The simulated colonies as far as a count must know them.
   *
   * @param ranks of what is shared, in the order of {@link #shared}
   * @param counted which of them are counted
   */
  record Seasons(List<short[]> ranks, Counted counted) {
    Seasons {
      ranks = List.copyOf(ranks);
    }
  }

  HiveChance(String colony, String yard, double own, List<Ranked> shared, Counted counted) {
    this(
        colony,
        yard,
        own,
        shared.stream().map(Ranked::what).toList(),
        kept(new Seasons(shared.stream().map(Ranked::ranks).toList(), counted)));
  }

  HiveChance(
      String colony, String yard, double own, List<Share> shared, Supplier<Seasons> seasons) {
    this.colony = colony;
    this.yard = yard;
    this.own = own;
    this.shared = List.copyOf(shared);
    this.seasons = seasons;
  }

  private static Supplier<Seasons> kept(Seasons seasons) {
    return () -> seasons;
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
                  new Counted.Over(Arrays.copyOf(run.living(day), n), over));
            });
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
    return new HiveChance(
        run.colony().colony(),
        run.colony().yard(),
        run.shareLost(day),
        ranked(posterior, run, day, n),
        Counted.Lost.of(
            run.colony().winter().survival(),
            from,
            day,
            floats(run.adults(from), n),
            floats(run.fewestAdults(day), n)));
  }

  /** Runs hold single precision, so nothing is lost. */
  private static float[] floats(double[] values, int n) {
    float[] out = new float[n];
    for (int i = 0; i < n; i++) {
      out[i] = (float) values[i];
    }
    return out;
  }

  private static int kept(PlanRun run) {
    return Math.min(MOST, run.members());
  }

  private static List<Ranked> ranked(SeasonPosterior posterior, PlanRun run, LocalDate day, int n) {
    return SharedDraws.of(posterior, run.season(), day).stream()
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

  /** What is shared, in an order that is the same for all colonies. */
  List<Share> shared() {
    return shared;
  }

  /** Its simulated colonies. */
  Seasons seasons() {
    return seasons.get();
  }
}
