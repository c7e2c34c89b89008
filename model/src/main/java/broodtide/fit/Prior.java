package broodtide.fit;

import broodtide.measure.OutOfRange;
import broodtide.measure.Tag;
import org.apache.commons.math3.util.FastMath;

/**
 * What is believed of one unknown before any wash: its logarithm, or the logit of a share, is
 * normal.
 *
 * @param meaning what it is
 * @param median median, above 0
 * @param logSd standard deviation of its logarithm or logit, 0 (known) to 5
 * @param max largest value passed on to the model; smaller draws stay as they are
 * @param scale on what scale it is normal
 * @param tag how it is known
 * @param source where it comes from, or why it was chosen
 */
public record Prior(
    String meaning, double median, double logSd, double max, Scale scale, Tag tag, String source) {
  /** Standard deviations to either side of the middle of a normal that hold nine in ten of it. */
  public static final double NINE_IN_TEN = 1.6449;

  /** On what scale an unknown is normal. */
  public enum Scale {
    /** The logarithm of a factor or count. */
    LOG,
    /** The logit of a share. */
    LOGIT
  }

  /** Checks ranges. */
  public Prior {
    OutOfRange.check("median", median, Double.MIN_NORMAL, max, "1");
    OutOfRange.check("logSd", logSd, 0, 5, "1");
  }

  /**
   * A lognormal.
   *
   * @param meaning what it is
   * @param median median, above 0
   * @param logSd standard deviation of its logarithm, 0 (known) to 5
   * @param max largest value passed on to the model
   * @param tag how it is known
   * @param source where it comes from, or why it was chosen
   */
  public Prior(String meaning, double median, double logSd, double max, Tag tag, String source) {
    this(meaning, median, logSd, max, Scale.LOG, tag, source);
  }

  /**
   * {@return the value that stands z standard deviations from the median}
   *
   * @param z standard deviations on the scale of the prior, any number
   */
  public double at(double z) {
    double factor = FastMath.exp(logSd * z);
    return switch (scale) {
      case LOG -> Math.min(max, median * factor);
      // odds times the factor, written so that neither end divides infinity by infinity
      case LOGIT -> Math.min(max, median / (median + (1 - median) / factor));
    };
  }

  /**
   * {@return the same with another median and spread}
   *
   * @param newMedian median, above 0
   * @param newLogSd standard deviation of the logarithm or logit, 0 to 5
   */
  public Prior with(double newMedian, double newLogSd) {
    return new Prior(meaning, newMedian, newLogSd, max, scale, tag, source);
  }
}
