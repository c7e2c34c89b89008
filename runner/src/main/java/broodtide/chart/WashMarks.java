package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/** Draws counts as points with interval bars: washes as dots, boards as hollow diamonds. */
final class WashMarks {
  private WashMarks() {}

  static List<Mark> of(List<WashPoint> washes, Plot plot) {
    List<Mark> marks = new ArrayList<>();
    for (WashPoint w : washes) {
      String said =
          w.date()
              + ": "
              + Numerals.infestation(w.value(), w.interval().low(), w.interval().high());
      boolean washed = w.kind() == WashPoint.Kind.WASH;
      Mark.Group count =
          new Mark.Group(
              washed ? "wash" : "board", w.note().isBlank() ? said : said + ". " + w.note());
      double x = plot.days().number(w.date());
      double low = plot.scale().inside(w.interval().low());
      double high = plot.scale().inside(w.interval().high());
      double value = plot.scale().inside(w.value());
      List<Mark> drawn =
          washed
              ? Mark.upright(x, value, low, high, Palette.INK, count)
              : Mark.uprightDiamond(x, value, low, high, Palette.INK, count);
      drawn.forEach(m -> marks.add(m.over()));
    }
    return marks;
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
