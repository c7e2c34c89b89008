package broodtide.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Watches for change: today's seasons against those kept in {@code frozen-seasons.csv}. {@link
 * FrozenSeasons} says how they were made.
 */
@Tag("frozen")
class FrozenSeasonsTest {
  private static final double DAILY = 1e-10;

  /** The flow engine's own error allows no more, however its steps fall. */
  private static final double FLOW = 1e-8;

  /** In bees, cells and mites: what rounding, or the flow's steps, leave of what empties out. */
  private static final double DAILY_REST = 1e-9;

  private static final double FLOW_REST = 1e-5;

  @Test
  void seasonsAreAsTheyWere() throws IOException {
    Map<String, double[]> now = FrozenSeasons.rows();
    try (BufferedReader kept = kept()) {
      long rows =
          kept.lines().filter(line -> !line.startsWith("#")).peek(l -> check(now, l)).count();
      assertThat(rows).isEqualTo(now.size());
    }
  }

  private static BufferedReader kept() {
    return new BufferedReader(
        new InputStreamReader(
            Objects.requireNonNull(
                FrozenSeasonsTest.class.getResourceAsStream("frozen-seasons.csv")),
            StandardCharsets.UTF_8));
  }

  private static void check(Map<String, double[]> now, String line) {
    String[] cells = line.split(",", -1);
    String name = String.join(",", Arrays.copyOf(cells, 3));
    double[] values = Objects.requireNonNull(now.get(name), name);
    assertThat(values).hasSize(cells.length - 3);
    boolean flow = name.startsWith("flow");
    double relative = flow ? FLOW : DAILY;
    double rest = flow ? FLOW_REST : DAILY_REST;
    for (int i = 0; i < values.length; i++) {
      double was = Double.parseDouble(cells[i + 3]);
      assertThat(values[i])
          .as("%s, value %d", name, i)
          .isCloseTo(was, within(relative * Math.abs(was) + rest));
    }
  }
}
