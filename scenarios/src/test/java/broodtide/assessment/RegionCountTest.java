package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RegionCountTest {
  private static HiveChance hive(String name, String yard, double chance) {
    return new HiveChance(
        name, yard, chance, List.of(), new Counted.Over(new double[] {1}, new boolean[] {true}));
  }

  @Test
  void yardsPutTogetherAreTheCountOfAllTheirColonies() {
    List<HiveChance> all = new ArrayList<>();
    RegionCount region = RegionCount.NONE;
    for (String yard : List.of("Ford", "Mill", "Vale")) {
      List<HiveChance> own = new ArrayList<>();
      for (int i = 0; i < 4; i++) {
        own.add(hive(yard + i, yard, 0.1 + 0.05 * i + (yard.equals("Mill") ? 0.4 : 0)));
      }
      all.addAll(own);
      region = region.and(RegionCount.of(ApiaryCount.of(own)));
    }
    ApiaryCount whole = ApiaryCount.of(all);
    assertThat(region.hives()).isEqualTo(12);
    assertThat(region.distribution()).isEqualTo(whole.distribution());
    assertThat(region.mean()).isCloseTo(whole.mean(), within(1e-12));
    assertThat(region.quantile(0.05)).isEqualTo(whole.low());
    assertThat(region.quantile(0.95)).isEqualTo(whole.high());
  }

  @Test
  void nothingIsCountedOfNoYard() {
    assertThat(RegionCount.NONE.hives()).isZero();
    assertThat(RegionCount.NONE.quantile(0.95)).isZero();
  }
}
