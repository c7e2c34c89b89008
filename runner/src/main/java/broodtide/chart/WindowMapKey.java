package broodtide.chart;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;

/** What stands below a {@link WindowMap}: the colour scale, the letters, and the best in words. */
final class WindowMapKey {
  private static final Type LABEL = Type.LABEL.in(Palette.INK);
  private static final Type FOOT = Type.LABEL;
  private static final double ROW = 19;
  private static final double SCALE = 42;
  private static final int STEPS = 24;

  /** What the line in a cell means. */
  static final String LABEL_DECIDES = "honey supers on: the label decides";

  private static final double EDGE = 4.5;

  private final String outcome;
  private final boolean lined;
  private final Outcomes outcomes;
  private final SortedMap<Character, String> letters = new TreeMap<>();
  private final List<String> words;
  private final List<String> foot;
  private final Size size;

  WindowMapKey(WindowMap map, Outcomes outcomes, List<Mask> masks, List<String> words) {
    this.outcome = map.outcome();
    this.outcomes = outcomes;
    this.lined = map.labelDecides();
    this.words = words;
    this.size = map.size();
    this.foot = Lettering.wrap(Picture.CAUTION, FOOT, size.width() - 2 * Heading.MARGIN);
    for (Mask m : masks) {
      if (!m.spelled()) {
        letters.merge(
            m.masked().code(), m.masked().reason(), (a, b) -> a.equals(b) ? a : a + " or " + b);
      }
    }
  }

  double height() {
    int rows = letters.size() + (lined ? 1 : 0) + words.size() + foot.size();
    return (outcomes.best() == null ? 0 : SCALE) + rows * ROW + 4;
  }

  void paint(Canvas canvas, double top) {
    double y = top;
    if (outcomes.best() != null) {
      scale(canvas, y);
      y += SCALE;
    }
    canvas.open("letters", "");
    for (Map.Entry<Character, String> e : letters.entrySet()) {
      Box sample = new Box(Heading.MARGIN, y + 2, 24, ROW - 3);
      Mask.hatch(canvas, sample);
      String letter = String.valueOf(e.getKey());
      canvas.write(letter, sample.x() + 12, y + 15, LABEL.at(Type.Anchor.MIDDLE));
      canvas.write(e.getValue(), sample.right() + 8, y + 15, LABEL);
      y += ROW;
    }
    canvas.close();
    if (lined) {
      canvas.open("lined", "");
      Box sample = new Box(Heading.MARGIN, y + 2, 24, ROW - 3);
      canvas.fill(Trace.around(sample), Palette.scale(0), 1);
      line(canvas, sample, Palette.over(Palette.scale(0)));
      canvas.write(LABEL_DECIDES, sample.right() + 8, y + 15, LABEL);
      canvas.close();
      y += ROW;
    }
    canvas.open("best", "");
    for (String line : words) {
      y += ROW;
      canvas.write(line, Heading.MARGIN, y, LABEL);
    }
    canvas.close();
    canvas.open("foot", "");
    for (String line : foot) {
      y += ROW;
      canvas.write(line, Heading.MARGIN, y, FOOT);
    }
    canvas.close();
  }

  /** The line along the upper edge of a cell; its colour stays readable below. */
  static void line(Canvas canvas, Box cell, Colour ink) {
    double y = cell.y() + EDGE;
    canvas.draw(Trace.of(cell.x(), y, cell.right(), y), Pen.solid(ink, 1.6));
  }

  private void scale(Canvas canvas, double y) {
    String low = outcomes.text(outcomes.low());
    canvas.open("scale", "");
    canvas.write(outcome, Heading.MARGIN, y + 12, LABEL);
    canvas.write(low, Heading.MARGIN, y + 31, LABEL);
    double from = Heading.MARGIN + LABEL.room(low, 0, 0).width() + 7;
    double width = 0.36 * size.width();
    double step = width / STEPS;
    double[][] steps = {IntStream.range(0, STEPS).asDoubleStream().toArray()};
    PlotArea.cells(
        canvas,
        steps,
        0,
        STEPS - 1,
        (on, i, row, colour) -> {
          double overlap = i < STEPS - 1 ? 0.6 : 0;
          Box b = new Box(from + i * step, y + 20, step + overlap, 13);
          on.fill(Trace.around(b), colour, 1);
        });
    canvas.write(outcomes.text(outcomes.high()), from + width + 7, y + 31, LABEL);
    canvas.close();
  }
}
