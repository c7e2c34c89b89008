package broodtide.fit;

import broodtide.measure.OutOfRange;
import broodtide.wash.Interval;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.math3.util.FastMath;

/**
 * How far forecasts ran too high or too low on one beekeeper's records, as a factor.
 *
 * <p>The bias is one number on the log scale, the same for all forecasts, with a normal prior
 * around none. Forecasts of one calendar year share half of their variance (a choice: errors
 * between yards had a standard deviation of .62 to .71 of a forecast's own, within yards .87 to
 * .89), so that one year of many hives says little more than one year of a few. It is a statement
 * about past forecasts; {@link GrowthBias} says what it means for those to come.
 *
 * @param forecasts forecasts that were marked, {@value #FEWEST} or more
 * @param years calendar years in which their washes fell
 * @param factor forecast over count, a pure number; above 1 where forecasts ran too high
 * @param range 90 % interval of the factor
 */
public record ForecastBias(int forecasts, int years, double factor, Interval range) {
  /** Fewest forecasts that say anything of a bias. */
  public static final int FEWEST = 5;

  private static final double PRIOR_SD = 0.5;
  static final double SHARED = 0.5;
  private static final double HALF_A_MITE = 0.5;

  /** A forecast is never taken to be surer than a wash of a few mites can be. */
  private static final double LEAST_SD = 0.3;

  private static final double Z = 1.6448536269514722;

  /**
   * How far one forecast was off, on the log scale.
   *
   * @param log forecast over count
   * @param sd standard deviation of the forecast
   */
  record Error(double log, double sd) {}

  /**
   * {@return the bias of marked forecasts}
   *
   * @param report the marks
   * @throws OutOfRange with fewer than {@value #FEWEST} marks
   */
  public static ForecastBias of(Backtest.Report report) {
    int n = report.marks().size();
    OutOfRange.check("forecasts", n, FEWEST, Integer.MAX_VALUE, "forecasts");
    Map<Integer, List<Error>> years = new TreeMap<>();
    for (Backtest.Mark m : report.marks()) {
      years.computeIfAbsent(m.held().date().getYear(), y -> new ArrayList<>()).add(error(m));
    }
    double precision = 1 / (PRIOR_SD * PRIOR_SD);
    double sum = 0;
    for (List<Error> year : years.values()) {
      double mean = year.stream().mapToDouble(Error::log).average().orElseThrow();
      double variance = year.stream().mapToDouble(e -> e.sd() * e.sd()).average().orElseThrow();
      double ofMean = variance * (SHARED + (1 - SHARED) / year.size());
      precision += 1 / ofMean;
      sum += mean / ofMean;
    }
    double at = sum / precision;
    double sd = Math.sqrt(1 / precision);
    return new ForecastBias(
        n,
        years.size(),
        FastMath.exp(at),
        new Interval(FastMath.exp(at - Z * sd), FastMath.exp(at + Z * sd), 0.9));
  }

  static Error error(Backtest.Mark m) {
    double sd = (log(m.forecast().quantile(0.95)) - log(m.forecast().quantile(0.05))) / (2 * Z);
    return new Error(
        log(m.forecast().quantile(0.5)) - log(m.held().mites()), Math.max(LEAST_SD, sd));
  }

  static double log(double mites) {
    return FastMath.log(mites + HALF_A_MITE);
  }

  /** {@return whether the interval leaves no bias out} */
  public boolean clear() {
    return range.low() > 1 || range.high() < 1;
  }
}
