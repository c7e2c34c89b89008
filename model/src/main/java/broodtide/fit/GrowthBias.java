package broodtide.fit;

import broodtide.wash.Interval;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.apache.commons.math3.util.FastMath;

/**
 * What forecasts of one's own records say of growth to come: a factor on the mites' daughters, the
 * same for all hives, that would have set them right.
 *
 * <p>Its logarithm is normal around none beforehand, with a standard deviation of {@value #PRIOR}.
 * Each forecast adds its error over the power with which it rises with growth, weighed as {@link
 * ForecastBias} weighs it: what the forecasts of one calendar year share counts once. A forecast
 * across a miticide course judges the course, not growth, and is left out. The middle moves growth
 * to come, and the doubt that is left widens it. What is left is shared by all hives, since the
 * same records speak for all.
 *
 * @param log logarithm of the factor; below 0 where forecasts ran too high
 * @param sd standard deviation of the logarithm, 0 or more
 * @since 0.2.0
 */
public record GrowthBias(double log, double sd) {
  /** Nothing is known of any bias; growth to come stays as it is. */
  public static final GrowthBias NONE = new GrowthBias(0, 0);

  /**
   * Standard deviation of the logarithm before any record. Choice: two months ahead a forecast is
   * then wrong by a factor of about 1.6 either way, as {@link ForecastBias} believes.
   */
  static final double PRIOR = 0.25;

  /**
   * {@return the marks that can tell of growth: no miticide acted since the wash before}
   *
   * @param report all marks
   */
  public static List<Backtest.Mark> untreated(Backtest.Report report) {
    return report.marks().stream().filter(m -> !m.treated()).toList();
  }

  /**
   * {@return what marked forecasts say; {@link #NONE} with fewer than {@link ForecastBias#FEWEST}
   * that can tell of growth}
   *
   * @param report the marks
   */
  public static GrowthBias of(Backtest.Report report) {
    List<Backtest.Mark> untreated = untreated(report);
    if (untreated.size() < ForecastBias.FEWEST) {
      return NONE;
    }
    Map<Integer, List<Backtest.Mark>> years =
        untreated.stream()
            .collect(
                Collectors.groupingBy(
                    m -> m.held().date().getYear(), TreeMap::new, Collectors.toList()));
    double precision = 1 / (PRIOR * PRIOR);
    double sum = 0;
    for (List<Backtest.Mark> year : years.values()) {
      double once = 1 / (1 + ForecastBias.SHARED * (year.size() - 1));
      for (Backtest.Mark m : year) {
        ForecastBias.Error error = ForecastBias.error(m);
        double weight = once * m.reach() / (error.sd() * error.sd());
        precision += weight * m.reach();
        sum -= weight * error.log();
      }
    }
    return new GrowthBias(sum / precision, FastMath.sqrt(1 / precision));
  }

  /** {@return whether growth to come stays as it is} */
  public boolean none() {
    return log == 0 && sd == 0;
  }

  /** {@return the factor on the mites' daughters, its middle} */
  public double factor() {
    return FastMath.exp(log);
  }

  /** {@return the 90 % interval of the factor} */
  public Interval range() {
    double width = Prior.NINE_IN_TEN * sd;
    return new Interval(FastMath.exp(log - width), FastMath.exp(log + width), 0.9);
  }

  /** What is believed of growth to come once the bias is taken in. */
  Prior on(Prior usual) {
    return none()
        ? usual
        : usual.with(
            Math.min(usual.max(), usual.median() * factor()), FastMath.hypot(usual.logSd(), sd));
  }

  /**
   * Share of the variance that hives have in common, once the bias is taken in.
   *
   * @param usual what is believed without it
   * @param share their share without it
   */
  double shared(Prior usual, double share) {
    double own = usual.logSd() * usual.logSd();
    return none() ? share : (share * own + sd * sd) / (own + sd * sd);
  }

  /**
   * Share of the variance that hives of all yards have in common: that of the bias itself.
   *
   * @param usual what is believed without it
   */
  double common(Prior usual) {
    return none() ? 0 : sd * sd / (usual.logSd() * usual.logSd() + sd * sd);
  }
}
