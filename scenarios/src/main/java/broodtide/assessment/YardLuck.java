package broodtide.assessment;

import broodtide.engine.Survival;
import java.time.LocalDate;
import java.util.Arrays;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.util.FastMath;

/**
 * The luck of a yard and its winter: how many bees a colony needs there, and how often other causes
 * take one. Each is standard normal, taken at {@value #POINTS} points of equal weight.
 */
final class YardLuck {
  private static final int POINTS = 41;
  private static final double[] LUCK = points();

  private YardLuck() {}

  private static double[] points() {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    double[] out = new double[POINTS];
    Arrays.setAll(out, i -> normal.inverseCumulativeProbability((i + 0.5) / POINTS));
    return out;
  }

  /**
   * Chances of loss over yards and winters in which the colony can have lived until it was last
   * seen alive.
   *
   * @param adults adults of each simulated colony when the colony was last known alive
   * @param least its fewest adults from then on
   * @param from the day on which it was last known alive
   * @param to the day by which it may be lost
   */
  static QuantileSummary losses(
      Survival survival, double[] adults, double[] least, LocalDate from, LocalDate to) {
    double[] losses = new double[POINTS * POINTS];
    double[] weights = new double[losses.length];
    double[] spared = Arrays.stream(LUCK).map(luck -> survival.spared(from, to, luck)).toArray();
    double[] logThen = Arrays.stream(adults).map(FastMath::log).toArray();
    double[] logLater = Arrays.stream(least).map(FastMath::log).toArray();
    for (int i = 0; i < POINTS; i++) {
      double luck = LUCK[i];
      double then = Arrays.stream(logThen).map(a -> survival.enoughOfLog(a, luck)).sum();
      double later = Arrays.stream(logLater).map(a -> survival.enoughOfLog(a, luck)).sum();
      for (int j = 0; j < POINTS; j++) {
        losses[i * POINTS + j] = then > 0 ? 1 - later / then * spared[j] : 1;
        weights[i * POINTS + j] = then;
      }
    }
    return QuantileSummary.of(losses, weights);
  }
}
