package broodtide.fit;

import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.apache.commons.math3.special.Gamma;
import org.apache.commons.math3.util.FastMath;

/**
 * Whether washes and model agree. Two questions: does each wash lie where the colonies fitted to it
 * would put it, and are washes this improbable to be expected of any colony at all (the prior
 * predictive check of Box 1980, J. R. Stat. Soc. A 143:383, on the probability of the washes)?
 *
 * @param checks each wash against what its own colonies would show
 * @param usual share of invented records of the same dates whose washes, under the priors, are as
 *     improbable as these or more so, 0 to 1
 */
public record Agreement(List<ExpectedWashes.Check> checks, double usual) {
  /** Share of invented records below which real ones are called out of the ordinary; choice. */
  public static final double RARE = 0.01;

  private static final int COLONIES = 1024;
  private static final int RECORDS = 200;

  /** So many factors, each of at most a few thousand, multiply to no more than a double holds. */
  private static final int FEW = 64;

  private static final long SEED = 0xA6EE;
  private static final int NONE_LEFT_OUT = -1;

  /** Copies the list. */
  public Agreement {
    checks = List.copyOf(checks);
  }

  /**
   * Compares the washes of a posterior with it and with its priors.
   *
   * @param posterior what the washes say; its own priors are what it is held against
   * @param workers threads; their number does not change the result
   * @return how they agree
   */
  public static Agreement of(SeasonPosterior posterior, Workers workers) {
    List<ExpectedWashes.Check> checks = ExpectedWashes.checks(posterior, workers);
    return new Agreement(checks, checks.isEmpty() ? 1 : usual(posterior, workers));
  }

  /**
   * What invented records hang on.
   *
   * @param past rates, days and what was done
   * @param priors what is believed before
   * @param washes the visits, without what was found
   */
  record Visits(Scenario past, Priors priors, List<Wash> washes) {
    static Visits of(SeasonPosterior posterior) {
      List<Wash> bare =
          posterior.washes().stream()
              .map(
                  w ->
                      new Wash(
                          w.date(),
                          "invented",
                          0,
                          w.bees(),
                          w.method(),
                          w.frame(),
                          "",
                          OptionalDouble.empty()))
              .toList();
      return new Visits(posterior.past(), posterior.priors(), bare);
    }
  }

  /**
   * Records that colonies of the priors would give.
   *
   * @param terms what stays the same in the probabilities of counts, by wash
   * @param logMeans how probable each invented record is
   */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  record Invented(List<Terms> terms, double[] logMeans) {
    static Invented of(SeasonPosterior posterior, Workers workers) {
      SeasonPosterior prior =
          posterior.beforeWashes(new SeasonPosterior.SamplerSettings(COLONIES, 1, SEED));
      List<ExpectedWashes.Parts> parts =
          ExpectedWashes.parts(prior, posterior.past().plan(), posterior.washes(), workers);
      List<Terms> terms = parts.stream().map(Terms::of).toList();
      SplittableRandom[] streams = Streams.of(SEED, Streams.Purpose.PREDICT, RECORDS);
      double[] logMeans = new double[RECORDS];
      workers.run(
          RECORDS,
          r -> {
            RandomGenerator random = new Well19937c(streams[r].nextLong());
            int colony = random.nextInt(COLONIES);
            int[] counts = new int[parts.size()];
            for (int w = 0; w < counts.length; w++) {
              ExpectedWashes.Parts p = parts.get(w);
              counts[w] = WashModel.draw(p.means()[colony], p.sizes()[colony], random);
            }
            logMeans[r] = logMean(terms, counts, colony);
          },
          Progress.NONE);
      return new Invented(terms, logMeans);
    }
  }

  private static double usual(SeasonPosterior posterior, Workers workers) {
    Invented invented =
        posterior
            .origin()
            .invented
            .get(Visits.of(posterior), () -> Invented.of(posterior, workers));
    int[] real = posterior.washes().stream().mapToInt(Wash::mites).toArray();
    double own = logMean(invented.terms(), real, NONE_LEFT_OUT);
    long rare = Arrays.stream(invented.logMeans()).filter(log -> log <= own).count();
    return (double) rare / RECORDS;
  }

  /**
   * Log of the mean density of a record over colonies, on the scale of log(1 + count): on the scale
   * of counts every record with many mites would look improbable, for its chance is spread wide.
   *
   * @param apart the colony that gave the record, which has no say: none gave the real one
   */
  private static double logMean(List<Terms> terms, int[] counts, int apart) {
    double[] log = new double[COLONIES];
    for (int w = 0; w < counts.length; w++) {
      terms.get(w).add(counts[w], log);
    }
    if (apart != NONE_LEFT_OUT) {
      log[apart] = Double.NEGATIVE_INFINITY;
    }
    double top = Arrays.stream(log).max().orElseThrow();
    if (top == Double.NEGATIVE_INFINITY) {
      return top;
    }
    double sum = 0;
    for (double v : log) {
      sum += FastMath.exp(v - top);
    }
    return top + FastMath.log(sum / (apart == NONE_LEFT_OUT ? COLONIES : COLONIES - 1));
  }

  /** What stays the same in the probabilities of all counts of one wash, by colony. */
  record Terms(double[] none, double[] perMite, double[] sizes, double[] logGamma) {
    static Terms of(ExpectedWashes.Parts p) {
      double[] none = new double[COLONIES];
      double[] perMite = new double[COLONIES];
      double[] logGamma = new double[COLONIES];
      for (int i = 0; i < COLONIES; i++) {
        none[i] = WashModel.logProbability(0, p.means()[i], p.sizes()[i]);
        logGamma[i] = Gamma.logGamma(p.sizes()[i]);
        perMite[i] = FastMath.log(p.means()[i] / (p.sizes()[i] + p.means()[i]));
      }
      return new Terms(none, perMite, p.sizes(), logGamma);
    }

    void add(int count, double[] log) {
      double same = FastMath.log1p(count) - Gamma.logGamma(count + 1.0);
      for (int i = 0; i < COLONIES; i++) {
        log[i] += none[i] + (count == 0 ? 0 : count * perMite[i] + ways(count, i)) + same;
      }
    }

    /** Log of gamma(count + size) / gamma(size): for few mites a product of as many terms. */
    private double ways(int count, int colony) {
      double size = sizes[colony];
      if (count > FEW) {
        return Gamma.logGamma(count + size) - logGamma[colony];
      }
      double product = size;
      for (int k = 1; k < count; k++) {
        product *= size + k;
      }
      return FastMath.log(product);
    }
  }

  /** {@return whether every wash lies in the outer tenth of what its own colonies would show} */
  public boolean allSurprising() {
    return !checks.isEmpty() && checks.stream().allMatch(ExpectedWashes.Check::surprising);
  }

  /** {@return whether washes and model contradict each other} */
  public boolean contradicts() {
    return allSurprising() || usual < RARE;
  }
}
