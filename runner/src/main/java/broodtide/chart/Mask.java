package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * Neighbouring masked cells of one row that have the same reason.
 *
 * @param row row number
 * @param from first column
 * @param count number of columns
 * @param masked the reason and its letter
 * @param spelled whether the reason itself fits, so that no letter is needed
 */
record Mask(int row, int from, int count, WindowMap.Masked masked, boolean spelled) {
  private static final Colour GROUND = Colour.of("#f4f4f2");
  private static final Pen HATCH = Pen.solid(Colour.of("#cfd1d4"), 1);
  private static final Type WORDS = Type.LABEL.at(Type.Anchor.MIDDLE);

  /** All masks of a map whose columns have this width. */
  static List<Mask> all(WindowMap map, double width) {
    List<Mask> masks = new ArrayList<>();
    for (int r = 0; r < map.rows().size(); r++) {
      List<WindowMap.Cell> cells = map.rows().get(r).cells();
      int c = 0;
      while (c < cells.size()) {
        int from = c;
        WindowMap.Cell cell = cells.get(c++);
        while (c < cells.size() && cells.get(c).equals(cell)) {
          c++;
        }
        if (cell instanceof WindowMap.Masked m) {
          boolean spelled = WORDS.room(m.reason(), 0, 0).width() + 12 <= (c - from) * width;
          masks.add(new Mask(r, from, c - from, m, spelled));
        } else {
          c = from + 1;
        }
      }
    }
    return masks;
  }

  void paint(Canvas canvas, Box b) {
    canvas.open("masked", masked.reason());
    hatch(canvas, b);
    String text = spelled ? masked.reason() : String.valueOf(masked.code());
    double x = b.x() + b.width() / 2;
    double y = b.y() + b.height() / 2 + 4.7;
    Box room = WORDS.room(text, x, y);
    Box ground = new Box(room.x() - 3, room.y() - 1, room.width() + 6, room.height() + 2);
    canvas.fill(Trace.around(ground), GROUND, 1);
    canvas.write(text, x, y, WORDS);
    canvas.close();
  }

  /** Paints the ground and slanting lines on it. */
  static void hatch(Canvas canvas, Box b) {
    canvas.fill(Trace.around(b), GROUND, 1);
    Hatching.inside(canvas, Trace.around(b), HATCH);
  }
}
