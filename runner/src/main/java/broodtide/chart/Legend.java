package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * A key above a plot: for narrow pictures, for more lines than can be named at their ends, and for
 * what is no line.
 *
 * @param entries samples with their names
 * @param height room the key needs
 */
record Legend(List<Entry> entries, double height) {
  private static final double SAMPLE = 26;
  private static final double ROW = 19;

  /**
   * What is named.
   *
   * @param kind whether a line, an area or a dot is shown
   * @param pen its colour, and for a line its dash
   * @param opacity strength of an area
   * @param name its name
   */
  record Sample(Mark.Kind kind, Pen pen, double opacity, String name) {
    static Sample line(Pen pen, String name) {
      return new Sample(Mark.Kind.LINE, pen, 1, name);
    }

    static Sample area(Colour colour, double opacity, String name) {
      return new Sample(Mark.Kind.AREA, Pen.solid(colour, 1), opacity, name);
    }

    static Sample dot(Colour colour, String name) {
      return new Sample(Mark.Kind.DOTS, Pen.solid(colour, 1), 1, name);
    }
  }

  /** A sample at (x, y) from the key's corner, and the rows of its name. */
  record Entry(Sample sample, double x, double y, List<String> rows) {}

  /** A key of lines. */
  static Legend of(List<Line> lines, Size size) {
    List<Sample> samples = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      String note = EndLabels.note(lines, i);
      String name = lines.get(i).name() + (note.isBlank() ? "" : ": " + note);
      samples.add(Sample.line(Plot.pen(i), name));
    }
    return ofSamples(samples, size);
  }

  /** Sets the entries in rows of the picture's width. */
  static Legend ofSamples(List<Sample> samples, Size size) {
    double room = size.width() - 2 * Heading.MARGIN;
    List<Entry> entries = new ArrayList<>();
    double x = 0;
    double y = 0;
    double height = 0;
    for (Sample sample : samples) {
      double width = SAMPLE + 6 + Type.LABEL.room(sample.name(), 0, 0).width();
      if (x > 0 && x + width > room) {
        x = 0;
        y = height;
      }
      List<String> rows = Lettering.wrap(sample.name(), Type.LABEL, room - SAMPLE - 6);
      entries.add(new Entry(sample, x, y, rows));
      height = Math.max(height, y + rows.size() * ROW);
      x += width + 16;
    }
    return new Legend(entries, entries.isEmpty() ? 0 : height + 4);
  }

  void paint(Canvas canvas, double top) {
    canvas.open("key", "");
    for (Entry e : entries) {
      double x = Heading.MARGIN + e.x();
      double y = top + e.y() + ROW / 2;
      sample(canvas, e.sample(), x, y);
      for (int r = 0; r < e.rows().size(); r++) {
        Type type = Type.LABEL.in(Palette.INK);
        canvas.write(e.rows().get(r), x + SAMPLE + 6, y + 5 + r * ROW, type);
      }
    }
    canvas.close();
  }

  private static void sample(Canvas canvas, Sample s, double x, double y) {
    switch (s.kind()) {
      case LINE, STEPS -> canvas.draw(Trace.of(x, y, x + SAMPLE, y), s.pen());
      case AREA -> {
        Box box = new Box(x, y - 6, SAMPLE, 12);
        canvas.fill(Trace.around(box), s.pen().colour(), s.opacity());
      }
      case DOTS ->
          canvas.disc(x + SAMPLE / 2, y, 4.6, s.pen().colour(), Pen.solid(Palette.PAPER, 1.4));
      case DIAMONDS -> canvas.draw(Trace.diamond(x + SAMPLE / 2, y, 5.5), s.pen());
    }
  }
}
