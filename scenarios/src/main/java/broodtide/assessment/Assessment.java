package broodtide.assessment;

import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.SeasonBanks;
import broodtide.fit.SeasonPosterior;
import java.util.List;

/**
 * One colony whose washes have been read: what every answer about it starts from, so that all of
 * them rest on the same simulated colonies.
 *
 * <pre>{@code
 * Map<String, List<Wash>> washes = WashFile.read(Path.of("washes.csv")).byColony();
 * Place place = Place.of(Catalog.climate("temperate"), Surroundings.SPARSE);
 * try (Workers workers = Workers.all()) {
 *   for (ColonyCase colony : ColonyCases.ofWashes(place, washes)) {
 *     Assessment assessment = Assessment.of(colony, SamplerSettings.usual(1), workers);
 *     Decision decision = assessment.compare(UsualPlans.of(colony)).decision();
 *   }
 * }
 * }</pre>
 *
 * <p>Immutable, and safe to share between threads as long as the workers it was given are open. The
 * same case and seed give the same figures on any number of threads.
 */
public final class Assessment {
  private final ColonyCase colony;
  private final SeasonPosterior posterior;
  private final Workers workers;

  private Assessment(ColonyCase colony, SeasonPosterior posterior, Workers workers) {
    this.colony = colony;
    this.posterior = posterior;
    this.workers = workers;
  }

  /**
   * {@return the assessment of a colony}
   *
   * @param colony the case
   * @param settings how many colonies to simulate, and the seed
   * @param workers threads, for this and all that is asked of it; their number changes no figure
   */
  public static Assessment of(
      ColonyCase colony, SeasonPosterior.SamplerSettings settings, Workers workers) {
    return of(colony, settings, workers, Progress.NONE);
  }

  /**
   * {@return the assessment of a colony}
   *
   * @param colony the case
   * @param settings how many colonies to simulate, and the seed
   * @param workers threads, for this and all that is asked of it; their number changes no figure
   * @param progress is told of work done
   */
  public static Assessment of(
      ColonyCase colony,
      SeasonPosterior.SamplerSettings settings,
      Workers workers,
      Progress progress) {
    return new Assessment(colony, colony.posterior(settings, workers, progress), workers);
  }

  /**
   * {@return the assessment of a colony, as without banks; faster where those before it in a table
   * of many began like it}
   *
   * @param colony the case
   * @param settings how many colonies to simulate, and the seed
   * @param banks seasons that colonies of one beginning share; what else was read with them changes
   *     no figure
   * @param workers threads, for this and all that is asked of it; their number changes no figure
   * @param progress is told of work done
   */
  public static Assessment of(
      ColonyCase colony,
      SeasonPosterior.SamplerSettings settings,
      SeasonBanks banks,
      Workers workers,
      Progress progress) {
    return new Assessment(colony, colony.posterior(settings, banks, workers, progress), workers);
  }

  /** {@return the case} */
  public ColonyCase colony() {
    return colony;
  }

  /** {@return the simulated colonies that fit the washes} */
  public SeasonPosterior posterior() {
    return posterior;
  }

  /**
   * {@return plans side by side, with the decision that they lead to}
   *
   * @param plans what to play, in the order of the results; one of them should wait
   */
  public Comparison compare(List<Plan> plans) {
    return compare(plans, Progress.NONE);
  }

  /**
   * {@return plans side by side, with the decision that they lead to}
   *
   * @param plans what to play, in the order of the results; one of them should wait
   * @param progress is told of every plan done
   */
  public Comparison compare(List<Plan> plans, Progress progress) {
    return Comparison.of(colony, posterior, plans, workers, progress);
  }

  /** {@return the decision without any plan but waiting: its figures are those beside plans} */
  public Decision waiting() {
    return Decision.ofWaiting(waiting(colony.throughWinter()));
  }

  /** {@return waiting alone, with the decision; the season is played once for both} */
  public WaitingAlone waitingAlone() {
    ColonyCase far = colony.throughWinter();
    Comparison looksFar = waiting(far);
    boolean within = !colony.until().isAfter(far.until());
    Comparison near =
        within
            ? new Comparison(
                colony, posterior, List.of(looksFar.reference().upTo(colony)), List.of())
            : waiting(colony);
    return new WaitingAlone(near, Decision.ofWaiting(looksFar));
  }

  private Comparison waiting(ColonyCase c) {
    List<Plan> wait = List.of(Plan.waiting(UsualPlans.WAIT));
    return Comparison.of(c, posterior, wait, workers, Progress.NONE);
  }

  /**
   * Waiting alone.
   *
   * @param comparison waiting up to the last day of the case
   * @param decision the decision, which looks ahead to the spring whatever that day is
   */
  public record WaitingAlone(Comparison comparison, Decision decision) {}
}
