package broodtide.mite;

import broodtide.colony.BroodTimes;
import java.util.function.IntFunction;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Growth of few mites in constant surroundings, from the renewal (Euler-Lotka) equation of each way
 * of keeping time. With these the engines can be checked without running a season, and a reader
 * sees what a given amount of brood means for mite growth.
 *
 * @param worker rate of entering worker cells, 1/day, zero or more
 * @param drone rate of entering drone cells, 1/day, zero or more
 * @param death death rate on bees, 1/day, zero or more; not all three rates may be zero
 * @param workerReturn mites leaving a worker cell per mother
 * @param droneReturn mites leaving a drone cell per mother
 * @param workerDays days under the capping, worker
 * @param droneDays days under the capping, drone
 */
public record Renewal(
    double worker,
    double drone,
    double death,
    double workerReturn,
    double droneReturn,
    int workerDays,
    int droneDays) {

  /**
   * {@return constant surroundings}
   *
   * @param rates the mites' rates
   * @param workerCellsPerGram worker cells capped a day per gram of bees
   * @param droneCellsPerGram drone cells capped a day per gram of bees
   * @param beeDeath adult bees that die in a day, per adult bee
   * @param fertility factor on daughters
   */
  public static Renewal of(
      MiteRates rates,
      double workerCellsPerGram,
      double droneCellsPerGram,
      double beeDeath,
      double fertility) {
    double h = rates.invasion(workerCellsPerGram, droneCellsPerGram);
    double w = rates.workerInvasion() * workerCellsPerGram;
    double d = rates.droneInvasion() * droneCellsPerGram;
    double share = w + d > 0 ? w / (w + d) : 1;
    return new Renewal(
        h * share,
        h * (1 - share),
        rates.death(beeDeath, h),
        rates.workerReturn(fertility),
        rates.droneReturn(fertility),
        BroodTimes.WORKER.capped(),
        BroodTimes.DRONE.capped());
  }

  /** {@return growth rate with exact delays in continuous time, 1/day} */
  public double delayed() {
    return rate(days -> r -> Math.exp(-r * days), Double.NEGATIVE_INFINITY);
  }

  /**
   * {@return growth rate when each stay under the capping is a chain of equal stages, 1/day}
   *
   * @param stages n, 1 or more
   */
  public double chained(int stages) {
    double pole = -(double) stages / Math.max(workerDays, droneDays);
    return rate(days -> r -> Math.pow(1 + r * days / stages, -stages), pole * (1 - 1e-12));
  }

  /**
   * {@return growth factor per day of the daily engine, where mites that come out of cells spend
   * half of that day on bees: the root of f = stay + entered(f) (1 + f) / 2}
   */
  public double daily() {
    double leaving = worker + drone + death;
    double stay = Math.exp(-leaving);
    double perRate = (1 - stay) / leaving;
    UnivariateFunction balance =
        f ->
            stay
                + perRate
                    * comingOut(Math.pow(f, -workerDays), Math.pow(f, -droneDays))
                    * (1 + f)
                    / 2
                - f;
    return new BrentSolver(1e-15, 1e-15).solve(1000, balance, stay, above(balance, stay));
  }

  private double rate(IntFunction<UnivariateFunction> kernel, double pole) {
    UnivariateFunction w = kernel.apply(workerDays);
    UnivariateFunction d = kernel.apply(droneDays);
    double leaving = worker + drone + death;
    UnivariateFunction balance = r -> comingOut(w.value(r), d.value(r)) - (r + leaving);
    double low = Math.max(-leaving, pole);
    return new BrentSolver(1e-15, 1e-15).solve(1000, balance, low, above(balance, low));
  }

  private double comingOut(double workerKernel, double droneKernel) {
    return worker * workerReturn * workerKernel + drone * droneReturn * droneKernel;
  }

  /** A point where a falling balance is no longer positive. */
  private static double above(UnivariateFunction balance, double low) {
    double step = 0.01;
    while (balance.value(low + step) > 0) {
      step *= 2;
    }
    return low + step;
  }
}
