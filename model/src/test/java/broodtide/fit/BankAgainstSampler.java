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
import java.util.Set;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/**
 * Invented hives, each read by a bank of seasons and by samplers of two seeds. Every third hive was
 * treated, some after their washes, and hives have one to four washes.
 */
final class BankAgainstSampler {
  /** Days on which the infestation is looked at: the last wash of most, and a month after it. */
  private static final int[] LOOKED_AT = {92, 122};

  private static final double[] LEVELS = {0.05, 0.5, 0.95};
  private static final int[][] VISITS = {{0, 30, 61, 92}, {0, 33, 92}, {0, 61}, {45}};
  private static final int LENGTH = 122;

  private final int particles;
  private final Workers workers;
  private final SeasonBanks banks = new SeasonBanks(6);

  /** How many hives the bank could not read without a sampler. */
  private int fallenBack;

  private final List<Double> effective = new ArrayList<>();

  BankAgainstSampler(int particles, Workers workers) {
    this.particles = particles;
    this.workers = workers;
  }

  /**
   * Differences between two readings of the same hives in one figure, on the scale of logarithms.
   *
   * @param name the figure
   * @param bank bank less the sampler of the first seed, by hive
   * @param seeds sampler of the second seed less that of the first, by hive
   */
  record Differences(String name, double[] bank, double[] seeds) {
    static double rms(double[] values) {
      return Math.sqrt(Arrays.stream(values).map(v -> v * v).average().orElseThrow());
    }

    static double mean(double[] values) {
      return Arrays.stream(values).average().orElseThrow();
    }

    @Override
    public String toString() {
      return String.format(
          "%-24s bank %.4f (mean %+.4f), seeds %.4f (mean %+.4f)",
          name, rms(bank), mean(bank), rms(seeds), mean(seeds));
    }
  }

  /** Differences in all figures over some hives. */
  List<Differences> run(int hives) {
    List<String> names = new ArrayList<>();
    for (int day : LOOKED_AT) {
      for (double level : LEVELS) {
        names.add("day " + day + ", " + Math.round(100 * level) + " %");
      }
    }
    double[][] bank = new double[names.size()][hives];
    double[][] seeds = new double[names.size()][hives];
    for (int h = 0; h < hives; h++) {
      Scenario past = past(h);
      List<Wash> washes = washes(past, VISITS[h % VISITS.length], new Well19937c(h));
      SeasonPosterior shared =
          banks.posterior(
              past,
              washes,
              List.of(),
              Priors.defaults(),
              new SamplerSettings(particles, 3, 1),
              workers,
              Progress.NONE);
      fallenBack += shared.sample().acceptance() < 1 ? 1 : 0;
      effective.add(shared.sample().effectiveSize());
      double[] drawn = figures(shared, past);
      double[] first = figures(Invented.posterior(past, washes, particles, 1, workers), past);
      double[] second = figures(Invented.posterior(past, washes, particles, 2, workers), past);
      for (int f = 0; f < first.length; f++) {
        bank[f][h] = drawn[f] - first[f];
        seeds[f][h] = second[f] - first[f];
      }
    }
    List<Differences> out = new ArrayList<>();
    for (int f = 0; f < bank.length; f++) {
      out.add(new Differences(names.get(f), bank[f], seeds[f]));
    }
    return out;
  }

  /** {@return how many hives needed a sampler of their own} */
  int fallenBack() {
    return fallenBack;
  }

  List<Double> effective() {
    return effective;
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
