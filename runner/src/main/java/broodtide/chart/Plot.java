package broodtide.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One framed field with its axes.
 *
 * @param box where it stands
 * @param days its foot
 * @param scale its upright axis
 */
record Plot(Box box, Days days, Scale scale) {
  private static final Type TICK = Type.LABEL.at(Type.Anchor.END);

  static final int MOST_STEPS = 6;

  /** How line number i is drawn. */
  static Pen pen(int i) {
    return new Pen(Palette.line(i), 2.5, Palette.dash(i));
  }

  /** Room needed left of the field for the numbers of an axis. */
  static double numbersWidth(List<Double> ticks) {
    double width = 0;
    for (double t : ticks) {
      width = Math.max(width, TICK.room(Numerals.plain(t), 0, 0).width());
    }
    return width + 8;
  }

  /** Steps an upright axis of this height has room for. */
  static int steps(double height) {
    return (int) Math.max(2, Math.min(MOST_STEPS, height / 36));
  }

  /** Paints grid lines and numbers. */
  void frame(Canvas canvas) {
    canvas.open("axis", "");
    for (Days.Tick t : days.ticks(Type.LABEL)) {
      canvas.draw(Trace.of(t.x(), box.y(), t.x(), box.bottom()), Pen.solid(Palette.GRID, 0.7));
    }
    for (double t : scale.ticks(steps(box.height()))) {
      double y = scale.at(t);
      canvas.draw(Trace.of(box.x(), y, box.right(), y), Pen.solid(Palette.GRID, 1));
      canvas.write(Numerals.plain(t), box.x() - 7, y + 4.7, TICK);
    }
    canvas.draw(
        Trace.of(box.x(), box.bottom(), box.right(), box.bottom()), Pen.solid(Palette.AXIS, 1.2));
    canvas.close();
  }

  /** Paints the names of the months, and years where they change, with their upper edge at y. */
  static void months(Canvas canvas, Days days, double y) {
    canvas.open("months", "");
    Type name = Type.LABEL.at(Type.Anchor.MIDDLE);
    for (Days.Tick t : days.ticks(Type.LABEL)) {
      canvas.draw(
          Trace.of(t.x(), y, t.x(), y + (t.label().isEmpty() ? 3 : 5)),
          Pen.solid(Palette.AXIS, 1.2));
      if (!t.label().isEmpty()) {
        canvas.write(t.label(), t.x(), y + 19.5, name);
      }
      if (!t.year().isEmpty()) {
        canvas.write(t.year(), t.x(), y + 35, name.heavy());
      }
    }
    canvas.close();
  }

  /** Height that {@link #months} takes. */
  static double monthsHeight() {
    return 39;
  }

  /** Paints the bands of all lines, wide ones first. */
  void bands(Canvas canvas, List<Line> lines) {
    canvas.openInside(box);
    long banded = lines.stream().filter(l -> l.last().most() != null).count();
    double strength = banded <= 1 ? 1 : banded == 2 ? 0.8 : 0.5;
    for (int i = 0; i < lines.size(); i++) {
      band(canvas, "band90", lines.get(i), i, Estimate::most, 0.16 * strength);
    }
    for (int i = 0; i < lines.size(); i++) {
      band(canvas, "band50", lines.get(i), i, Estimate::half, 0.26 * strength);
    }
    canvas.close();
  }

  /** Paints all medians, each with a pale rim that lifts it off what it crosses. */
  void medians(Canvas canvas, List<Line> lines) {
    canvas.openInside(box);
    // The first line is the one asked about, so it is drawn last, on top.
    for (int i = lines.size() - 1; i >= 0; i--) {
      canvas.open("median", lines.get(i).name());
      Trace trace = trace(lines.get(i).estimates(), Estimate::median);
      canvas.draw(trace, Pen.solid(Palette.PAPER, 4.2));
      canvas.draw(trace, pen(i));
      canvas.close();
    }
    canvas.close();
  }

  /** Small boxes along the medians, where no label should stand. */
  List<Box> rooms(List<Line> lines) {
    List<Box> rooms = new ArrayList<>();
    for (Line line : lines) {
      for (Estimate e : line.estimates()) {
        rooms.add(new Box(days.at(e.date()) - 3, scale.at(e.median()) - 5, 6, 10));
      }
    }
    return rooms;
  }

  private void band(
      Canvas canvas,
      String kind,
      Line line,
      int number,
      Function<Estimate, @Nullable Range> which,
      double opacity) {
    List<Estimate> known = line.estimates().stream().filter(e -> which.apply(e) != null).toList();
    if (known.size() < 2) {
      return;
    }
    Trace upper = trace(known, e -> ends(which, e).high()).thinned(0.12);
    Trace lower = trace(known, e -> ends(which, e).low()).thinned(0.12);
    canvas.open(kind, "");
    canvas.fill(upper.closedWith(lower), Palette.line(number), opacity);
    canvas.close();
  }

  private static Range ends(Function<Estimate, @Nullable Range> which, Estimate e) {
    Range range = which.apply(e);
    return range == null ? new Range(e.median(), e.median()) : range;
  }

  private Trace trace(List<Estimate> estimates, Function<Estimate, Double> value) {
    double[] x = new double[estimates.size()];
    double[] y = new double[estimates.size()];
    for (int i = 0; i < x.length; i++) {
      x[i] = days.at(estimates.get(i).date());
      y[i] = scale.at(value.apply(estimates.get(i)));
    }
    return Trace.of(x, y);
  }
}
