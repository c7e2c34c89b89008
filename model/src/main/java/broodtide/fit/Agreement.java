package broodtide.fit;

import broodtide.engine.Progress;
import broodtide.engine.Scenario;
import broodtide.engine.Workers;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentHashMap;
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

  /** Logarithm of a share that no sum of colonies would show. */
  private static final double NEGLIGIBLE = -50;

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
   * What colonies before any wash hang on.
   *
   * @param past rates, days and what was done
   * @param priors what is believed before
   * @param dates the days of the visits
   */
  record Days(Scenario past, Priors priors, List<LocalDate> dates) {}

  /**
   * Colonies of the priors on the days of some visits.
   *
   * @param states by visit
   * @param dispersions sizes of the negative binomial of washes, by colony
   * @param ways what washes of one spread share, by that spread
   */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  record Unwashed(List<ExpectedWashes.State> states, double[] dispersions, Map<Double, Ways> ways) {
    static Unwashed of(SeasonPosterior posterior, List<LocalDate> dates, Workers workers) {
      SeasonPosterior prior =
          posterior.beforeWashes(new SeasonPosterior.SamplerSettings(COLONIES, 1, SEED));
      return new Unwashed(
          ExpectedWashes.states(prior, posterior.past().plan(), dates, workers),
          prior.dispersions(),
          new ConcurrentHashMap<>());
    }

    Ways ways(Wash wash) {
      WashModel model = new WashModel(wash);
      return ways.computeIfAbsent(
          model.extraVariance(),
          any -> new Ways(Arrays.stream(dispersions).map(model::size).toArray()));
    }
  }

  /**
   * Log of gamma(count + size) / gamma(size) by colony, the same for all washes of one spread. That
   * of few mites is kept: most counts are small.
   */
  static final class Ways {
    private final double[] sizes;
    private final Map<Integer, double[]> few = new ConcurrentHashMap<>();

    Ways(double[] sizes) {
      this.sizes = sizes;
    }

    /** Of a count of 1 or more. */
    double[] of(int count) {
      return count > FEW
          ? Arrays.stream(sizes)
              .map(size -> Gamma.logGamma(count + size) - Gamma.logGamma(size))
              .toArray()
          : few.computeIfAbsent(
              count, c -> Arrays.stream(sizes).map(size -> product(c, size)).toArray());
    }

    /** The same as a product of as many terms. */
    private static double product(int count, double size) {
      double product = size;
      for (int k = 1; k < count; k++) {
        product *= size + k;
      }
      return FastMath.log(product);
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
      List<LocalDate> days = posterior.washes().stream().map(Wash::date).toList();
      Unwashed prior =
          posterior
              .origin()
              .unwashed
              .get(
                  new Days(posterior.past(), posterior.priors(), days),
                  () -> Unwashed.of(posterior, days, workers));
      List<ExpectedWashes.Parts> parts =
          ExpectedWashes.parts(prior.states(), prior.dispersions(), posterior.washes());
      List<Terms> terms = new ArrayList<>();
      for (int w = 0; w < parts.size(); w++) {
        terms.add(Terms.of(parts.get(w), prior.ways(posterior.washes().get(w))));
      }
      // most counts are small, and many records have the same
      List<Map<Integer, double[]>> rows =
          terms.stream().<Map<Integer, double[]>>map(t -> new ConcurrentHashMap<>()).toList();
      SplittableRandom[] streams = Streams.of(SEED, Streams.Purpose.PREDICT, RECORDS);
      double[] logMeans = new double[RECORDS];
      workers.run(
          RECORDS,
          r -> {
            RandomGenerator random = new Well19937c(streams[r].nextLong());
            int colony = random.nextInt(COLONIES);
            List<double[]> own = new ArrayList<>();
            for (int w = 0; w < parts.size(); w++) {
              ExpectedWashes.Parts p = parts.get(w);
              int count = WashModel.draw(p.means()[colony], p.sizes()[colony], random);
              own.add(rows.get(w).computeIfAbsent(count, terms.get(w)::row));
            }
            logMeans[r] = logMean(own, colony);
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
    List<double[]> real = new ArrayList<>();
    for (int w = 0; w < posterior.washes().size(); w++) {
      real.add(invented.terms().get(w).row(posterior.washes().get(w).mites()));
    }
    double own = logMean(real, NONE_LEFT_OUT);
    long rare = Arrays.stream(invented.logMeans()).filter(log -> log <= own).count();
    return (double) rare / RECORDS;
  }

  /**
   * Log of the mean density of a record over colonies, on the scale of log(1 + count): on the scale
   * of counts every record with many mites would look improbable, for its chance is spread wide.
   *
   * @param rows log densities of its counts, by colony
   * @param apart the colony that gave the record, which has no say: none gave the real one
   */
  private static double logMean(List<double[]> rows, int apart) {
    double[] log = new double[COLONIES];
    for (double[] row : rows) {
      for (int i = 0; i < COLONIES; i++) {
        log[i] += row[i];
      }
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
      sum += v - top > NEGLIGIBLE ? FastMath.exp(v - top) : 0;
    }
    return top + FastMath.log(sum / (apart == NONE_LEFT_OUT ? COLONIES : COLONIES - 1));
  }

  /** What stays the same in the probabilities of all counts of one wash, by colony. */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  record Terms(double[] none, double[] perMite, Ways ways) {
    static Terms of(ExpectedWashes.Parts p, Ways ways) {
      double[] none = new double[COLONIES];
      double[] perMite = new double[COLONIES];
      for (int i = 0; i < COLONIES; i++) {
        none[i] = WashModel.logProbability(0, p.means()[i], p.sizes()[i]);
        perMite[i] = FastMath.log(p.means()[i] / (p.sizes()[i] + p.means()[i]));
      }
      return new Terms(none, perMite, ways);
    }

    /** Log densities of one count, by colony. */
    double[] row(int count) {
      double same = FastMath.log1p(count) - Gamma.logGamma(count + 1.0);
      double[] out = new double[COLONIES];
      if (count == 0) {
        Arrays.setAll(out, i -> none[i] + same);
        return out;
      }
      double[] own = ways.of(count);
      for (int i = 0; i < COLONIES; i++) {
        out[i] = none[i] + (count * perMite[i] + own[i]) + same;
      }
      return out;
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
