package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

/** What each kind of picture shows of the figures given to it. */
class FigureTest {
  @Test
  void washShadesFromTheThresholdOn() {
    Drawn drawn = Drawn.of(InventedFigures.wash());
    double at = Drawn.points(Drawn.paths(drawn.groups("limit").get(0)).get(0)).get(0)[0];
    List<Element> areas =
        Drawn.paths(drawn.root()).stream().filter(p -> p.hasAttribute("fill-opacity")).toList();
    List<double[]> shaded = Drawn.points(areas.get(1));
    assertThat(shaded.stream().mapToDouble(p -> p[0]).min().orElseThrow())
        .isCloseTo(at, within(0.3));
    assertThat(text(drawn)).contains("threshold: 1.5").contains("85 % above it");
  }

  @Test
  void growthWritesDoublingTimesAndSharesItsAxes() {
    Drawn one = Drawn.of(InventedFigures.growth(1));
    assertThat(text(one)).contains("doubles in 32 days").contains("thymol");
    Drawn four = Drawn.of(InventedFigures.growth(4));
    assertThat(four.groups("wash")).hasSize(16);
    List<String> fives =
        four.words().stream().map(Drawn.Word::text).filter(t -> t.equals("5")).toList();
    assertThat(fives).as("the same numbers on each of four axes").hasSize(4);
    // The same wash stands at the same height in neighbouring fields.
    assertThat(disc(four.groups("wash").get(0), "cy"))
        .isEqualTo(disc(four.groups("wash").get(4), "cy"));
  }

  @Test
  void workedShowsBothSeasonsAndPriorBehindPosterior() {
    Drawn drawn = Drawn.of(InventedFigures.worked());
    assertThat(drawn.groups("median")).hasSize(2);
    assertThat(drawn.groups("prior")).hasSize(1);
    assertThat(drawn.groups("posterior")).hasSize(1);
    assertThat(text(drawn)).contains("without it").contains("before the washes");
  }

  @Test
  void onlyRulesThatNoOtherBeatsAreOnTheEdge() {
    assertThat(RuleTradeoff.edge(InventedFigures.theRules()))
        .extracting(RuleTradeoff.Rule::name)
        .containsExactly("no rule", "2 with formic-slow", "August and December");
    assertThat(InventedFigures.rules().description()).doesNotContain("every August");
  }

  @Test
  void worthHasAZeroLineAndABarForEachDecision() {
    Drawn drawn = Drawn.of(InventedFigures.worth());
    assertThat(drawn.groups("zero")).hasSize(1);
    assertThat(drawn.groups("decision")).hasSize(3);
    List<double[]> wait = Drawn.points(Drawn.paths(drawn.groups("decision").get(0)).get(0));
    List<double[]> thymol = Drawn.points(Drawn.paths(drawn.groups("decision").get(1)).get(0));
    assertThat(right(wait)).as("counts are not left out").isCloseTo(left(thymol), within(0.11));
  }

  @Test
  void backtestBarsAreAsHighAsTheirCounts() {
    Drawn drawn = Drawn.of(InventedFigures.backtest());
    assertThat(drawn.groups("pair")).hasSize(13);
    assertThat(drawn.groups("skill")).hasSize(2);
    double zero = Drawn.points(Drawn.paths(drawn.groups("even").get(0)).get(0)).get(0)[1];
    List<Element> bars =
        Drawn.paths(drawn.root()).stream()
            .filter(p -> p.getAttribute("fill-opacity").equals(".55"))
            .toList();
    assertThat(bars).hasSize(5);
    double foot = foot(bars.get(0));
    // 13 forecasts in 5 parts: 2.6 in each.
    double each = (foot - zero) / 2.6;
    int[] counts = {4, 3, 2, 1, 3};
    for (int i = 0; i < 5; i++) {
      assertThat((foot - top(bars.get(i))) / each).isCloseTo(counts[i], within(0.03));
    }
  }

  @Test
  void anIndexThatMayBeNothingSaysSo() {
    Figure figure = InventedFigures.sensitivity();
    String all = text(Drawn.of(figure));
    assertThat(all).contains("cannot be told").contains("mites at the start");
    assertThat(
            new SensitivityBars.Index("a", 0.2, new Range(0.1, 0.3), 0.3, new Range(0.2, 0.4))
                .counts())
        .isTrue();
    assertThat(
            new SensitivityBars.Index("a", 0.2, new Range(-0.1, 0.5), 0.3, new Range(0.2, 0.4))
                .counts())
        .isFalse();
  }

  @Test
  void hivesStandInTheOrderGiven() {
    List<Element> hives = Drawn.of(InventedFigures.apiary()).groups("hive");
    // The lowest is drawn first.
    assertThat(hives).as("nine hives, each twice").hasSize(18);
    Element today = hives.get(16);
    Element judged = hives.get(17);
    assertThat(today.getTextContent()).startsWith("Invented 1, today:");
    assertThat(judged.getTextContent()).startsWith("Invented 1, 30 Sep if you wait:");
    assertThat(disc(today, "cy"))
        .isLessThan(disc(judged, "cy"))
        .isLessThan(disc(hives.get(0), "cy"));
    assertThat(disc(today, "cx")).isLessThan(disc(judged, "cx"));
    assertThat(disc(today, "cx")).isGreaterThan(disc(hives.get(14), "cx"));
  }

  @Test
  void sharesFillTheFieldAndTheHatchedPartLiesInTheRibbon() {
    Drawn drawn = Drawn.of(InventedFigures.inside());
    List<Element> states = drawn.groups("state");
    assertThat(states).hasSize(5);
    double[] lower = Drawn.edgesAt(Drawn.points(Drawn.paths(states.get(0)).get(0)), 300);
    double[] middle = Drawn.edgesAt(Drawn.points(Drawn.paths(states.get(1)).get(0)), 300);
    assertThat(lower[0]).isCloseTo(middle[1], within(0.35));
    assertThat(text(drawn)).contains("winter bees, hatched");
  }

  @Test
  void hatchLinesStayInside() {
    Trace triangle = Trace.of(10, 10, 110, 10, 10, 110, 10, 10);
    SvgCanvas canvas = new SvgCanvas(new Size(320, 200), "hatched", "");
    Hatching.inside(canvas, triangle, Pen.solid(Palette.INK, 1));
    Element path = Drawn.paths(new Drawn(canvas.finish()).root()).get(0);
    String[] lines = path.getAttribute("d").substring(1).split("M");
    assertThat(lines).hasSizeGreaterThan(8);
    for (String line : lines) {
      String[] start = line.split("[ l-]");
      double x = Double.parseDouble(start[0]);
      double y = Double.parseDouble(start[1]);
      assertThat(x).isBetween(9.9, 110.1);
      assertThat(x + y).isLessThan(120.2);
    }
  }

  @Test
  void aDashedLineIsOnePathAndAGapPartsIt() {
    double[] x = {0, 1, 2, 3, 4};
    SvgCanvas canvas = new SvgCanvas(new Size(320, 200), "a line", "");
    PlotArea field =
        new PlotArea(
            new Box(0, 0, 300, 100),
            new Scale(0, 4, false, 0, 300),
            new Scale(0, 10, false, 100, 0));
    Pen dashed = new Pen(Palette.INK, 2, "6 3");
    field.paint(canvas, List.of(Mark.line(x, new double[] {1, 3, 2, 8, 4}, dashed)));
    field.paint(canvas, List.of(Mark.line(x, new double[] {1, 3, Double.NaN, 8, 4}, dashed)));
    List<Element> paths = Drawn.paths(new Drawn(canvas.finish()).root());
    assertThat(paths).hasSize(3);
    assertThat(Drawn.points(paths.get(0))).hasSize(5);
    assertThat(Drawn.points(paths.get(0)).get(3))
        .containsExactly(new double[] {225, 20}, within(0.1));
  }

  @Test
  void twoPicturesOfOneKindDrawnAtOnceAreTheSame() {
    List<String> all =
        IntStream.range(0, 16)
            .parallel()
            .mapToObj(i -> InventedFigures.backtest().svg())
            .distinct()
            .toList();
    assertThat(all).hasSize(1);
  }

  @Test
  void linesThatMergeSaySo() {
    LocalDate d = InventedSeason.START;
    List<Line> lines =
        List.of(
            new Line("wait", "", List.of(Estimate.of(d, 1), Estimate.of(d.plusDays(90), 8))),
            new Line("late", "8", List.of(Estimate.of(d, 2), Estimate.of(d.plusDays(90), 8.05))),
            new Line("now", "", List.of(Estimate.of(d, 1), Estimate.of(d.plusDays(90), 3))));
    assertThat(EndLabels.note(lines, 0)).isEmpty();
    assertThat(EndLabels.note(lines, 1)).isEqualTo("8; same end as wait");
    assertThat(EndLabels.note(lines, 2)).isEmpty();
  }

  @Test
  void badFiguresAreRefusedInWords() {
    assertThatThrownBy(() -> DensityCurve.of(new double[] {1, 1}, new double[] {0, 0}))
        .hasMessageContaining("rise");
    assertThatThrownBy(() -> new GrowthPicture.Segment(List.of(), List.of(), ""))
        .hasMessageContaining("both its ends");
    assertThatThrownBy(() -> PriorPosterior.of(new Heading("Nothing", ""), List.of()))
        .hasMessageContaining("nothing to draw");
    Heading heading = new Heading("Nothing", "");
    assertThatThrownBy(() -> GrowthPicture.of(heading, "mites", List.of()))
        .hasMessageContaining("nothing to draw");
    assertThatThrownBy(() -> ApiaryDots.of(heading, "mites", List.of("today"), List.of(), null, ""))
        .hasMessageContaining("nothing to draw");
    SeasonInside.State state = new SeasonInside.State("a", new double[] {1, 1});
    assertThatThrownBy(
            () ->
                SeasonInside.of(
                    heading,
                    InventedSeason.START,
                    new SeasonInside.Stack("mites", true, List.of(state)),
                    new SeasonInside.Ribbon(
                        "bees", new double[] {1, 2, 3}, "winter bees", new double[] {0, 0, 0}),
                    new SeasonInside.Stack("bees", false, List.of())))
        .hasMessageContaining("same days");
  }

  private static String text(Drawn drawn) {
    return String.join(" ", drawn.words().stream().map(Drawn.Word::text).toList());
  }

  private static double disc(Element group, String where) {
    return Double.parseDouble(Drawn.elements(group, "circle").get(0).getAttribute(where));
  }

  private static double left(List<double[]> points) {
    return points.stream().mapToDouble(p -> p[0]).min().orElseThrow();
  }

  private static double right(List<double[]> points) {
    return points.stream().mapToDouble(p -> p[0]).max().orElseThrow();
  }

  private static double top(Element path) {
    return Drawn.points(path).stream().mapToDouble(p -> p[1]).min().orElseThrow();
  }

  private static double foot(Element path) {
    return Drawn.points(path).stream().mapToDouble(p -> p[1]).max().orElseThrow();
  }
}
