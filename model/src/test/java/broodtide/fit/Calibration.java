package broodtide.fit;

import broodtide.engine.Ensemble;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.RandomDataGenerator;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Simulation-based calibration (Talts, Betancourt, Simpson, Vehtari & Gelman 2018,
 * arXiv:1804.06788): unknowns are drawn from the priors, washes from the unknowns, and a posterior
 * from the washes. Over many repeats the rank of each true value among draws of its posterior is
 * uniform when, and only when, prior, model and sampler belong together.
 *
 * <p>Records that nobody could have written down are drawn again: a colony smaller than the sample,
 * or more mites than bees in it. The first is impossible under the likelihood as well, the second
 * depends on the counts alone, so that neither changes what the ranks should be.
 */
final class Calibration {
  /** Draws of each posterior that the truth is ranked among, taken at random from all particles. */
  static final int DRAWS = 63;

  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
  private static final int[] DAYS = {0, 30, 61, 92};
  private static final int[] BEES = {300, 320, 290, 310};
  private static final int TREATED = 40;
  private static final int AHEAD = 122;

  private final Priors priors = Priors.defaults();
  private final Scenario past = Invented.season(AHEAD, Invented.strips(TREATED));
  private final StandardColony start = StandardColony.on(past.model(), past.start());
  private final LocalDate lastWash = past.start().plusDays(DAYS[DAYS.length - 1]);
  private final ParticleLayout layout = SeasonPosterior.layout(past, lastWash);
  private final BeeYears years = BeeYears.of(past, lastWash);

  /** Of the truth, which has what no wash can tell of as well. */
  private final ParticleLayout all = ParticleLayout.of(SeasonPosterior.courses(past), 1);

  private final int particles;
  private final Workers workers;
  private final Reading reading;

  Calibration(int particles, Workers workers) {
    this(
        particles,
        workers,
        (past, washes, seed) -> Invented.sampled(past, washes, particles, 31 * seed + 7, workers));
  }

  private Calibration(int particles, Workers workers, Reading reading) {
    this.particles = particles;
    this.workers = workers;
    this.reading = reading;
  }

  /**
   * The same for banks of seasons.
   *
   * @param repeats how many repeats share a bank
   */
  static Calibration ofBanks(int particles, int repeats, Workers workers) {
    SeasonBanks banks = new SeasonBanks(1);
    return new Calibration(
        particles,
        workers,
        (past, washes, seed) ->
            banks.posterior(
                past,
                washes,
                List.of(),
                Priors.defaults(),
                new SeasonPosterior.SamplerSettings(particles, 3, 1 + seed / repeats),
                workers,
                Progress.NONE));
  }

  /** How the washes of a repeat are read. */
  @FunctionalInterface
  private interface Reading {
    SeasonPosterior of(Scenario past, List<Wash> washes, long seed);
  }

  /**
   * Ranks of one quantity.
   *
   * @param name what it is
   * @param ranks one per repeat, 0 to {@link #DRAWS}
   */
  record Ranks(String name, int[] ranks) {
    /** How many ranks fall into each of several equal bins. */
    int[] histogram(int bins) {
      int[] out = new int[bins];
      for (int r : ranks) {
        out[r * bins / (DRAWS + 1)]++;
      }
      return out;
    }

    /** Chance of a chi-square at least as large when ranks are uniform. */
    double p(int bins) {
      double expected = (double) ranks.length / bins;
      double chi =
          Arrays.stream(histogram(bins)).mapToDouble(n -> (n - expected) * (n - expected)).sum()
              / expected;
      return 1 - new ChiSquaredDistribution(null, bins - 1.0).cumulativeProbability(chi);
    }
  }

  /** Ranks of every unknown and of the infestation a month after the last wash. */
  List<Ranks> run(int repeats, long seed) {
    List<String> names =
        new ArrayList<>(layout.places().stream().map(p -> p.unknown().id()).toList());
    names.add("forecast, 30 days ahead");
    int[][] ranks = new int[names.size()][repeats];
    SplittableRandom[] streams = Streams.of(seed, Streams.Purpose.SIMULATE, repeats);
    for (int r = 0; r < repeats; r++) {
      int[] of = repeat(new Well19937c(streams[r].nextLong()), seed + r);
      for (int q = 0; q < of.length; q++) {
        ranks[q][r] = of[q];
      }
    }
    List<Ranks> out = new ArrayList<>();
    for (int q = 0; q < ranks.length; q++) {
      out.add(new Ranks(names.get(q), ranks[q]));
    }
    return out;
  }

  private int[] repeat(RandomGenerator random, long seed) {
    double[] truth = new double[all.places().size()];
    List<Wash> washes = List.of();
    double[] ahead = new double[1];
    while (washes.isEmpty()) {
      for (int d = 0; d < truth.length; d++) {
        truth[d] = NORMAL.inverseCumulativeProbability(random.nextDouble());
      }
      washes = washes(truth, random, ahead);
    }
    SeasonPosterior posterior = reading.of(past, washes, seed);
    EnsembleRun run = posterior.run(past, Set.of(Quantity.INFESTATION), workers, Progress.NONE);
    double[] forecast = run.values(Quantity.INFESTATION, day(AHEAD));
    // at random: what lies ahead of the washes is even over all colonies, not over every so many
    int[] chosen = new RandomDataGenerator(random).nextPermutation(particles, DRAWS);
    int unknowns = layout.places().size();
    int[] out = new int[unknowns + 1];
    for (int k = 0; k < DRAWS; k++) {
      int i = chosen[k];
      double[] z = posterior.sample().z()[i];
      for (int d = 0; d < unknowns; d++) {
        out[d] += z[d] < truth[all.places().indexOf(layout.places().get(d))] ? 1 : 0;
      }
      out[unknowns] += forecast[i] < ahead[0] ? 1 : 0;
    }
    return out;
  }

  /** Washes of one colony; none when they could not have been written down. */
  private List<Wash> washes(double[] z, RandomGenerator random, double[] ahead) {
    SimulatedColony member = priors.draw(z, all).colony(years);
    double[] infestation = new double[AHEAD + 1];
    double[] adults = new double[AHEAD + 1];
    Ensemble.run(
        past,
        start,
        List.of(member),
        (first, count) ->
            (day, view) -> {
              infestation[day] = Quantity.INFESTATION.of(view, 0);
              adults[day] = view.adults(0);
            },
        workers,
        Progress.NONE);
    ahead[0] = infestation[AHEAD];
    List<Wash> out = new ArrayList<>();
    for (int w = 0; w < DAYS.length; w++) {
      WashModel model = new WashModel(Wash.of(day(DAYS[w]), "A", 0, BEES[w]));
      double mean = model.mean(infestation[DAYS[w]] / 100);
      int mites = WashModel.draw(mean, model.size(priors.draw(z, all).overdispersion), random);
      if (adults[DAYS[w]] < BEES[w] || mites > BEES[w]) {
        return List.of();
      }
      out.add(Wash.of(day(DAYS[w]), "A", mites, BEES[w]));
    }
    return out;
  }

  private LocalDate day(int day) {
    return past.start().plusDays(day);
  }
}
