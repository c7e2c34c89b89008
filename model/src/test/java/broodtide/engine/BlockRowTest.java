package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.control.Plan;
import broodtide.fit.Invented;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Rows of a block are what its colonies show one by one, and a state that is kept goes on alike.
 */
class BlockRowTest {
  private static final int COLONIES = 40;
  private static final Scenario YEAR =
      new Scenario(ColonyModel.in(Places.seasonal()), Plan.waiting("wait"), Invented.START, 300);

  @Test
  void everyQuantityIsTheSameToTheLastBit() {
    StandardColony start = StandardColony.on(YEAR.model(), YEAR.start());
    DailyEngine.of(YEAR, start, members())
        .run(
            (day, view) -> {
              for (Quantity quantity : Quantity.values()) {
                float[] row = new float[COLONIES + 1];
                new BlockRow(COLONIES).read(quantity, day, view, row, 1);
                for (int l = 0; l < COLONIES; l++) {
                  assertThat(row[l + 1])
                      .as("%s of colony %d on day %d", quantity, l, day)
                      .isEqualTo((float) quantity.of(view, l));
                }
              }
            });
  }

  @Test
  void coloniesThatStandOnTheFirstDayRunAsThoseThatAreBroughtThere() {
    StandardColony start = StandardColony.on(YEAR.model(), YEAR.start());
    List<SimulatedColony> all = members();
    Set<Quantity> kept = EnumSet.allOf(Quantity.class);
    int[] turned = new int[COLONIES];
    List<SimulatedColony> members = new ArrayList<>();
    for (int i = 0; i < COLONIES; i++) {
      turned[i] = COLONIES - 1 - i;
      members.add(all.get(turned[i]));
    }
    try (Workers workers = new Workers(2)) {
      StartedColonies started = StartedColonies.of(start, all, workers).some(turned);
      EnsembleRun begun =
          EnsembleRun.of(YEAR, started, members, Watched.daily(kept), workers, Progress.NONE);
      EnsembleRun brought =
          EnsembleRun.of(YEAR, start, members, Watched.daily(kept), workers, Progress.NONE);
      Scenario shorter = new Scenario(YEAR.model(), YEAR.plan(), YEAR.start(), 90);
      for (Quantity quantity : kept) {
        for (int m = 0; m < COLONIES; m++) {
          assertThat(begun.series(quantity, m)).isEqualTo(brought.series(quantity, m));
        }
        assertThat(begun.upTo(shorter).series(quantity, 3))
            .isEqualTo(
                EnsembleRun.of(shorter, start, members, Watched.daily(kept), workers, Progress.NONE)
                    .series(quantity, 3));
      }
    }
  }

  private static List<SimulatedColony> members() {
    List<SimulatedColony> out = new ArrayList<>();
    for (int i = 0; i < COLONIES; i++) {
      out.add(
          new SimulatedColony(
              0.6 + 0.02 * i, 1.4 - 0.02 * i, 0.05 * i * i, 0.5 + 0.03 * i, 0.1 * i, List.of()));
    }
    return out;
  }
}
