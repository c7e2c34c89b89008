package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A colony's results do not depend, to the last bit, on the block it runs in. */
class LanesTest {
  private static final LocalDate START = LocalDate.of(2026, 3, 1);
  private static final Scenario SCENARIO =
      new Scenario(ColonyModel.in(Places.seasonal()), Plans.everything(START), START, 400);

  @ParameterizedTest
  @ValueSource(ints = {2, 7, 32, 65})
  void widthAndNeighboursDoNotMatter(int width) {
    SplittableRandom random = new SplittableRandom(17);
    List<SimulatedColony> members = new ArrayList<>();
    for (int l = 0; l < width; l++) {
      members.add(
          new SimulatedColony(
              random.nextDouble(0.5, 1.5),
              random.nextDouble(0.5, 1.5),
              random.nextDouble(0, 8),
              random.nextDouble(0.5, 1.5),
              random.nextDouble(0, 3),
              random.nextDouble(0, 1),
              List.of(random.nextDouble(0.5, 1.2))));
    }
    StandardColony start = StandardColony.on(SCENARIO.model(), START);
    double[][][] together = new double[width][Quantity.values().length][];
    DailyEngine.of(SCENARIO, start, members).run(keep(together));
    for (int l = 0; l < width; l += 3) {
      double[][][] alone = new double[1][Quantity.values().length][];
      DailyEngine.of(SCENARIO, start, List.of(members.get(l))).run(keep(alone));
      assertThat(together[l]).isDeepEqualTo(alone[0]);
    }
  }

  private static DayObserver keep(double[][][] out) {
    return (day, view) -> {
      for (int l = 0; l < view.lanes(); l++) {
        for (Quantity q : Quantity.values()) {
          if (out[l][q.ordinal()] == null) {
            out[l][q.ordinal()] = new double[401];
          }
          out[l][q.ordinal()][day] = q.of(view, l);
        }
      }
    };
  }
}
