package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
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
              List.of(random.nextDouble(0.5, 1.2)),
              changes(random)));
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

  /** Some before the start, some on days that others share, some after the end. */
  private static List<SeasonChange> changes(SplittableRandom random) {
    List<SeasonChange> out = new ArrayList<>();
    LocalDate day = START.minusDays(random.nextInt(90));
    for (int i = random.nextInt(4); i > 0; i--) {
      out.add(new SeasonChange(day, random.nextDouble(0.5, 1.5), random.nextDouble(0, 3)));
      day = day.plusDays(50L * random.nextInt(1, 6));
    }
    return out;
  }

  /** A factor of one changes no bit; others change nothing before their day. */
  @Test
  void changesHoldFromTheirDayOn() {
    SimulatedColony plain = SimulatedColony.average(2);
    SimulatedColony same = plain.changing(List.of(new SeasonChange(START.plusDays(100), 1, 1)));
    SimulatedColony later = plain.changing(List.of(new SeasonChange(START.plusDays(100), 1.5, 1)));
    SimulatedColony always =
        plain.changing(List.of(new SeasonChange(START.minusDays(100), 1.5, 1)));
    Trajectory one = DailyEngine.run(SCENARIO, plain);
    Trajectory two = DailyEngine.run(SCENARIO, same);
    Trajectory three = DailyEngine.run(SCENARIO, later);
    for (int day = 0; day <= 400; day += 20) {
      LocalDate date = START.plusDays(day);
      assertThat(two.at(Quantity.MITES, date)).isEqualTo(one.at(Quantity.MITES, date));
      if (day <= 100) {
        assertThat(three.at(Quantity.MITES, date)).isEqualTo(one.at(Quantity.MITES, date));
      }
    }
    LocalDate autumn = START.plusDays(180);
    assertThat(three.at(Quantity.MITES, autumn)).isGreaterThan(one.at(Quantity.MITES, autumn));
    // who bred faster in the days before the start as well has the same mites on it, as asked for
    assertThat(DailyEngine.run(SCENARIO, always).at(Quantity.INFESTATION, START))
        .isCloseTo(2, within(1e-9));
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
