package broodtide.assessment;

import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Workers;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Set;
import java.util.function.Function;

/**
 * A season seen from inside the hive, day by day: where the mites are, how strong the colony is,
 * and which of its bees carry virus.
 *
 * @param first the first day
 * @param onBees share of all mites that sit on adult bees, 0 to 1
 * @param inWorkerCells share of all mites in capped worker cells
 * @param inDroneCells share of all mites in capped drone cells
 * @param adults adult bees
 * @param winterBees winter bees among them
 * @param infectedAtEmergence share of the adult bees that emerged overtly infected
 * @param infectedAsAdults share of the adult bees that were infected as adults
 */
@SuppressWarnings("ArrayRecordComponent") // a picture's figures, read only, never compared
public record SeasonShares(
    LocalDate first,
    double[] onBees,
    double[] inWorkerCells,
    double[] inDroneCells,
    double[] adults,
    double[] winterBees,
    double[] infectedAtEmergence,
    double[] infectedAsAdults) {
  /** Simulated colonies that are played again for it: a mean needs no more. */
  private static final int ENOUGH = 64;

  private static final Set<Quantity> QUANTITIES =
      Set.of(
          Quantity.MITES,
          Quantity.MITES_ON_BEES,
          Quantity.MITES_IN_DRONE_CELLS,
          Quantity.ADULTS,
          Quantity.WINTER_BEES,
          Quantity.SHARE_INFECTED_AT_EMERGENCE,
          Quantity.SHARE_INFECTED_AS_ADULTS);

  /**
   * {@return a season by what each quantity is on each day}
   *
   * @param first the first day
   * @param daily a quantity day by day, as many days for each
   */
  public static SeasonShares of(LocalDate first, Function<Quantity, double[]> daily) {
    double[] mites = daily.apply(Quantity.MITES);
    double[] onBees = share(daily.apply(Quantity.MITES_ON_BEES), mites);
    double[] drone = share(daily.apply(Quantity.MITES_IN_DRONE_CELLS), mites);
    double[] worker = new double[mites.length];
    Arrays.setAll(worker, i -> mites[i] > 0 ? Math.max(0, 1 - onBees[i] - drone[i]) : 0);
    return new SeasonShares(
        first,
        onBees,
        worker,
        drone,
        daily.apply(Quantity.ADULTS),
        daily.apply(Quantity.WINTER_BEES),
        daily.apply(Quantity.SHARE_INFECTED_AT_EMERGENCE),
        daily.apply(Quantity.SHARE_INFECTED_AS_ADULTS));
  }

  /**
   * {@return the mean season of some of the colonies that fit the washes, under a plan; as long as
   * at least half of all are alive}
   *
   * @param comparison plans that were played
   * @param run one of them
   * @param workers threads; their number does not change the result
   */
  public static SeasonShares of(Comparison comparison, PlanRun run, Workers workers) {
    ColonyCase c = comparison.colony();
    EnsembleRun played =
        comparison
            .posterior()
            .thinned(ENOUGH)
            .run(c.season(run.plan()), QUANTITIES, workers, Progress.NONE);
    int days = played.index(run.halfLost(c.until())) + 1;
    return of(c.start(), q -> mean(played, q, days));
  }

  private static double[] mean(EnsembleRun run, Quantity quantity, int days) {
    double[] out = new double[days];
    for (int day = 0; day < days; day++) {
      double sum = 0;
      for (int m = 0; m < run.members(); m++) {
        sum += run.value(quantity, day, m);
      }
      out[day] = sum / run.members();
    }
    return out;
  }

  private static double[] share(double[] part, double[] whole) {
    double[] out = new double[part.length];
    Arrays.setAll(out, i -> whole[i] > 0 ? Math.min(1, part[i] / whole[i]) : 0);
    return out;
  }
}
