package broodtide.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Markers and today as flags above a plot, with thin poles down through it. */
final class Flags {
  private static final double ROW = 18;
  private static final double GAP = 8;

  private record Flag(String label, double x, double left, double right, boolean today) {
    boolean crosses(Flag pole) {
      return pole.x >= left - 3 && pole.x <= right + 3;
    }

    boolean touches(Flag other) {
      return left - GAP < other.right && other.left - GAP < right;
    }
  }

  private final List<Flag> flags = new ArrayList<>();
  private final List<Integer> rows = new ArrayList<>();

  /**
   * @param edge right end of the room for labels
   */
  Flags(Almanac almanac, Days days, double edge) {
    List<Flag> all = new ArrayList<>();
    for (Marker m : almanac.markers()) {
      add(all, m.label(), m.date(), days, edge, false);
    }
    LocalDate today = almanac.today();
    if (today != null) {
      add(all, "today", today, days, edge, true);
    }
    all.replaceAll(f -> f.today ? turned(f, all) : f);
    // Text runs to the right of its pole, so a pole may not stand under the text of a flag further
    // left unless that flag flies higher: rows are given from the right.
    all.sort(Comparator.comparingDouble(Flag::x).reversed());
    for (Flag f : all) {
      int row = 0;
      for (int j = 0; j < flags.size(); j++) {
        if (f.crosses(flags.get(j)) || f.touches(flags.get(j))) {
          row = Math.max(row, rows.get(j) + 1);
        }
      }
      flags.add(f);
      rows.add(row);
    }
  }

  /** Today's label stands on the side of the past, out of the way, if no pole stands there. */
  private static Flag turned(Flag f, List<Flag> all) {
    double width = f.right - f.left;
    Flag back = new Flag(f.label, f.x, f.x - 5 - width, f.x - 5, true);
    boolean free = back.left > 0 && all.stream().noneMatch(g -> !g.today && back.crosses(g));
    return free ? back : f;
  }

  private static void add(
      List<Flag> all, String label, LocalDate date, Days days, double edge, boolean today) {
    if (date.isBefore(days.first()) || date.isAfter(days.last())) {
      return;
    }
    double x = days.at(date);
    double width = Type.LABEL.room(label, 0, 0).width();
    double left = Math.min(x + 5, edge - width);
    all.add(new Flag(label, x, left, left + width, today));
  }

  /** Room needed above the plot. */
  double height() {
    return rows.stream().mapToInt(r -> r + 1).max().orElse(0) * ROW;
  }

  /** The thin poles down through a plot. */
  List<Mark> poles(Plot plot) {
    List<Mark> poles = new ArrayList<>();
    Mark.Group group = new Mark.Group("poles", "");
    Days days = plot.days();
    double perDay = (days.right() - days.left()) / days.number(days.last());
    for (Flag f : flags) {
      Pen pen = f.today ? Pen.solid(Palette.MUTED, 1.2) : new Pen(Palette.INK, 1, "1 3");
      double day = (f.x - days.left()) / perDay;
      Mark pole = Mark.line(day, plot.scale().high(), day, plot.scale().low(), pen);
      poles.add(pole.in(group).over());
    }
    return poles;
  }

  /** Paints the flags over a plot whose upper edge is {@code top}. */
  void paint(Canvas canvas, double top) {
    canvas.open("flags", "");
    for (int i = 0; i < flags.size(); i++) {
      Flag f = flags.get(i);
      double base = top - rows.get(i) * ROW - 6;
      Colour colour = f.today ? Palette.MUTED : Palette.INK;
      canvas.draw(Trace.of(f.x, base - 11, f.x, top), Pen.solid(colour, 1.2));
      if (!f.today) {
        Trace tip = Trace.of(f.x - 5, top - 1, f.x + 5, top - 1, f.x, top + 7, f.x - 5, top - 1);
        canvas.fill(tip, colour, 1);
      }
      canvas.write(f.label, f.left, base, Type.LABEL.in(colour));
    }
    canvas.close();
  }
}
