package broodtide.fit;

import broodtide.engine.EnsembleRun;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.apache.commons.math3.util.FastMath;

/**
 * How likely each value of an unknown is.
 *
 * @param values values of the unknown, rising
 * @param heights density at each, per unit of the unknown
 */
@SuppressWarnings("ArrayRecordComponent") // a curve to draw, read only, never compared
public record Density(double[] values, double[] heights) {
  private static final int STEPS = 120;

  /** Standard deviations to either side that are shown of what was believed before. */
  private static final double SHOWN = 2;

  /** Widths beyond which a draw adds nothing: 1e-14 of its height. */
  private static final double REACH = 8;

  /** Share at either end that is not shown of what is believed after. */
  private static final double TAIL = 0.005;

  /**
   * {@return what was believed before the washes}
   *
   * @param prior an unknown that is not known: its spread is above 0
   */
  public static Density before(Prior prior) {
    double norm = 1 / Math.sqrt(2 * Math.PI);
    return over(prior, -SHOWN, SHOWN, z -> norm * FastMath.exp(-0.5 * z * z));
  }

  /**
   * {@return what is believed with them, smoothed with a normal of the width of Silverman 1986
   * (Density Estimation for Statistics and Data Analysis, eq. 3.31)}
   *
   * @param prior an unknown that is not known: its spread is above 0
   * @param z its draws, in standard deviations of the prior
   */
  public static Density after(Prior prior, double[] z) {
    double[] sorted = z.clone();
    Arrays.sort(sorted);
    double mean = Arrays.stream(sorted).average().orElseThrow();
    double sd =
        Math.sqrt(Arrays.stream(sorted).map(v -> (v - mean) * (v - mean)).average().orElseThrow());
    double middleHalf = EnsembleRun.quantile(sorted, 0.75) - EnsembleRun.quantile(sorted, 0.25);
    double spread = middleHalf > 0 ? Math.min(sd, middleHalf / 1.349) : sd;
    double width = Math.max(1e-3, 0.9 * spread * FastMath.pow(z.length, -0.2));
    double norm = 1 / (z.length * width * Math.sqrt(2 * Math.PI));
    return over(
        prior,
        EnsembleRun.quantile(sorted, TAIL) - width,
        EnsembleRun.quantile(sorted, 1 - TAIL) + width,
        at -> {
          double sum = 0;
          int end = below(sorted, at + REACH * width);
          for (int i = below(sorted, at - REACH * width); i < end; i++) {
            sum += bell((at - sorted[i]) / width);
          }
          return norm * sum;
        });
  }

  /**
   * {@return how likely each value of a share is, smoothed likewise; what would be smoothed beyond
   * 0 or 1 is put back inside}
   *
   * @param draws draws of the share, 0 to 1; what lies outside is moved to the nearer end
   */
  public static Density ofShare(double[] draws) {
    double[] v = Arrays.stream(draws).map(d -> Math.max(0, Math.min(1, d))).sorted().toArray();
    double mean = Arrays.stream(v).average().orElseThrow();
    double sd =
        Math.sqrt(Arrays.stream(v).map(d -> (d - mean) * (d - mean)).average().orElseThrow());
    double width = Math.max(0.01, 0.9 * sd * FastMath.pow(v.length, -0.2));
    double norm = 1 / (v.length * width * Math.sqrt(2 * Math.PI));
    double[] x = IntStream.rangeClosed(0, STEPS).mapToDouble(i -> (double) i / STEPS).toArray();
    double[] heights =
        Arrays.stream(x)
            .map(
                at -> {
                  double sum = 0;
                  for (double d : v) {
                    sum += bell((at - d) / width);
                    sum += bell((at + d) / width) + bell((2 - at - d) / width);
                  }
                  return norm * sum;
                })
            .toArray();
    return new Density(x, heights);
  }

  /** How many of rising values lie below another. */
  private static int below(double[] rising, double value) {
    int place = Arrays.binarySearch(rising, value);
    return place < 0 ? -place - 1 : place;
  }

  private static double bell(double z) {
    return FastMath.exp(-0.5 * z * z);
  }

  @FunctionalInterface
  private interface Height {
    double at(double z);
  }

  /** From the scale of standard deviations to that of the unknown, up to its largest value. */
  private static Density over(Prior prior, double from, double to, Height height) {
    double[] z =
        IntStream.rangeClosed(0, STEPS)
            .mapToDouble(i -> from + (to - from) * i / STEPS)
            .filter(v -> prior.at(v) < prior.max())
            .toArray();
    double[] values = Arrays.stream(z).map(prior::at).toArray();
    double[] heights =
        IntStream.range(0, z.length)
            .mapToDouble(i -> height.at(z[i]) / (values[i] * prior.logSd()))
            .toArray();
    return new Density(values, heights);
  }
}
