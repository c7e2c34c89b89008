package broodtide.assessment;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Quantiles by weight, beside those of the whole list in order and of Commons Math. */
class WeightedValuesTest {
  private static final double[] LEVELS = {0, 0.05, 0.25, 0.5, 0.75, 0.95, 1};

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 7, 100, 4096})
  void asOfTheWholeListInOrder(int size) {
    for (int seed = 0; seed < 40; seed++) {
      Random random = new Random(seed);
      double[] values = values(size, seed, random);
      double[] weights = new double[size];
      Arrays.setAll(weights, i -> random.nextInt(3) == 0 ? 0 : random.nextDouble());
      weights[random.nextInt(size)] = 0.5;
      WeightedValues some = WeightedValues.of(values, weights);
      for (double level : LEVELS) {
        double expected = inOrder(values, weights, level);
        assertEquals(
            expected, some.quantile(level), 1e-9 * Math.abs(expected), size + " " + seed + level);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 7, 100, 4096})
  void equalWeightsAreNone(int size) {
    for (int seed = 0; seed < 40; seed++) {
      double[] values = values(size, seed, new Random(seed));
      double[] weights = new double[size];
      Arrays.fill(weights, seed % 2 == 0 ? 0 : 0.25);
      WeightedValues some = WeightedValues.of(values, weights);
      Percentile percentile = new Percentile().withEstimationType(EstimationType.R_7);
      percentile.setData(values);
      for (double level : new double[] {0.05, 0.25, 0.5, 0.75, 0.95}) {
        double expected = percentile.evaluate(100 * level);
        assertEquals(
            expected, some.quantile(level), 1e-9 * Math.abs(expected), size + " " + seed + level);
      }
    }
  }

  /** Wide, narrow, with many equal ones, below zero, and with zeros far from the rest. */
  private static double[] values(int size, int kind, Random random) {
    double[] out = new double[size];
    for (int i = 0; i < size; i++) {
      double z = random.nextGaussian();
      double value =
          switch (kind % 5) {
            case 0 -> Math.exp(3 * z);
            case 1 -> 8000 + z;
            case 2 -> Math.rint(2 * z);
            case 3 -> 100 * z;
            default -> z < 0 ? 0 : 1e-3 + z;
          };
      out[i] = (float) value;
    }
    return out;
  }

  private static double inOrder(double[] values, double[] weights, double level) {
    int[] order =
        IntStream.range(0, values.length)
            .filter(i -> weights[i] > 0)
            .boxed()
            .sorted(Comparator.comparingDouble(i -> values[i]))
            .mapToInt(i -> i)
            .toArray();
    double[] places = new double[order.length];
    for (int k = 1; k < places.length; k++) {
      places[k] = places[k - 1] + (weights[order[k - 1]] + weights[order[k]]) / 2;
    }
    double sought = level * places[places.length - 1];
    for (int k = 0; k + 1 < places.length; k++) {
      if (sought <= places[k + 1]) {
        double share = (sought - places[k]) / (places[k + 1] - places[k]);
        double below = values[order[k]];
        return below + share * (values[order[k + 1]] - below);
      }
    }
    return values[order[order.length - 1]];
  }
}
