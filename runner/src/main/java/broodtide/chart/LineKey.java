package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * A key above a plot, for narrow pictures and for more lines than can be named at their ends.
 *
 * @param entries samples with their names
 * @param height room the key needs
 */
record LineKey(List<Entry> entries, double height) {
  private static final double SAMPLE = 26;
  private static final double ROW = 19;

  /** A sample of a line at (x, y) from the key's corner, and the rows of its name. */
  record Entry(int line, double x, double y, List<String> rows) {}

  /** Sets the entries in rows of the picture's width. */
  static LineKey of(List<Line> lines, Size size) {
    double room = size.width() - 2 * Heading.MARGIN;
    List<Entry> entries = new ArrayList<>();
    double x = 0;
    double y = 0;
    double height = 0;
    for (int i = 0; i < lines.size(); i++) {
      String name = text(lines.get(i), EndLabels.note(lines, i));
      double width = SAMPLE + 6 + Type.LABEL.room(name, 0, 0).width();
      if (x > 0 && x + width > room) {
        x = 0;
        y = height;
      }
      List<String> rows = Lettering.wrap(name, Type.LABEL, room - SAMPLE - 6);
      entries.add(new Entry(i, x, y, rows));
      height = Math.max(height, y + rows.size() * ROW);
      x += width + 16;
    }
    return new LineKey(entries, entries.isEmpty() ? 0 : height + 4);
  }

  void paint(Canvas canvas, double top) {
    canvas.open("key", "");
    for (Entry e : entries) {
      double x = Heading.MARGIN + e.x();
      double y = top + e.y() + ROW / 2;
      canvas.draw(Trace.of(x, y, x + SAMPLE, y), Plot.pen(e.line()));
      for (int r = 0; r < e.rows().size(); r++) {
        Type type = Type.LABEL.in(Palette.INK);
        canvas.write(e.rows().get(r), x + SAMPLE + 6, y + 5 + r * ROW, type);
      }
    }
    canvas.close();
  }

  private static String text(Line line, String note) {
    return note.isBlank() ? line.name() : line.name() + ": " + note;
  }
}
