package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class SparkTest {
  @Test
  void smallDrawings() {
    assertThat(Spark.line(List.of(0.0, 1.0, Double.NaN, 7.0), false)).isEqualTo("_. #");
    assertThat(Spark.line(List.of(2.0, 2.0), true)).isEqualTo("\u2581\u2581");
    Estimate e = Estimate.of(InventedSeason.TODAY, 1, 3, 5, 6, 9);
    assertThat(Spark.fan(e, new Interval(0, 10), 11, false)).isEqualTo(" --==|=--- ");
    assertThat(Spark.fan(e, new Interval(0, 10), 11, true)).hasSize(11).contains("\u254b");
    assertThatThrownBy(() -> Spark.fan(e, new Interval(1, 1), 11, true))
        .hasMessageContaining("some length");
  }
}
