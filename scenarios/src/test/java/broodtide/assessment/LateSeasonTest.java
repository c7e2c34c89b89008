package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import broodtide.catalog.Catalog;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.DailyEngine;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Trajectory;
import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Untreated colonies from late July to spring against an independent NumPy implementation of the
 * same equations, whose figures and command stand in {@code late-season.txt}.
 */
@Tag("outside")
class LateSeasonTest {
  private static final LocalDate START = LocalDate.of(2001, 7, 26);
  private static final int DAYS = 240;
  private static final double PER_CENT = 1;

  /** What the figures round away, in their own unit. */
  private static final double ROUNDED = 0.005;

  /** One line: a climate, its start, infestation on seven firsts, the highest, bees twice. */
  private record Line(String climate, double start, double[] figures) {
    @Override
    public String toString() {
      return climate + " from " + start;
    }
  }

  static List<Line> lines() throws IOException {
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(LateSeasonTest.class.getResourceAsStream("late-season.txt")),
                StandardCharsets.UTF_8))) {
      return in.lines().filter(l -> !l.startsWith("#")).map(LateSeasonTest::line).toList();
    }
  }

  private static Line line(String text) {
    String[] cells = text.trim().split(" +");
    double[] figures = Stream.of(cells).skip(2).mapToDouble(Double::parseDouble).toArray();
    return new Line(cells[0], Double.parseDouble(cells[1]), figures);
  }

  @ParameterizedTest
  @MethodSource("lines")
  void theEngineAgrees(Line line) {
    Immigration sparse =
        new Immigration(
            List.of(
                new Immigration.Window(
                    new YearSpan(MonthDay.of(6, 1), MonthDay.of(11, 30)), 1.27)));
    ColonyModel model = Shipped.model(line.climate()).with(sparse);
    Trajectory t =
        DailyEngine.run(
            new Scenario(model, Plan.waiting("left alone"), START, DAYS),
            SimulatedColony.average(line.start()));
    double[] got = new double[10];
    LocalDate first = LocalDate.of(2001, 9, 1);
    for (int m = 0; m < 7; m++) {
      got[m] = t.at(Quantity.INFESTATION, first.plusMonths(m));
    }
    got[7] = Arrays.stream(t.of(Quantity.INFESTATION)).max().orElseThrow();
    got[8] = t.at(Quantity.ADULTS, LocalDate.of(2001, 12, 1));
    got[9] = t.at(Quantity.ADULTS, LocalDate.of(2002, 3, 15));
    for (int i = 0; i < got.length; i++) {
      double rounded = 100 * ROUNDED / line.figures()[i];
      assertThat(got[i]).isCloseTo(line.figures()[i], withinPercentage(PER_CENT + rounded));
    }
  }

  /** Every shipped climate stands in the figures, so that none goes unchecked. */
  @Test
  void everyClimateIsThere() throws IOException {
    assertThat(lines().stream().map(Line::climate).distinct())
        .containsExactlyInAnyOrderElementsOf(Catalog.CLIMATES.names());
  }
}
