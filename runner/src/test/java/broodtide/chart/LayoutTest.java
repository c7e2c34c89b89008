package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Axes, label places, text widths, thinned lines. */
class LayoutTest {
  @Test
  void ticksAreMonthStartsAndYearsShowWhereTheyChange() {
    Days days = new Days(LocalDate.of(2026, 4, 10), LocalDate.of(2027, 3, 20), 50, 600);
    List<Days.Tick> ticks = days.ticks(Type.LABEL);
    assertThat(ticks).hasSize(11).allMatch(t -> t.date().getDayOfMonth() == 1);
    assertThat(ticks.get(0).label()).isEqualTo("May");
    assertThat(ticks.stream().map(Days.Tick::year).filter(y -> !y.isEmpty()))
        .containsExactly("2026", "2027");
    assertThat(ticks.get(8).date()).isEqualTo(LocalDate.of(2027, 1, 1));
    assertThat(ticks.get(8).year()).isEqualTo("2027");
    // 10 April to 1 January is 266 of 344 days.
    assertThat(ticks.get(8).x()).isCloseTo(50 + 550 * 266.0 / 344, offset(1e-9));
  }

  @Test
  void namesNeverTouchHoweverNarrowTheAxis() {
    for (int width = 150; width < 700; width += 10) {
      for (int months : new int[] {1, 2, 3, 6, 12, 18, 30, 60}) {
        LocalDate from = LocalDate.of(2026, 3, 15);
        List<Days.Tick> named =
            new Days(from, from.plusMonths(months), 0, width)
                .ticks(Type.LABEL).stream().filter(t -> !t.label().isEmpty()).toList();
        for (int i = 1; i < named.size(); i++) {
          Type type = Type.LABEL.at(Type.Anchor.MIDDLE);
          Box a = type.room(named.get(i - 1).label(), named.get(i - 1).x(), 0);
          Box b = type.room(named.get(i).label(), named.get(i).x(), 0);
          assertThat(a.overlaps(b)).as("%d months on %d", months, width).isFalse();
        }
      }
    }
  }

  @Test
  void stepsAreRoundAndAsManyAsThereIsRoom() {
    assertThat(new Scale(0, 25.1, false, 100, 0).ticks(5))
        .containsExactly(0.0, 5.0, 10.0, 15.0, 20.0, 25.0);
    assertThat(new Scale(0, 0.9, false, 100, 0).ticks(5)).hasSize(5);
    assertThat(new Scale(0.3, 30, true, 100, 0).ticks(5))
        .containsExactly(0.5, 1.0, 2.0, 5.0, 10.0, 20.0);
    Random random = new Random(5);
    for (int i = 0; i < 2000; i++) {
      double high = Math.exp(20 * random.nextDouble() - 8);
      int about = 2 + random.nextInt(6);
      int n = new Scale(0, high, false, 100, 0).ticks(about).size() - 1;
      assertThat(n).as("0 to %s in about %d", high, about).isBetween(about / 3, about);
    }
  }

  @Test
  void aLogarithmicAxisKeepsRatios() {
    Scale s = new Scale(0.1, 10, true, 200, 0);
    assertThat(s.at(1)).isCloseTo(100, offset(1e-9));
    assertThat(s.at(0)).isEqualTo(200);
  }

  @Test
  void spreadLabelsKeepOrderDistanceAndColumn() {
    Random random = new Random(11);
    for (int round = 0; round < 500; round++) {
      int n = 1 + random.nextInt(6);
      double[] wishes = random.doubles(n, -20, 320).toArray();
      double[] heights = random.doubles(n, 15, 45).toArray();
      double[] y = LabelColumn.apart(wishes, heights, 0, 300);
      for (int i = 0; i < n; i++) {
        assertThat(y[i]).isBetween(heights[i] / 2 - 1e-9, 300 - heights[i] / 2 + 1e-9);
        for (int j = 0; j < n; j++) {
          if (wishes[i] < wishes[j]) {
            assertThat(y[j] - y[i]).isGreaterThanOrEqualTo((heights[i] + heights[j]) / 2 - 1e-9);
          }
        }
      }
    }
  }

  @Test
  void labelsThatDoNotTouchStayWhereTheyAre() {
    double[] wishes = {200, 50, 120};
    double[] heights = {20, 20, 20};
    assertThat(LabelColumn.apart(wishes, heights, 0, 300)).containsExactly(200, 50, 120);
    // Two that want the same place share the way.
    assertThat(LabelColumn.apart(new double[] {100, 100.5}, new double[] {20, 20}, 0, 300))
        .containsExactly(new double[] {90.25, 110.25}, offset(1e-9));
  }

  @Test
  void lanesKeepPiecesApart() {
    Random random = new Random(3);
    for (int round = 0; round < 200; round++) {
      double[] from = random.doubles(8, 0, 300).toArray();
      double[] to = Arrays.stream(from).map(f -> f + 10 + random.nextInt(80)).toArray();
      int[] lanes = LabelRows.of(from, to, 4);
      for (int i = 0; i < 8; i++) {
        for (int j = 0; j < i; j++) {
          boolean apart = to[i] + 4 <= from[j] || to[j] + 4 <= from[i];
          assertThat(apart || lanes[i] != lanes[j]).isTrue();
        }
      }
    }
  }

  @Test
  void aThinnedLineStaysWithinItsTolerance() {
    double[] x = new double[400];
    double[] y = new double[400];
    for (int i = 0; i < 400; i++) {
      x[i] = i * 1.5;
      y[i] = 100 + 60 * Math.sin(i / 40.0);
    }
    Trace thin = Trace.of(x, y).thinned(0.12);
    assertThat(thin.size()).isLessThan(80);
    for (int i = 0; i < 400; i++) {
      double nearest = Double.POSITIVE_INFINITY;
      for (int k = 1; k < thin.size(); k++) {
        nearest =
            Math.min(
                nearest,
                java.awt.geom.Line2D.ptSegDist(
                    thin.x(k - 1), thin.y(k - 1), thin.x(k), thin.y(k), x[i], y[i]));
      }
      assertThat(nearest).isLessThanOrEqualTo(0.12 + 1e-9);
    }
  }

  /** The table against the metrics of the face it was read from, where that face is installed. */
  @Test
  @Tag("outside")
  void textWidthsAreThoseOfTheFace() {
    Font face = new Font("DejaVu Sans", Font.PLAIN, 100);
    assumeTrue(face.getFamily().equals("DejaVu Sans"), "face not installed");
    FontRenderContext context = new FontRenderContext(null, true, true);
    String text = "Winter bees raised, 20 August: 2.3 (1.2 to 4.0) mites/100 \"bees\"";
    for (boolean bold : new boolean[] {false, true}) {
      double real =
          face.deriveFont(bold ? Font.BOLD : Font.PLAIN).getStringBounds(text, context).getWidth();
      assertThat(Lettering.width(text, 100, bold) / real).isBetween(0.995, 1.005);
    }
  }

  @Test
  void wrappedTextKeepsItsWordsAndItsWidth() {
    String text =
        "Waiting puts this colony over the threshold by late August in about 3 in 4 seasons";
    List<String> lines = Lettering.wrap(text, Type.TITLE, 300);
    assertThat(String.join(" ", lines)).isEqualTo(text);
    assertThat(lines).allMatch(l -> Lettering.width(l, 20, true) <= 300).hasSizeGreaterThan(1);
    assertThat(Lettering.wrap("  ", Type.TITLE, 300)).isEmpty();
    List<String> cut = Lettering.wrap("a " + "long".repeat(60) + " name", Type.TITLE, 300);
    assertThat(String.join("", cut).replace(" ", "")).isEqualTo("a" + "long".repeat(60) + "name");
    assertThat(cut).allMatch(l -> Lettering.width(l, Type.TITLE.size(), Type.TITLE.bold()) <= 300);
  }

  @Test
  void aCutBandIsSaidInWords() {
    LocalDate d = InventedSeason.START;
    Line wild =
        new Line(
            "wild",
            "",
            List.of(Estimate.of(d, 1, 2, 3, 4, 5), Estimate.of(d.plusDays(60), 1, 2, 3, 4, 61)));
    Reach reach = Reach.of(List.of(wild), List.of(), null, false);
    assertThat(reach.high()).isLessThan(20);
    assertThat(reach.notes()).contains("61");
    Line tiny = new Line("tiny", "", List.of(Estimate.of(d, 0.01, 2, 3, 4, 5)));
    assertThat(Reach.of(List.of(tiny), List.of(), null, true).notes()).contains("at the bottom");
    Line tame = new Line("tame", "", List.of(Estimate.of(d, 1, 2, 3, 4, 5)));
    assertThat(Reach.of(List.of(tame), List.of(), null, false).notes()).isEmpty();
    assertThat(Reach.of(List.of(tame), List.of(), null, false).high()).isGreaterThan(5);
  }

  private static org.assertj.core.data.Offset<Double> offset(double by) {
    return org.assertj.core.data.Offset.offset(by);
  }
}
