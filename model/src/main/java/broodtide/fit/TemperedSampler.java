package broodtide.fit;

import broodtide.engine.Progress;
import broodtide.measure.OutOfRange;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.random.SobolSequenceGenerator;
import org.apache.commons.math3.util.FastMath;

/**
 * Tempered sequential Monte Carlo over unknowns that are independent standard normals before any
 * data (Neal 2001, Statistics and Computing 11:125; Del Moral, Doucet &amp; Jasra 2006, J. R.
 * Statist. Soc. B 68:411). Particles start on a shifted Sobol set, or are drawn from more whose
 * likelihood is known; the likelihood is let in by steps that each keep an effective sample size of
 * half of the particles; after each step particles are resampled systematically and moved by a
 * random walk shaped by their own covariance.
 *
 * <p>The same seed gives the same particles, however the likelihood is computed.
 */
final class TemperedSampler {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
  private static final double KEEP = 0.5;
  private static final int MOST_STEPS = 60;
  private static final int WHOLE = 1000;

  /** Most unknowns that can be sampled at once. */
  static final int MOST_DIMENSIONS = 81;

  private final int dimension;
  private final int particles;
  private final int moves;
  private final long seed;

  /** Log-likelihoods of all particles at once. */
  @FunctionalInterface
  public interface LogLikelihood {
    /**
     * Fills in the log-likelihood of every particle; minus infinity where data are impossible.
     *
     * @param z unknowns, by particle then dimension, in standard normal units
     * @param out one value per particle
     */
    void of(double[][] z, double[] out);
  }

  /** No particle of the prior can have given the data, or a likelihood is not a number. */
  public static final class NothingFits extends IllegalStateException {
    private static final long serialVersionUID = 1L;

    NothingFits(double top) {
      super(
          Double.isNaN(top)
              ? "a log-likelihood is not a number"
              : "no particle of the prior fits the data");
    }
  }

  /**
   * Draws from the prior, with their log-likelihoods.
   *
   * @param z unknowns, by draw then dimension, in standard normal units
   * @param logLik one value per draw
   */
  @SuppressWarnings("ArrayRecordComponent") // read only, never compared
  record Known(double[][] z, double[] logLik) {}

  /**
   * A finished sample.
   *
   * @param z unknowns by particle then dimension, all of equal weight
   * @param effectiveSize particles less those that repeat others: the sum of counts squared over
   *     the sum of squared counts
   * @param acceptance share of moves accepted in the last step, 0 to 1
   * @param steps tempering steps taken
   * @param logEvidence log of the mean likelihood under the prior
   */
  public record Sample(
      double[][] z, double effectiveSize, double acceptance, int steps, double logEvidence) {
    /** The same quality with other unknowns. */
    Sample with(double[][] other) {
      return new Sample(other, effectiveSize, acceptance, steps, logEvidence);
    }
  }

  /**
   * A sampler.
   *
   * @param dimension unknowns, 1 to 81
   * @param particles 16 to 1,000,000
   * @param moves random-walk moves after each step, 1 to 100
   * @param seed seed
   */
  public TemperedSampler(int dimension, int particles, int moves, long seed) {
    OutOfRange.check("dimension", dimension, 1, MOST_DIMENSIONS, "unknowns");
    OutOfRange.check("particles", particles, 16, 1_000_000, "particles");
    OutOfRange.check("moves", moves, 1, 100, "moves");
    this.dimension = dimension;
    this.particles = particles;
    this.moves = moves;
    this.seed = seed;
  }

  /**
   * Draws from the prior alone: the shifted Sobol set in standard normal units.
   *
   * @return particles by unknown
   */
  public double[][] prior() {
    double[][] z = chances();
    for (double[] row : z) {
      normal(row);
    }
    return z;
  }

  /** The shifted Sobol set, which {@link #normal(double[])} makes draws from the prior of. */
  double[][] chances() {
    SobolSequenceGenerator sobol = new SobolSequenceGenerator(dimension);
    SplittableRandom random = Streams.of(seed, Streams.Purpose.START);
    double[] shift = random.doubles(dimension).toArray();
    double[][] chances = new double[particles][];
    for (int i = 0; i < particles; i++) {
      chances[i] = sobol.nextVector();
      for (int d = 0; d < dimension; d++) {
        chances[i][d] += shift[d];
        chances[i][d] -= Math.floor(chances[i][d]);
      }
    }
    return chances;
  }

  /** Turns chances into draws of a standard normal, in place. */
  static void normal(double[] chances) {
    for (int d = 0; d < chances.length; d++) {
      chances[d] = normal(Math.min(1 - 1e-12, Math.max(1e-12, chances[d])));
    }
  }

  /**
   * Samples the posterior.
   *
   * @param likelihood log-likelihoods
   * @return the sample
   * @throws NothingFits when no particle can explain the data at all
   */
  public Sample sample(LogLikelihood likelihood) {
    return sample(likelihood, Progress.NONE);
  }

  /**
   * Samples the posterior.
   *
   * @param likelihood log-likelihoods
   * @param progress is told after every round of moves how much of the likelihood has been let in,
   *     of {@value #WHOLE} parts; how many steps there will be is not known before
   * @return the sample
   * @throws NothingFits when no particle can explain the data at all
   */
  public Sample sample(LogLikelihood likelihood, Progress progress) {
    double[][] z = prior();
    double[] logLik = new double[particles];
    likelihood.of(z, logLik);
    return sample(new Known(z, logLik), likelihood, progress);
  }

  /** The same from draws that may be more than the particles, which takes fewer steps. */
  Sample sample(Known known, LogLikelihood likelihood, Progress progress) {
    double[][] z = known.z();
    double[] logLik = known.logLik();
    SplittableRandom picker = Streams.of(seed, Streams.Purpose.RESAMPLE);
    SplittableRandom[] own = Streams.of(seed, Streams.Purpose.MOVE, particles);
    double temperature = 0;
    double evidence = 0;
    double acceptance = 1;
    double scale = 2.38 / Math.sqrt(dimension);
    int steps = 0;
    while (temperature < 1) {
      double next = steps < MOST_STEPS ? nextTemperature(logLik, temperature) : 1;
      double[] weights = new double[logLik.length];
      evidence += weigh(logLik, next - temperature, weights);
      double[][] root = spread(z, weights);
      int[] parents = resample(weights, particles, picker);
      z = pick(z, parents);
      logLik = pick(logLik, parents);
      double before = temperature;
      temperature = next;
      steps++;
      int rounds = temperature < 1 ? moves : 2 * moves;
      for (int m = 0; m < rounds; m++) {
        acceptance = move(z, logLik, temperature, root, scale, own, likelihood);
        scale *= FastMath.exp(0.7 * (acceptance - 0.3));
        double letIn = before + (temperature - before) * (m + 1) / rounds;
        progress.at((int) Math.round(WHOLE * letIn), WHOLE);
      }
    }
    return new Sample(z, effectiveSize(z), acceptance, steps, evidence);
  }

  /** The furthest temperature that leaves an effective sample size of half of the particles. */
  private double nextTemperature(double[] logLik, double from) {
    if (share(logLik, 1 - from) >= KEEP) {
      return 1;
    }
    double low = from;
    double high = 1;
    for (int i = 0; i < 60; i++) {
      double mid = 0.5 * (low + high);
      if (share(logLik, mid - from) >= KEEP) {
        low = mid;
      } else {
        high = mid;
      }
    }
    return Math.max(low, from + 1e-9 * (1 - from));
  }

  /** Effective sample size of a step, as a share of the particles. */
  private double share(double[] logLik, double step) {
    double[] w = new double[logLik.length];
    weigh(logLik, step, w);
    double squares = 0;
    for (double v : w) {
      squares += v * v;
    }
    return 1 / (squares * particles);
  }

  /** Normalised weights of a step; returns the log of their mean before that. */
  static double weigh(double[] logLik, double step, double[] weights) {
    double top = Arrays.stream(logLik).max().orElseThrow();
    if (top == Double.NEGATIVE_INFINITY || Double.isNaN(top)) {
      throw new NothingFits(top);
    }
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      weights[i] = FastMath.exp(step * (logLik[i] - top));
      sum += weights[i];
    }
    for (int i = 0; i < weights.length; i++) {
      weights[i] /= sum;
    }
    return step * top + FastMath.log(sum / weights.length);
  }

  /**
   * Systematic resampling in a shuffled order. In the order of the Sobol set weights rise and fall
   * with the period of its digits, and equal strides fall into step with them: the error would not
   * shrink with the number of particles.
   *
   * @param weights normalised weights
   * @param draws how many to draw
   */
  static int[] resample(double[] weights, int draws, SplittableRandom random) {
    int n = weights.length;
    int[] order = new int[n];
    for (int i = 0; i < n; i++) {
      int other = random.nextInt(i + 1);
      order[i] = order[other];
      order[other] = i;
    }
    double u = random.nextDouble();
    int[] parents = new int[draws];
    double reached = weights[order[0]];
    int at = 0;
    for (int i = 0; i < draws; i++) {
      double mark = (i + u) / draws;
      while (mark > reached && at < n - 1) {
        at++;
        reached += weights[order[at]];
      }
      parents[i] = order[at];
    }
    return parents;
  }

  /** A triangular root of the weighted covariance of the particles. */
  private double[][] spread(double[][] z, double[] weights) {
    double[] mean = new double[dimension];
    for (int i = 0; i < z.length; i++) {
      for (int d = 0; d < dimension; d++) {
        mean[d] += weights[i] * z[i][d];
      }
    }
    double[][] cov = new double[dimension][dimension];
    for (int i = 0; i < z.length; i++) {
      for (int d = 0; d < dimension; d++) {
        for (int e = 0; e <= d; e++) {
          cov[d][e] += weights[i] * (z[i][d] - mean[d]) * (z[i][e] - mean[e]);
        }
      }
    }
    for (int d = 0; d < dimension; d++) {
      cov[d][d] += 1e-9;
      for (int e = 0; e < d; e++) {
        cov[e][d] = cov[d][e];
      }
    }
    return new CholeskyDecomposition(new Array2DRowRealMatrix(cov, false), 1e-9, 1e-14)
        .getL()
        .getData();
  }

  private double move(
      double[][] z,
      double[] logLik,
      double temperature,
      double[][] root,
      double scale,
      SplittableRandom[] own,
      LogLikelihood likelihood) {
    double[][] tried = new double[particles][dimension];
    for (int i = 0; i < particles; i++) {
      double[] step = new double[dimension];
      for (int d = 0; d < dimension; d++) {
        step[d] = normal(open(own[i].nextDouble()));
      }
      for (int d = 0; d < dimension; d++) {
        double sum = 0;
        for (int e = 0; e <= d; e++) {
          sum += root[d][e] * step[e];
        }
        tried[i][d] = z[i][d] + scale * sum;
      }
    }
    double[] triedLik = new double[particles];
    likelihood.of(tried, triedLik);
    int accepted = 0;
    for (int i = 0; i < particles; i++) {
      double gain =
          temperature * (triedLik[i] - logLik[i]) + 0.5 * (square(z[i]) - square(tried[i]));
      if (FastMath.log(open(own[i].nextDouble())) < gain) {
        z[i] = tried[i];
        logLik[i] = triedLik[i];
        accepted++;
      }
    }
    return (double) accepted / particles;
  }

  private static double effectiveSize(double[][] z) {
    double[][] sorted = z.clone();
    Arrays.sort(sorted, Arrays::compare);
    double squares = 0;
    for (int i = 0; i < sorted.length; ) {
      int j = i;
      while (j < sorted.length && Arrays.equals(sorted[i], sorted[j])) {
        j++;
      }
      squares += (double) (j - i) * (j - i);
      i = j;
    }
    return (double) z.length * z.length / squares;
  }

  private static double[][] pick(double[][] z, int[] parents) {
    double[][] out = new double[parents.length][];
    for (int i = 0; i < out.length; i++) {
      out[i] = z[parents[i]].clone();
    }
    return out;
  }

  private static double[] pick(double[] values, int[] parents) {
    double[] out = new double[parents.length];
    for (int i = 0; i < out.length; i++) {
      out[i] = values[parents[i]];
    }
    return out;
  }

  private static double square(double[] v) {
    double sum = 0;
    for (double x : v) {
      sum += x * x;
    }
    return sum;
  }

  private static double open(double u) {
    return Math.max(u, 0x1p-54);
  }

  private static double normal(double u) {
    return NORMAL.inverseCumulativeProbability(u);
  }
}
