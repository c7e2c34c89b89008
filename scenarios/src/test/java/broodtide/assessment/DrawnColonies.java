package broodtide.assessment;

import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Survival;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import broodtide.fit.Priors;
import broodtide.fit.Unknown;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.stat.descriptive.moment.Mean;

/**
 * Colonies that differ as the priors say, for checks beside trials of many hives: what a trial's
 * hives with a count in a range come to, once each simulated colony weighs by its chance of giving
 * such a count.
 */
final class DrawnColonies {
  /** A wash of 300 bees finds nine mites in ten. */
  private static final double BEES_TIMES_RECOVERY = 300 * 0.9;

  private final ColonyModel model;
  private final LocalDate start;
  private final List<SimulatedColony> members;

  /**
   * Colonies on a day.
   *
   * @param number how many
   * @param median median of their mites per 100 bees
   * @param logSd standard deviation of its logarithm, 0 for colonies that are alike in it
   */
  DrawnColonies(ColonyModel model, LocalDate start, int number, double median, double logSd) {
    this.model = model;
    this.start = start;
    RandomGenerator chance = new Well19937c(start.toEpochDay());
    Priors priors = Priors.defaults();
    members = new ArrayList<>();
    for (int i = 0; i < number; i++) {
      double strength = priors.of(Unknown.LAYING_FACTOR).at(chance.nextGaussian());
      double size = strength * priors.of(Unknown.START_SIZE).at(chance.nextGaussian());
      double vigour = priors.of(Unknown.REPRODUCTION_FACTOR).at(chance.nextGaussian());
      double infectivity = priors.of(Unknown.INFECTIVITY).at(chance.nextGaussian());
      double infestation = median * Math.exp(logSd * chance.nextGaussian());
      members.add(
          new SimulatedColony(
              strength, Math.min(5, size), infestation, vigour, 1, infectivity, List.of()));
    }
  }

  /** Plays a plan from the start to a day. */
  EnsembleRun under(Plan plan, LocalDate until) {
    try (Workers workers = new Workers(2)) {
      return EnsembleRun.of(
          Scenario.until(model, plan, start, until),
          StandardColony.on(model, start),
          members,
          Watched.daily(EnumSet.of(Quantity.ADULTS, Quantity.INFESTATION, Quantity.MITES)),
          workers,
          Progress.NONE);
    }
  }

  /** By colony, the chance of being alive on a day, not divided by that of the day of the wash. */
  double[] alive(EnsembleRun run, LocalDate wash, LocalDate day) {
    Survival survival = Survival.in(model);
    double[] out = run.least(Quantity.ADULTS, wash, day);
    double spared = survival.spared(wash, day);
    Arrays.setAll(out, m -> survival.enough(out[m]) * spared);
    return out;
  }

  /** By colony, the chance that a wash of 300 bees on a day shows from some to fewer mites. */
  static double[] counted(EnsembleRun run, LocalDate wash, int from, int below) {
    double[] out = run.values(Quantity.INFESTATION, wash);
    Arrays.setAll(
        out,
        m -> {
          double mean = Math.min(1, out[m] / 100) * BEES_TIMES_RECOVERY;
          PoissonDistribution count = new PoissonDistribution(mean);
          return count.cumulativeProbability(below - 1) - count.cumulativeProbability(from - 1);
        });
    return out;
  }

  /** Mean of values by weights. */
  static double mean(double[] values, double[] weights) {
    return new Mean().evaluate(values, weights);
  }

  /** Share of the colonies alive on the day of the wash that are alive later, by weights. */
  double shareAlive(EnsembleRun run, double[] weights, LocalDate wash, LocalDate day) {
    return mean(alive(run, wash, day), weights) / mean(alive(run, wash, wash), weights);
  }
}
