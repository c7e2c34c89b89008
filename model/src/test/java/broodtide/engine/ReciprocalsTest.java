package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReciprocalsTest {
  @ParameterizedTest
  @ValueSource(ints = {4, 5, 8, 9, 10, 14})
  void agreeWithDivisionOverTheWholeRange(int arrays) {
    SplittableRandom random = new SplittableRandom(arrays);
    List<double[]> values = new ArrayList<>();
    List<double[]> kept = new ArrayList<>();
    for (int i = 0; i < arrays; i++) {
      double[] x = new double[37];
      for (int l = 0; l < x.length; l++) {
        x[l] = Math.pow(10, random.nextDouble(-12, 40));
      }
      values.add(x);
      kept.add(x.clone());
    }
    new Reciprocals(values).invert();
    for (int i = 0; i < arrays; i++) {
      for (int l = 0; l < kept.get(i).length; l++) {
        assertThat(values.get(i)[l]).isCloseTo(1 / kept.get(i)[l], withinPercentage(1e-12));
      }
    }
  }
}
