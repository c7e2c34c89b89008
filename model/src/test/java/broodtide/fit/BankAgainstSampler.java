package broodtide.fit;

import broodtide.control.Control;
import broodtide.engine.Ensemble;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior.SamplerSettings;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.stat.StatUtils;

/**
 * Invented hives, each read by banks of seasons and by samplers of several seeds. Every third hive
 * was treated, some after their washes, and hives have one to four washes.
 *
 * <p>Hives that are read with one seed share a part of its noise, by bank and by sampler alike, so
 * that a mean over hives of one seed is no surer than a few hives are: seeds are what is counted.
 */
final class BankAgainstSampler {
  /** Days on which the infestation is looked at: the last wash of most, and a month after it. */
  private static final int[] LOOKED_AT = {92, 122};

  private static final double[] LEVELS = {0.05, 0.5, 0.95};
  private static final int[][] VISITS = {{0, 30, 61, 92}, {0, 33, 92}, {0, 61}, {45}};
  private static final int LENGTH = 122;

  private final int particles;
  private final Workers workers;

  /** By seed. */
  private final List<SeasonBanks> banks;

  /** How many readings by a bank needed a sampler. */
  private int fallenBack;

  BankAgainstSampler(int particles, int seeds, Workers workers) {
    this.particles = particles;
    this.workers = workers;
    banks = Stream.generate(() -> new SeasonBanks(6)).limit(seeds).toList();
  }

  /**
   * Two ways of reading the same hives held against each other in one figure, on the scale of
   * logarithms.
   *
   * @param name the figure
   * @param bank standard deviation between seeds of a hive's figure from a bank, over all hives
   * @param sampler the same from a sampler
   * @param lean bank less sampler, on average over hives and seeds
   */
  record Compared(String name, double bank, double sampler, double lean) {
    static Compared of(String name, double[][] bank, double[][] sampler) {
      return new Compared(name, noise(bank), noise(sampler), mean(bank) - mean(sampler));
    }

    /** Between seeds, of figures by hive and seed. */
    private static double noise(double[][] figures) {
      double sum = 0;
      for (double[] hive : figures) {
        sum += StatUtils.variance(hive);
      }
      return Math.sqrt(sum / figures.length);
    }

    private static double mean(double[][] figures) {
      return Arrays.stream(figures).mapToDouble(StatUtils::mean).average().orElseThrow();
    }

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "%-14s seeds apart: bank %.4f, sampler %.4f; bank leans %+.4f",
          name,
          bank,
          sampler,
          lean);
    }
  }

  /** Compares all figures over some hives. */
  List<Compared> run(int hives) {
    List<String> names = new ArrayList<>();
    for (int day : LOOKED_AT) {
      for (double level : LEVELS) {
        names.add("day " + day + ", " + Math.round(100 * level) + " %");
      }
    }
    double[][][] bank = new double[names.size()][hives][banks.size()];
    double[][][] sampler = new double[names.size()][hives][banks.size()];
    for (int h = 0; h < hives; h++) {
      Scenario past = past(h);
      List<Wash> washes = washes(past, VISITS[h % VISITS.length], new Well19937c(h));
      for (int s = 0; s < banks.size(); s++) {
        double[] shared = figures(shared(past, washes, s), past);
        double[] own = figures(Invented.sampled(past, washes, particles, s + 1, workers), past);
        for (int f = 0; f < own.length; f++) {
          bank[f][h][s] = shared[f];
          sampler[f][h][s] = own[f];
        }
      }
    }
    List<Compared> out = new ArrayList<>();
    for (int f = 0; f < bank.length; f++) {
      out.add(Compared.of(names.get(f), bank[f], sampler[f]));
    }
    return out;
  }

  private SeasonPosterior shared(Scenario past, List<Wash> washes, int seed) {
    SeasonPosterior shared =
        banks
            .get(seed)
            .posterior(
                past,
                washes,
                List.of(),
                Priors.defaults(),
                new SamplerSettings(particles, 3, seed + 1),
                workers,
                Progress.NONE);
    fallenBack += shared.sample().acceptance() < 1 ? 1 : 0;
    return shared;
  }

  /** {@return share of readings by a bank that needed a sampler of their own} */
  double fallenBack(int hives) {
    return (double) fallenBack / (hives * banks.size());
  }

  private static Scenario past(int hive) {
    Control[] given =
        hive % 3 == 0 ? new Control[] {Invented.strips(hive % 2 == 0 ? 40 : 95)} : new Control[0];
    return Invented.season(LENGTH, given);
  }

  private double[] figures(SeasonPosterior posterior, Scenario past) {
    EnsembleRun run = posterior.run(past, Set.of(Quantity.INFESTATION), workers, Progress.NONE);
    double[] out = new double[LOOKED_AT.length * LEVELS.length];
    int f = 0;
    for (int day : LOOKED_AT) {
      for (double level : LEVELS) {
        out[f++] = Math.log(run.quantiles(Quantity.INFESTATION, day, level)[0]);
      }
    }
    return out;
  }

  /** Washes of a colony drawn from the priors; drawn again where nobody could have made them. */
  private List<Wash> washes(Scenario past, int[] days, RandomGenerator random) {
    StandardColony start = StandardColony.on(past.model(), past.start());
    ParticleLayout layout = ParticleLayout.of(SeasonPosterior.courses(past), 1);
    LocalDate last = past.start().plusDays(days[days.length - 1]);
    List<Wash> out = new ArrayList<>();
    while (out.isEmpty()) {
      double[] z = new double[layout.places().size()];
      Arrays.setAll(z, d -> random.nextGaussian());
      ColonyDraw draw = Priors.defaults().draw(z, layout);
      SimulatedColony member = draw.colony(BeeYears.of(past, last));
      Ensemble.run(
          past,
          start,
          List.of(member),
          (first, count) ->
              (day, view) -> {
                if (Arrays.stream(days).anyMatch(d -> d == day)) {
                  WashModel model = new WashModel(Invented.wash(day, 0, 300));
                  double mean = model.mean(Quantity.INFESTATION.of(view, 0) / 100);
                  int mites = WashModel.draw(mean, model.size(draw.overdispersion), random);
                  if (mites <= 300 && view.adults(0) >= 300) {
                    out.add(Invented.wash(day, mites, 300));
                  }
                }
              },
          workers,
          Progress.NONE);
      if (out.size() < days.length) {
        out.clear();
      }
    }
    return out;
  }
}
