package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * One framed field of a {@link Figure}: two axes, marks from data, and words beside them.
 *
 * @param title what this field shows, where there are several; may be empty
 * @param x its foot
 * @param y its upright axis
 * @param marks what is drawn, the lowest first
 * @param hatched outlines that are hatched on top
 * @param words words in the field
 */
record Facet(
    String title, Axis x, Axis y, List<Mark> marks, List<Mark> hatched, List<Words> words) {
  private static final double BELOW = 25;
  private static final double FIRST_ROW = 19.5;
  private static final double YEAR = 16;
  private static final double ROW = 18;

  /** Words that begin near a place in the field, and move aside for others. */
  record Words(String text, double x, double y, Type type) {
    static Words at(double x, double y, String text) {
      return new Words(text, x, y, Type.LABEL.in(Palette.INK).haloed());
    }

    /** Words with their middle at a place. */
    static Words around(double x, double y, String text) {
      Type type = Type.LABEL.in(Palette.INK).haloed().at(Type.Anchor.MIDDLE);
      return new Words(text, x, y, type);
    }

    static Words at(double x, double y, String text, Colour colour) {
      return new Words(text, x, y, Type.LABEL.in(colour.asText()).heavy().haloed());
    }
  }

  static Facet of(String title, Axis x, Axis y, List<Mark> marks, Words... words) {
    return new Facet(title, x, y, List.copyOf(marks), List.of(), List.of(words));
  }

  /** Room for title and axis name above the field. */
  double above() {
    return ROW * ((title.isEmpty() ? 0 : 1) + (y.label().isEmpty() ? 0 : 1)) + 6;
  }

  /** Room below the field. */
  double below() {
    return BELOW + (x.first() != null ? YEAR : 0) + (x.label().isEmpty() ? 0 : ROW);
  }

  /** Room left of the field, no more than a share of the whole. */
  double left(double most) {
    double width = 0;
    for (Axis.Tick t : y.ticks(400, 0, true)) {
      width = Math.max(width, Type.LABEL.room(t.label(), 0, 0).width());
    }
    return Math.min(most, width) + 8;
  }

  /** The least height of the field. */
  double least() {
    return Math.max(y.first() == null && x.first() != null ? 140 : 110, 30 * y.names().size());
  }

  /**
   * Paints everything.
   *
   * @param left left end of the room, where title and axis name begin
   * @param box the field
   */
  void paint(Canvas canvas, double left, Box box) {
    double row = box.y() - above() + ROW - 5;
    if (!title.isEmpty()) {
      canvas.write(title, left, row, Type.LABEL.in(Palette.INK).heavy());
      row += ROW;
    }
    if (!y.label().isEmpty()) {
      canvas.write(y.label(), left, row, Type.LABEL.in(Palette.INK));
    }
    PlotArea field =
        new PlotArea(box, x.scale(box.x(), box.right()), y.scale(box.bottom(), box.y()));
    List<Mark> all = new ArrayList<>(grid(canvas, left, box));
    marks.stream().filter(m -> !dotted(m)).forEach(all::add);
    marks.stream().filter(this::dotted).map(Mark::over).forEach(all::add);
    field.paint(canvas, all);
    for (Mark m : hatched) {
      double[] xy = new double[2 * m.x.length + 2];
      for (int i = 0; i <= m.x.length; i++) {
        xy[2 * i] = field.x().at(m.x[i % m.x.length]);
        xy[2 * i + 1] = field.y().at(m.y[i % m.x.length]);
      }
      Hatching.inside(canvas, Trace.of(xy), m.pen);
    }
    words(canvas, field);
  }

  /** Dots, and the bars that belong to them, lie on top and may reach over the edge. */
  private boolean dotted(Mark mark) {
    return marks.stream().anyMatch(m -> m.kind == Mark.Kind.DOTS && m.group == mark.group);
  }

  private List<Mark> grid(Canvas canvas, double left, Box box) {
    List<Mark> grid = new ArrayList<>();
    Mark.Group group = new Mark.Group("axis", "");
    Type middle = Type.LABEL.at(Type.Anchor.MIDDLE);
    for (Axis.Tick t : x.ticks(box.x(), box.right(), false)) {
      grid.add(
          Mark.line(t.at(), y.low(), t.at(), y.high(), Pen.solid(Palette.GRID, 0.7))
              .in(group)
              .over());
      if (!t.label().isEmpty()) {
        canvas.write(t.label(), t.place(), box.bottom() + FIRST_ROW, middle);
      }
      if (!t.below().isEmpty()) {
        canvas.write(t.below(), t.place(), box.bottom() + FIRST_ROW + YEAR, middle.heavy());
      }
    }
    for (Axis.Tick t : y.ticks(box.bottom(), box.y(), true)) {
      grid.add(
          Mark.line(x.low(), t.at(), x.high(), t.at(), Pen.solid(Palette.GRID, 1))
              .in(group)
              .over());
      List<String> rows = Lettering.wrap(t.label(), Type.LABEL, box.x() - left - 7);
      for (int i = 0; i < rows.size(); i++) {
        double at = t.place() + 4.7 + (i - (rows.size() - 1) / 2.0) * 15;
        canvas.write(rows.get(i), box.x() - 7, at, Type.LABEL.at(Type.Anchor.END));
      }
    }
    Pen foot = Pen.solid(Palette.AXIS, 1.2);
    grid.add(Mark.line(x.low(), y.low(), x.high(), y.low(), foot).in(group).over());
    if (!x.label().isEmpty()) {
      double at = box.bottom() + below() - 5;
      canvas.write(x.label(), box.right(), at, Type.LABEL.at(Type.Anchor.END));
    }
    return grid;
  }

  /** Writes words inside the field, each at the free place nearest to where it belongs. */
  private void words(Canvas canvas, PlotArea field) {
    List<Box> taken = new ArrayList<>();
    List<Box> lines = new ArrayList<>();
    for (Mark m : marks) {
      if (m.kind == Mark.Kind.DOTS) {
        for (int i = 0; i < m.x.length; i++) {
          double x = field.x().at(m.x[i]);
          taken.add(new Box(x - 6, field.y().at(m.y[i]) - 6, 12, 12));
        }
      } else if (m.kind == Mark.Kind.LINE && !m.group.kind().equals("edge")) {
        along(m, field, lines);
      }
    }
    for (Words w : words) {
      Box room = placed(w, field, taken, lines);
      taken.add(room);
      double foot = room.y() + 0.78 * w.type().size();
      canvas.write(w.text(), room.x(), foot, w.type().at(Type.Anchor.START));
    }
  }

  /** Small boxes along a line. */
  private static void along(Mark m, PlotArea field, List<Box> out) {
    for (int i = 1; i < m.x.length; i++) {
      double x = field.x().at(m.x[i - 1]);
      double y = field.y().at(m.y[i - 1]);
      double dx = field.x().at(m.x[i]) - x;
      double dy = field.y().at(m.y[i]) - y;
      int steps = (int) Math.ceil(Math.hypot(dx, dy) / 6);
      for (int s = 0; s <= steps; s++) {
        double part = steps == 0 ? 0 : (double) s / steps;
        out.add(new Box(x + part * dx - 1.5, y + part * dy - 1.5, 3, 3));
      }
    }
  }

  /** Clear of dots, other words and lines; where that cannot be, clear of dots and words alone. */
  private static Box placed(Words w, PlotArea field, List<Box> taken, List<Box> lines) {
    Box box = field.box();
    boolean around = w.type().anchor() == Type.Anchor.MIDDLE;
    double aside = around ? 0 : 5;
    double up = around ? -4.7 : 5;
    Box wish = w.type().room(w.text(), field.x().at(w.x()) + aside, field.y().at(w.y()) - up);
    double left = Math.max(box.x() + 2, Math.min(wish.x(), box.right() - wish.width() - 2));
    double down = Math.max(box.y() + 2, Math.min(wish.y(), box.bottom() - wish.height() - 4));
    Box first = new Box(left, down, wish.width(), wish.height());
    Box fallback = first;
    for (int step = 0; step < 40; step++) {
      double by = (step % 2 == 0 ? -1 : 1) * 8 * ((step + 1) / 2);
      for (double over : new double[] {0, -wish.width() / 2 - 10, -wish.width() - 10}) {
        double x = Math.max(box.x() + 2, left + over);
        Box room = new Box(x, down + by, wish.width(), wish.height());
        if (!covers(room, taken, box)) {
          if (!covers(room, lines, box)) {
            return room;
          }
          fallback = fallback.equals(first) ? room : fallback;
        }
      }
    }
    return fallback;
  }

  private static boolean covers(Box room, List<Box> taken, Box field) {
    return taken.stream().anyMatch(room::overlaps)
        || room.y() < field.y()
        || room.bottom() > field.bottom();
  }
}
