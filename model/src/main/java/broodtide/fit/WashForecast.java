package broodtide.fit;

import broodtide.measure.OutOfRange;
import broodtide.wash.Interval;
import java.time.LocalDate;

/**
 * What a wash of a day to come may show: the whole distribution of its count.
 *
 * <p>Few washes say little of how far counts scatter beyond chance, and taking the scatter that
 * fits best makes bands too narrow. So the bands are mixed over it, with an exponential prior
 * (choice) that stands for frames, weather and growth that is not quite steady.
 */
public final class WashForecast {
  /** Prior mean of the over-dispersion alpha, where the variance of a count is mu + alpha mu^2. */
  public static final double PRIOR_SCATTER = 0.1;

  private static final double LEAST_ALPHA = 1.0 / 2048;
  private static final int ALPHAS = 14;

  private final LocalDate date;
  private final int bees;
  private final double[] atMost;

  private WashForecast(LocalDate date, int bees, double[] atMost) {
    this.date = date;
    this.bees = bees;
    this.atMost = atMost;
  }

  /**
   * Forecast from a regression: mixed over the over-dispersion and, at each value of it, over the
   * level on the day.
   *
   * @param date the day
   * @param bees bees in the wash
   * @param exposure mites expected per unit of the level's exponential
   * @param model the regression
   * @param level the coefficient that is the level on the day
   */
  static WashForecast from(
      LocalDate date, int bees, double exposure, CountRegression model, int level) {
    int n = ALPHAS;
    CountRegression.Fit[] fits = new CountRegression.Fit[n];
    double[] logWeight = new double[n];
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < n; i++) {
      double alpha = LEAST_ALPHA * Math.pow(2, i);
      fits[i] = model.fitAt(alpha);
      // the last term turns a density in alpha into one in its logarithm
      logWeight[i] = model.adjusted(fits[i]) - alpha / PRIOR_SCATTER + Math.log(alpha);
      most = Math.max(most, logWeight[i]);
    }
    double sum = 0;
    for (int i = 0; i < n; i++) {
      logWeight[i] = Math.exp(logWeight[i] - most);
      sum += logWeight[i];
    }
    double[] chance = new double[bees + 1];
    for (int i = 0; i < n; i++) {
      double weight = logWeight[i] / sum;
      if (weight > 1e-6) {
        double step = model.standardError(fits[i], level) / 4;
        double[][] nodes = Profile.belief(model, level, fits[i], step);
        for (int j = 0; j < nodes[0].length; j++) {
          double mean = exposure * Math.exp(nodes[0][j]);
          add(chance, mean, weight * nodes[1][j], fits[i].alpha());
        }
      }
    }
    for (int k = 1; k <= bees; k++) {
      chance[k] = Math.min(1, chance[k] + chance[k - 1]);
    }
    chance[bees] = 1;
    return new WashForecast(date, bees, chance);
  }

  private static void add(double[] chance, double mu, double weight, double alpha) {
    double over = 1 + alpha * mu;
    double logP = -Math.log1p(alpha * mu) / alpha;
    for (int k = 0; k < chance.length; k++) {
      chance[k] += weight * Math.exp(logP);
      logP += Math.log(mu * (1 + alpha * k) / ((k + 1) * over));
    }
  }

  /** {@return the day} */
  public LocalDate date() {
    return date;
  }

  /** {@return bees in the wash} */
  public int bees() {
    return bees;
  }

  /**
   * {@return chance of at most so many mites} Counts beyond the bees of the wash are taken as every
   * bee carrying one.
   *
   * @param mites mites in the wash
   */
  public double chanceAtMost(int mites) {
    return mites < 0 ? 0 : atMost[Math.min(mites, bees)];
  }

  /**
   * {@return chance that the wash reads above a limit in mites per 100 bees}
   *
   * @param perHundred mites per 100 bees, 0 or more
   */
  public double chanceAbove(double perHundred) {
    return 1 - chanceAtMost((int) Math.floor(perHundred * bees / 100 + 1e-9));
  }

  /**
   * {@return the smallest count with at least a share {@code p} of the chance at or below it}
   *
   * @param p 0 to 1
   */
  public int quantile(double p) {
    if (!(p >= 0 && p <= 1)) {
      throw new OutOfRange("p", Double.toString(p), "0 to 1");
    }
    int k = 0;
    while (k < bees && atMost[k] < p) {
      k++;
    }
    return k;
  }

  /** {@return median count, mites in the wash} */
  public int median() {
    return quantile(0.5);
  }

  /**
   * {@return interval of the count that holds at least a share {@code level} of the chance, mites}
   *
   * @param level between 0 and 1
   */
  public Interval interval(double level) {
    double tail = (1 - level) / 2;
    return new Interval(quantile(tail), quantile(1 - tail), level);
  }

  /**
   * {@return the interval in mites per 100 bees}
   *
   * @param level between 0 and 1
   */
  public Interval perHundred(double level) {
    return interval(level).times(100.0 / bees);
  }
}
