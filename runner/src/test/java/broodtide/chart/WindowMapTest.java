package broodtide.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class WindowMapTest {
  private static final LocalDate JULY = LocalDate.of(2026, 7, 1);
  private static final List<LocalDate> STARTS = List.of(JULY, JULY.plusDays(14), JULY.plusDays(28));
  private static final WindowMap.Cell SUPERS = new WindowMap.Masked('S', "honey supers on");

  private static WindowMap map(boolean lowerIsBetter, WindowMap.Cell... cells) {
    WindowMap.Row row = new WindowMap.Row("thymol", List.of(cells));
    return WindowMap.of(
        new Heading("A map", ""), "Mites per 100 bees", lowerIsBetter, STARTS, List.of(row));
  }

  private static WindowMap.Cell is(double v) {
    return new WindowMap.Outcome(v);
  }

  @Test
  void theOutlineLiesOnTheBestCell() {
    WindowMap low = map(true, is(3), is(1), is(2));
    WindowMap high = map(false, is(3), is(1), is(2));
    assertThat(outlined(low)).isEqualTo(1);
    assertThat(outlined(high)).isZero();
    assertThat(low.description()).contains("thymol from 15 Jul (1.0)");
  }

  private static int outlined(WindowMap map) {
    Drawn drawn = Drawn.of(map);
    double middle = middle(drawn.groups("outline").get(0));
    List<Element> cells = drawn.groups("cell");
    for (int i = 0; i < cells.size(); i++) {
      if (Math.abs(middle(cells.get(i)) - middle) < 2) {
        return i;
      }
    }
    return -1;
  }

  private static double middle(Element group) {
    List<double[]> box = Drawn.points(Drawn.paths(group).get(0));
    return (box.get(0)[0] + box.get(2)[0]) / 2;
  }

  @Test
  void cellsTiedWithTheBestAreDottedAndExplained() {
    WindowMap tied = map(true, new WindowMap.Outcome(1.2, false, true), is(3), tiedBest());
    WindowMap alone = map(true, is(3), is(3), tiedBest());
    assertThat(circles(tied, 0)).isEqualTo(1);
    assertThat(circles(tied, 1)).isZero();
    assertThat(circles(tied, 2)).isZero();
    assertThat(tied.svg()).contains("Dots: tied with it");
    assertThat(alone.svg()).doesNotContain("Dots:");
  }

  private static WindowMap.Cell tiedBest() {
    return new WindowMap.Outcome(1, false, true);
  }

  private static int circles(WindowMap map, int cell) {
    return Drawn.of(map).groups("cell").get(cell).getElementsByTagName("circle").getLength();
  }

  @Test
  void darkerIsMore() {
    List<Element> cells = Drawn.of(map(true, is(1), is(2), is(4))).groups("cell");
    double before = 2;
    for (Element cell : cells) {
      String css = Drawn.paths(cell).get(0).getAttribute("fill");
      double luminance = Colour.of(css.length() == 7 ? css : "#ffffff").luminance();
      assertThat(luminance).isLessThan(before);
      before = luminance;
    }
  }

  @Test
  void neighboursMaskedForOneReasonAreOneFieldWithTheReasonOrItsLetter() {
    Drawn wide = Drawn.of(map(true, SUPERS, SUPERS, is(1)));
    assertThat(wide.groups("masked")).hasSize(1);
    assertThat(wide.groups("masked").get(0).getTextContent()).contains("honey supers on");
    assertThat(wide.groups("letters").get(0).getTextContent()).isBlank();

    Drawn narrow = Drawn.of(InventedSeason.windows().sized(new Size(320, 400)));
    assertThat(narrow.groups("letters").get(0).getTextContent()).contains("T").contains("too cool");
  }

  @Test
  void aMapWithNothingOpenSaysSo() {
    WindowMap shut = map(true, SUPERS, SUPERS, SUPERS);
    assertThat(Drawn.of(shut).groups("outline")).isEmpty();
    assertThat(shut.description()).contains("No control can begin");
  }

  @Test
  void cellsThatHangOnTheLabelAreLinedAndExplained() {
    Drawn open = Drawn.of(map(true, is(3), is(1), is(2)));
    WindowMap some = map(true, new WindowMap.Outcome(3, true, false), is(1), is(2));
    Drawn lined = Drawn.of(some);
    assertThat(open.groups("lined")).isEmpty();
    assertThat(lined.groups("lined").get(0).getTextContent()).contains("the label decides");
    List<Element> cells = lined.groups("cell");
    assertThat(Drawn.paths(cells.get(0))).hasSize(2);
    assertThat(Drawn.paths(cells.get(1))).hasSize(1);
    assertThat(Drawn.paths(cells.get(0)).get(0).getAttribute("fill"))
        .isEqualTo(Drawn.paths(open.groups("cell").get(0)).get(0).getAttribute("fill"));
    assertThat(some.description()).contains("honey supers on: the label decides");
  }

  @Test
  void everyPictureSaysThatItIsNoInstruction() {
    List<Picture> pictures =
        List.of(
            map(true, is(3), is(1), is(2)),
            map(true, SUPERS, SUPERS, SUPERS),
            InventedSeason.forecast(),
            InventedSeason.forecast().sized(Size.PHONE));
    for (Picture picture : pictures) {
      assertThat(picture.svg()).contains("Estimate, not an instruction; the label decides.");
    }
  }

  @Test
  void equalOutcomesAreDrawnToo() {
    Drawn drawn = Drawn.of(map(true, is(2), is(2), is(2)));
    assertThat(drawn.groups("cell")).hasSize(3);
  }

  @Test
  void badInputIsRefusedInWords() {
    assertThatThrownBy(() -> map(true, is(1))).hasMessageContaining("1 cells for 3 start days");
    assertThatThrownBy(() -> is(Double.NaN)).hasMessageContaining("mask the cell");
  }
}
