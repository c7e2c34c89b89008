package broodtide.fit;

import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.wash.BoardCount;
import broodtide.wash.Wash;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads many records that share seasons: for all records of one place, first day, treatments and
 * priors, seasons are drawn from the priors and run once, and each record only weighs them by its
 * likelihood. Where too few of them fit, a sampler goes on from them; a record with boards, with
 * more than one season of the bees or with more colonies than a bank serves has a sampler alone.
 *
 * <p>What is said of a record hangs on the record alone, not on those that were read before it. The
 * seasons of the beginnings that were asked for last are kept; who reads records of one beginning
 * after the other saves time. Safe to share between threads.
 *
 * @since 0.2.0
 */
public final class SeasonBanks {
  /** Most simulated colonies of a record that draws from a bank; more would fill the memory. */
  public static final int MOST_COLONIES = 8192;

  /** The share of the heap that banks take where there is room for several: one part in so many. */
  private static final int HEAP_PARTS = 8;

  /** Most banks that are kept, however large the heap. */
  private static final int MOST_KEPT = 64;

  private final int most;
  private final Map<SeasonBank.Beginning, Shared> kept = new LinkedHashMap<>(16, 0.75f, true);

  /** A bank that is made by whoever asks for it first; others wait. */
  private static final class Shared {
    private Optional<SeasonBank> bank = Optional.empty();

    synchronized SeasonBank of(SeasonBank.Beginning beginning, Scenario past, Workers workers) {
      SeasonBank made = bank.orElseGet(() -> new SeasonBank(beginning, past, workers));
      bank = Optional.of(made);
      return made;
    }
  }

  /**
   * Banks of the last few beginnings.
   *
   * @param most how many are kept, 1 or more
   */
  public SeasonBanks(int most) {
    this.most = most;
  }

  /**
   * {@return banks of as many beginnings as an eighth of the heap holds, one at least}
   *
   * @param colonies simulated colonies of each record
   */
  public static SeasonBanks inHeap(int colonies) {
    long share = Runtime.getRuntime().maxMemory() / HEAP_PARTS;
    long fitting = share / Math.max(1, SeasonBank.bytes(colonies));
    return new SeasonBanks((int) Math.max(1, Math.min(MOST_KEPT, fitting)));
  }

  /**
   * {@return bytes that one bank takes at most; 0 where records ask for more colonies than a bank
   * serves}
   *
   * @param colonies simulated colonies of each record
   */
  public static long bytes(int colonies) {
    return SeasonBank.bytes(colonies);
  }

  /**
   * Infers a colony's unknowns, as {@link SeasonPosterior#of} does from banks of its own.
   *
   * @param past the rates, and what has been done so far; must start no later than the first count
   *     and reach the last
   * @param washes washes of one colony, in any order; none gives the prior
   * @param boards mites on boards under it while no treatment ran, in any order
   * @param priors what is believed before
   * @param effort how hard to work
   * @param workers threads; their number does not change the result
   * @param progress is told of work done by a sampler
   * @return the colonies that fit
   * @throws IllegalArgumentException when a count lies outside the span, or there are boards alone
   * @throws Unexplained when no colony of the priors could have given the washes
   */
  public SeasonPosterior posterior(
      Scenario past,
      List<Wash> washes,
      List<BoardCount> boards,
      Priors priors,
      SamplerSettings effort,
      Workers workers,
      Progress progress) {
    List<Wash> ordered = SeasonPosterior.ordered(past, washes);
    if (!boards.isEmpty() || !SeasonBank.serves(past, ordered, effort)) {
      RecordOrigin origin = new RecordOrigin(past.model(), past.start());
      return SeasonPosterior.sampled(
          past, ordered, boards, priors, effort, origin, Optional.empty(), workers, progress);
    }
    return bank(SeasonBank.Beginning.of(past, priors, effort), past, workers)
        .posterior(past, ordered, effort, workers, progress);
  }

  private SeasonBank bank(SeasonBank.Beginning beginning, Scenario past, Workers workers) {
    Shared shared;
    synchronized (kept) {
      shared = kept.computeIfAbsent(beginning, b -> new Shared());
      if (kept.size() > most) {
        kept.remove(kept.keySet().iterator().next());
      }
    }
    return shared.of(beginning, past, workers);
  }
}
