package broodtide.report;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.assessment.CountReading;
import broodtide.catalog.Catalog;
import broodtide.chart.WashPoint;
import broodtide.wash.Interval;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Dots of washes stand where {@code wash} says that the colony does. */
class WashPointsTest {
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 9, 40})
  void aDotIsTheReadingOfItsCount(int mites) {
    Wash wash = Wash.of(LocalDate.of(2026, 7, 20), "Meadow", mites, 300);
    CountReading reading =
        CountReading.of(wash, Catalog.climate("temperate"), Catalog.threshold("kulhanek-2021"));
    Interval colony = reading.inColony().interval(0.9);
    WashPoint dot = WashPoints.of(List.of(wash)).get(0);
    assertThat(dot.value()).isEqualTo(reading.inColony().median());
    assertThat(dot.interval().low()).isEqualTo(colony.low());
    assertThat(dot.interval().high()).isEqualTo(colony.high());
  }
}
