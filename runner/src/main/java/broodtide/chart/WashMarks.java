package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/** Draws washes as points with interval bars. */
final class WashMarks {
  private static final double RADIUS = 4.6;

  private WashMarks() {}

  static void paint(Canvas canvas, List<WashPoint> washes, Plot plot) {
    for (WashPoint w : washes) {
      double x = plot.days().at(w.date());
      String said =
          w.date() + ": " + Numerals.withRange(w.value(), w.interval().low(), w.interval().high());
      canvas.open("wash", w.note().isBlank() ? said : said + ". " + w.note());
      Trace bar = Trace.of(x, high(w, plot), x, low(w, plot));
      canvas.draw(bar, Pen.solid(Palette.PAPER, 4));
      canvas.draw(bar, Pen.solid(Palette.INK, 1.6));
      double y = plot.scale().within(w.value());
      canvas.disc(x, y, RADIUS, Palette.INK, Pen.solid(Palette.PAPER, 1.4));
      canvas.close();
    }
  }

  /** The room each wash takes. */
  static List<Box> rooms(List<WashPoint> washes, Plot plot) {
    List<Box> rooms = new ArrayList<>();
    for (WashPoint w : washes) {
      double top = high(w, plot) - 5;
      rooms.add(new Box(plot.days().at(w.date()) - 7, top, 14, low(w, plot) + 5 - top));
    }
    return rooms;
  }

  private static double high(WashPoint w, Plot plot) {
    return plot.scale().within(w.interval().high());
  }

  private static double low(WashPoint w, Plot plot) {
    return plot.scale().within(w.interval().low());
  }
}
