package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.engine.ColonyModel;
import broodtide.engine.Quantity;
import broodtide.engine.Trajectory;
import broodtide.lesson.Library;
import broodtide.season.Climate;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** South of the equator the same season comes half a year later. Astronomy, no source needed. */
@Tag("outside")
class SouthernSeasonTest {
  private static final LocalDate NORTH = LocalDate.of(2001, 1, 1);
  private static final LocalDate SOUTH = LocalDate.of(2001, 7, 2);
  private static final List<Quantity> WHAT =
      List.of(Quantity.ADULTS, Quantity.WORKER_CELLS, Quantity.DRONE_CELLS, Quantity.MITES);

  static List<String> climates() {
    return Library.names(Library.Shelf.CLIMATES);
  }

  /** Half a year is 182.5 days, so a southern day lies between two northern ones. */
  @ParameterizedTest
  @MethodSource("climates")
  void theSameSeasonHalfAYearLater(String name) {
    Climate climate = Library.climate(name);
    Trajectory north = Untreated.from(ColonyModel.in(climate), NORTH, 365, 0.1);
    Trajectory south = Untreated.from(ColonyModel.in(climate.inSouth()), SOUTH, 365, 0.1);
    for (Quantity what : WHAT) {
      double[] n = north.of(what);
      double[] s = south.of(what);
      for (int day = 2; day < 363; day++) {
        double low = Math.min(n[day - 2], Math.min(n[day], n[day + 2]));
        double high = Math.max(n[day - 2], Math.max(n[day], n[day + 2]));
        assertThat(s[day])
            .as("%s in %s on day %d of the season", what, name, day)
            .isBetween(low * 0.99 - 1, high * 1.01 + 1);
      }
    }
  }

  /** And it differs from the northern one on the same day by far. */
  @ParameterizedTest
  @MethodSource("climates")
  void midsummerIsInJanuary(String name) {
    Climate south = Library.climate(name).inSouth();
    LocalDate january = LocalDate.of(2001, 1, 15);
    LocalDate july = LocalDate.of(2001, 7, 15);
    assertThat(south.warmth().at(january)).isGreaterThan(south.warmth().at(july) + 8);
    assertThat(south.laying().at(january)).isGreaterThan(1.5 * south.laying().at(july));
  }
}
