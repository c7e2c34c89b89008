package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;

class SeasonChartTest {
  @Test
  void bandsHoldTheirMedianAndTheNarrowOneLiesInTheWideOne() {
    for (SeasonChart chart :
        List.of(InventedSeason.forecast(), InventedSeason.crowded().logarithmic())) {
      Drawn drawn = Drawn.of(chart);
      int n = chart.panel().lines().size();
      List<Element> medians = drawn.groups("median");
      assertThat(drawn.groups("band90")).hasSize(n);
      for (int i = 0; i < n; i++) {
        // Medians are drawn last line first.
        List<double[]> median = Drawn.points(Drawn.paths(medians.get(n - 1 - i)).get(1));
        List<double[]> wide = Drawn.points(Drawn.paths(drawn.groups("band90").get(i)).get(0));
        List<double[]> half = Drawn.points(Drawn.paths(drawn.groups("band50").get(i)).get(0));
        double from = median.get(0)[0] + 0.5;
        double to = median.get(median.size() - 1)[0] - 0.5;
        for (double x = from; x < to; x += 3) {
          double y = Drawn.heightAt(median, x);
          double[] w = Drawn.edgesAt(wide, x);
          double[] h = Drawn.edgesAt(half, x);
          assertThat(y).isBetween(h[0] - 0.35, h[1] + 0.35);
          assertThat(h[0]).isGreaterThanOrEqualTo(w[0] - 0.35);
          assertThat(h[1]).isLessThanOrEqualTo(w[1] + 0.35);
        }
      }
    }
  }

  @Test
  void washesStandWhereTheNumbersOnTheAxesSay() {
    Drawn drawn = Drawn.of(InventedSeason.forecast());
    Drawn.Word zero = word(drawn, "0");
    Drawn.Word twenty = word(drawn, "20");
    double perMite = (middle(zero) - middle(twenty)) / 20;
    List<Element> washes = drawn.groups("wash");
    assertThat(washes).hasSize(4);
    for (int i = 0; i < 4; i++) {
      WashPoint w = InventedSeason.washes().get(i);
      Element disc = Drawn.elements(washes.get(i), "circle").get(0);
      double y = Double.parseDouble(disc.getAttribute("cy"));
      assertThat((middle(zero) - y) / perMite).isCloseTo(w.value(), within(0.05));
      List<double[]> bar = Drawn.points(Drawn.paths(washes.get(i)).get(1));
      assertThat((middle(zero) - bar.get(0)[1]) / perMite)
          .isCloseTo(w.interval().high(), within(0.05));
      assertThat((middle(zero) - bar.get(1)[1]) / perMite)
          .isCloseTo(w.interval().low(), within(0.05));
      assertThat(washes.get(i).getTextContent()).contains(w.note());
    }
  }

  @Test
  void thresholdStepsOnItsDays() {
    Drawn drawn = Drawn.of(InventedSeason.forecast());
    List<double[]> step = Drawn.points(Drawn.paths(drawn.groups("threshold").get(0)).get(0));
    // Up on 1 July, down on 15 September: two corners each, and the two ends.
    assertThat(step).hasSize(6);
    assertThat(step.get(1)[0]).isEqualTo(step.get(2)[0]);
    assertThat(step.get(2)[1]).isLessThan(step.get(1)[1]);
    assertThat(step.get(1)[0]).isCloseTo(centre(word(drawn, "Jul")), within(0.2));
    assertThat(
            Drawn.paths(drawn.groups("threshold").get(0)).get(0).getAttribute("stroke-dasharray"))
        .isNotEmpty();
  }

  @Test
  void aThresholdIsNotDrawnOnDaysWithoutOne() {
    List<ThresholdSteps.Level> april =
        List.of(new ThresholdSteps.Level(LocalDate.of(2026, 5, 1), LocalDate.of(2026, 5, 31), 1));
    List<ThresholdSteps.Level> both = new ArrayList<>(april);
    both.add(new ThresholdSteps.Level(LocalDate.of(2026, 8, 1), LocalDate.of(2026, 8, 31), 4.7));
    Drawn drawn =
        Drawn.of(InventedSeason.forecast().threshold(new ThresholdSteps("threshold", both)));
    assertThat(Drawn.paths(drawn.groups("threshold").get(0))).hasSize(2);
    double[] end = Drawn.points(Drawn.paths(drawn.groups("threshold").get(0)).get(0)).get(1);
    assertThat(end[0]).isCloseTo(centre(word(drawn, "Jun")), within(0.2));
    assertThatThrownBy(
            () -> new ThresholdSteps.Level(LocalDate.of(2026, 5, 1), LocalDate.of(2026, 4, 1), 1))
        .hasMessageContaining("before it begins");
  }

  @Test
  void onlyThresholdStepsOfTheDaysShownAreDrawn() {
    LocalDate d = LocalDate.of(2026, 7, 1);
    Days days = new Days(d, d.plusDays(60), 0, 100);
    assertThat(ThresholdMark.shown(InventedSeason.threshold(), days))
        .extracting(ThresholdSteps.Level::value)
        .containsExactly(4.7);
    Days later = new Days(d.plusDays(1), d.plusDays(90), 0, 100);
    assertThat(ThresholdMark.shown(InventedSeason.threshold(), later))
        .extracting(ThresholdSteps.Level::value)
        .containsExactly(4.7, 1.0);
    Days before = new Days(d.minusYears(1), d.minusYears(1).plusDays(9), 0, 100);
    assertThat(ThresholdMark.shown(InventedSeason.threshold(), before)).isEmpty();
  }

  @Test
  void eightLinesAreNamedInAKeySevenAtTheirEnds() {
    assertThat(Drawn.of(InventedSeason.sevenPlans()).groups("key")).isEmpty();
    List<Line> eight = new ArrayList<>(InventedSeason.sevenPlans().panel().lines());
    eight.add(InventedSeason.plan("an eighth", InventedSeason.TODAY, 0.5, false));
    Drawn drawn =
        Drawn.of(SeasonChart.of(new Heading("Eight plans", ""), "Mites per 100 bees", eight));
    assertThat(drawn.groups("names")).isEmpty();
    assertThat(drawn.groups("key").get(0).getTextContent()).contains("an eighth");
  }

  /**
   * With colours gone, as in forced colours or on a black-and-white print, dash and name still tell
   * the seven usual plans apart.
   */
  @ParameterizedTest
  @ValueSource(ints = {720, 400})
  void sevenPlansAreToldApartWithoutColour(int width) {
    SeasonChart chart = InventedSeason.sevenPlans().sized(new Size(width, 480));
    Drawn drawn = Drawn.of(chart);
    Set<String> dashes = new HashSet<>();
    for (Element median : drawn.groups("median")) {
      dashes.add(Drawn.paths(median).get(1).getAttribute("stroke-dasharray"));
    }
    assertThat(dashes).hasSize(7);
    String names =
        drawn.groups(width > 560 ? "names" : "key").get(0).getTextContent().replaceAll("\\s+", " ");
    chart.panel().lines().forEach(line -> assertThat(names).contains(line.name()));
    if (width < 560) {
      // The key shows each dash beside its name.
      Set<String> samples = new HashSet<>();
      Drawn.paths(drawn.groups("key").get(0))
          .forEach(p -> samples.add(p.getAttribute("stroke-dasharray")));
      assertThat(samples).isEqualTo(dashes);
    }
  }

  @Test
  void aLineThatEndsEarlySaysWhyWithACrossAtItsEnd() {
    LocalDate d = InventedSeason.START;
    Line goesOn = InventedSeason.plan("wait", d, 0, false);
    Line ends =
        new Line(
            "thymol",
            "",
            List.of(Estimate.of(d, 1), Estimate.of(d.plusDays(100), 9)),
            "half are lost by 10 Jul");
    SeasonChart chart =
        SeasonChart.of(new Heading("Two plans", ""), "Mites", List.of(goesOn, ends));
    for (SeasonChart c : List.of(chart, chart.sized(Size.PHONE))) {
      Drawn drawn = Drawn.of(c);
      assertThat(drawn.groups("ended")).hasSize(1);
      Element cross = drawn.groups("ended").get(0);
      assertThat(cross.getTextContent()).contains("thymol: half are lost by 10 Jul");
      List<double[]> line = Drawn.points(Drawn.paths(drawn.groups("median").get(0)).get(1));
      double[] end = line.get(line.size() - 1);
      double[] corner = Drawn.points(Drawn.paths(cross).get(0)).get(0);
      assertThat(corner[0] + 5).isCloseTo(end[0], within(0.2));
      assertThat(corner[1] + 5).isCloseTo(end[1], within(0.2));
      String words = String.join(" ", drawn.words().stream().map(Drawn.Word::text).toList());
      assertThat(words).contains("half are lost by 10 Jul");
      assertThat(c.description()).contains("where the line ends: half are lost by 10 Jul");
    }
  }

  @Test
  void theBitmapShowsTheWashInInkAndTheBandInATint() throws IOException {
    SeasonChart chart = InventedSeason.forecast();
    Element disc = Drawn.elements(Drawn.of(chart).groups("wash").get(0), "circle").get(0);
    int x = (int) Math.round(2 * Double.parseDouble(disc.getAttribute("cx")));
    int y = (int) Math.round(2 * Double.parseDouble(disc.getAttribute("cy")));
    var image = ImageIO.read(new ByteArrayInputStream(chart.png()));
    assertThat(image.getRGB(x, y) & 0xffffff).isEqualTo(Palette.INK.rgb());

    List<double[]> wide = Drawn.points(Drawn.paths(Drawn.of(chart).groups("band90").get(0)).get(0));
    double right = wide.stream().mapToDouble(p -> p[0]).max().orElseThrow() - 12;
    double[] edges = Drawn.edgesAt(wide, right);
    int tint = image.getRGB((int) (2 * right), (int) (2 * edges[0] + 12)) & 0xffffff;
    Colour seen = new Colour(tint);
    assertThat(seen).isNotEqualTo(Palette.PAPER);
    assertThat(seen.channel(2)).as("bluer than red: %s", seen.css()).isGreaterThan(seen.channel(0));
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void labelsStayApartWhateverIsDrawn(long seed) {
    Random random = new Random(seed);
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i <= random.nextInt(6); i++) {
      LocalDate treated = InventedSeason.START.plusDays(random.nextInt(300));
      String name = "plan number " + i + (random.nextBoolean() ? " with a rather long name" : "");
      lines.add(InventedSeason.plan(name, treated, random.nextDouble(), random.nextBoolean()));
    }
    Almanac almanac = Almanac.BLANK.today(InventedSeason.START.plusDays(random.nextInt(334)));
    for (int i = 0; i < random.nextInt(7); i++) {
      LocalDate day = InventedSeason.START.plusDays(random.nextInt(334));
      almanac = almanac.with(new Marker("control " + i, day));
      almanac = almanac.with(new Span("a span, " + i, day, day.plusDays(random.nextInt(60))));
    }
    SeasonChart chart =
        SeasonChart.of(new Heading("Drawn at random, seed " + seed, ""), "Mites", lines)
            .almanac(almanac)
            .washes(InventedSeason.washes());
    var all = new PictureTest();
    for (SeasonChart c : List.of(chart, chart.logarithmic(), chart.sized(Size.PHONE))) {
      all.textsStandApartInsideThePictureAndAreLargeEnough("seed " + seed, c);
    }
  }

  @Test
  void wordsFromFilesCannotBreakTheXml() {
    String title = "Bees & mites: 1 < 3 > 2, \"so\" they say";
    SeasonChart chart =
        SeasonChart.of(
            new Heading(title, "Hive \u0001 7 </text>"), "Mites", InventedSeason.twoPlans());
    Drawn drawn = Drawn.of(chart);
    assertThat(drawn.words().get(0).text()).isEqualTo(title);
    assertThat(drawn.words().get(1).text()).isEqualTo("Hive \ufffd 7 </text>");
  }

  /** Boards differ from washes in shape, not in colour alone. */
  @Test
  void aBoardIsAHollowDiamond() {
    LocalDate day = LocalDate.of(2026, 6, 15);
    String board = marks(new WashPoint(day, 2, new Range(1, 4), "b", WashPoint.Kind.BOARD));
    String wash = marks(new WashPoint(day, 2, new Range(1, 4), "w"));
    assertThat(board).contains("class=\"board\"").doesNotContain("<circle");
    assertThat(wash).contains("class=\"wash\"", "<circle");
  }

  private static String marks(WashPoint point) {
    return SeasonChart.of(new Heading("t", "s"), "Mites", InventedSeason.twoPlans())
        .washes(List.of(point))
        .svg();
  }

  @Test
  void sayWhatIsWrongWithTheInput() {
    LocalDate d = InventedSeason.START;
    assertThatThrownBy(() -> Estimate.of(d, Double.NaN)).hasMessageContaining("2026-04-01");
    assertThatThrownBy(() -> new Range(2, 1)).hasMessageContaining("lower one first");
    assertThatThrownBy(() -> new Line("wait", "", List.of(Estimate.of(d, 1), Estimate.of(d, 2))))
        .hasMessageContaining("wait")
        .hasMessageContaining("in order");
    assertThatThrownBy(() -> new WashPoint(d, 5, new Range(1, 4), ""))
        .hasMessageContaining("outside its own interval");
    assertThatThrownBy(() -> new Span("supers", d, d.minusDays(1))).hasMessageContaining("supers");
    assertThatThrownBy(() -> new ThresholdSteps("threshold", List.of()))
        .hasMessageContaining("at least one");
    assertThatThrownBy(() -> Panel.of("Mites", List.of())).hasMessageContaining("nothing to draw");
  }

  private static org.assertj.core.data.Offset<Double> within(double by) {
    return org.assertj.core.api.Assertions.within(by);
  }

  private static Drawn.Word word(Drawn drawn, String text) {
    return drawn.words().stream().filter(w -> w.text().equals(text)).findFirst().orElseThrow();
  }

  /** Numbers stand with their middle at the line they name. */
  private static double middle(Drawn.Word w) {
    return w.room().y() + 0.78 * w.size() - 4.7;
  }

  private static double centre(Drawn.Word w) {
    return w.room().x() + w.room().width() / 2;
  }
}
