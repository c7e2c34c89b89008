package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What a picture of shares says of those that cannot be told from nothing. */
class SensitivityBarsTest {
  private static SensitivityBars.Index index(String name, double low, double lowBefore) {
    return new SensitivityBars.Index(
        name, low + 0.2, new Range(low, low + 0.4), lowBefore + 0.1, new Range(lowBefore, 0.5));
  }

  @Test
  void eachShareThatCannotBeToldFromNothingSaysSo() {
    String svg =
        SensitivityBars.of(
                new Heading("Shares", ""),
                "share of the spread",
                List.of(
                    index("Start", 0.1, 0.1),
                    index("Growth", -0.1, 0.1),
                    index("Reinvasion", 0.2, -0.05),
                    index("Clumping", -0.2, -0.05)))
            .svg();
    String words = svg.replaceAll("<[^>]*>", " ").replaceAll("\\s+", " ");
    assertThat(words)
        .contains(
            "Growth (cannot be told from 0)",
            "Reinvasion (before: cannot be told from 0)",
            "Clumping (both: cannot be told from 0)")
        .doesNotContain("Start (");
  }
}
