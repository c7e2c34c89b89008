package broodtide.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import broodtide.colony.BeeRates;
import broodtide.mite.MiteRates;
import broodtide.mite.StockTraits;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class MeasuresTest {
  private static final List<Class<? extends Record>> RECORDS =
      List.of(BeeRates.class, MiteRates.class, StockTraits.class);

  @Test
  void everyDefaultLiesInItsRangeAndSaysWhereItComesFrom() {
    for (Class<? extends Record> type : RECORDS) {
      assertThat(Measures.table(type)).hasSameSizeAs(type.getRecordComponents());
      for (Measures.Line line : Measures.table(type)) {
        Measure m = line.measure();
        assertThat(m.value()).as(line.name()).isBetween(m.min(), m.max());
        assertThat(m.meaning()).as(line.name()).isNotBlank();
        assertThat(m.unit()).as(line.name()).isNotBlank();
        assertThat(m.source()).as(line.name()).isNotBlank();
      }
      assertThat(Measures.build(type, Map.of())).isNotNull();
    }
  }

  @Test
  void everyComponentRefusesValuesBeyondEitherEnd() {
    for (Class<? extends Record> type : RECORDS) {
      for (Measures.Line line : Measures.table(type)) {
        Measure m = line.measure();
        for (double bad : new double[] {Math.nextDown(m.min()), Math.nextUp(m.max()), Double.NaN}) {
          assertThatThrownBy(() -> Measures.build(type, Map.of(line.name(), bad)))
              .isInstanceOf(OutOfRange.class)
              .hasMessageStartingWith(line.name() + " is ")
              .hasMessageContaining("expected");
        }
        assertThat(Measures.build(type, Map.of(line.name(), m.min()))).isNotNull();
        assertThat(Measures.build(type, Map.of(line.name(), m.max()))).isNotNull();
      }
    }
  }

  @Test
  void unknownComponentsAreNamed() {
    assertThatThrownBy(() -> BeeRates.with(Map.of("wingspan", 3.0)))
        .hasMessageContaining("BeeRates has no field wingspan");
  }

  @Test
  void rangesReadAsWords() {
    assertThat(OutOfRange.range(0, 1, "1")).isEqualTo("0 to 1");
    assertThat(OutOfRange.range(0.5, 2, "1/day")).isEqualTo("0.5 to 2 (1/day)");
    assertThat(OutOfRange.range(0, Double.MAX_VALUE, "bees")).isEqualTo("0 or more (bees)");
  }
}
