package broodtide.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
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

  /** Half of the width of a cross. */
  private static final double CROSS = 5;

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

  /** The same field in numbers, for its marks. */
  PlotArea field() {
    return new PlotArea(box, days.scale(), scale);
  }

  /** Writes the numbers and gives the grid lines. */
  List<Mark> frame(Canvas canvas) {
    List<Mark> grid = new ArrayList<>();
    Mark.Group axis = new Mark.Group("axis", "");
    double end = days.number(days.last());
    for (Days.Tick t : days.ticks(Type.LABEL)) {
      double x = days.number(t.date());
      Pen pen = Pen.solid(Palette.GRID, 0.7);
      grid.add(Mark.line(x, scale.low(), x, scale.high(), pen).in(axis).over());
    }
    for (double t : scale.ticks(steps(box.height()))) {
      grid.add(Mark.line(0, t, end, t, Pen.solid(Palette.GRID, 1)).in(axis).over());
      canvas.write(Numerals.plain(t), box.x() - 7, scale.at(t) + 4.7, TICK);
    }
    Pen foot = Pen.solid(Palette.AXIS, 1.2);
    grid.add(Mark.line(0, scale.low(), end, scale.low(), foot).in(axis).over());
    return grid;
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

  /** The bands of all lines, wide ones first. */
  List<Mark> bands(List<Line> lines) {
    long banded = lines.stream().filter(l -> l.last().outer() != null).count();
    double strength = banded <= 1 ? 1 : banded == 2 ? 0.8 : 0.5;
    List<Mark> bands = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      band(lines.get(i), i, Estimate::outer, 0.16 * strength)
          .ifPresent(b -> bands.add(b.in("band90", "")));
    }
    for (int i = 0; i < lines.size(); i++) {
      band(lines.get(i), i, Estimate::inner, 0.26 * strength)
          .ifPresent(b -> bands.add(b.in("band50", "")));
    }
    return bands;
  }

  /** All medians, each with a pale rim that lifts it off what it crosses. */
  List<Mark> medians(List<Line> lines) {
    List<Mark> medians = new ArrayList<>();
    // The first line is the one asked about, so it is drawn last, on top.
    for (int i = lines.size() - 1; i >= 0; i--) {
      List<Estimate> e = lines.get(i).estimates();
      Mark median = Mark.line(places(e), heights(e, Estimate::median), pen(i));
      medians.add(median.rimmed(4.2).in("median", lines.get(i).name()));
    }
    return medians;
  }

  /** A cross where a line ends before the end of what was asked for. */
  void ends(Canvas canvas, List<Line> lines) {
    for (int i = 0; i < lines.size(); i++) {
      Line line = lines.get(i);
      if (!line.ended().isEmpty()) {
        double x = days.at(line.last().date());
        double y = scale.within(line.last().median());
        List<Trace> cross =
            List.of(
                Trace.of(x - CROSS, y - CROSS, x + CROSS, y + CROSS),
                Trace.of(x - CROSS, y + CROSS, x + CROSS, y - CROSS));
        canvas.open("ended", line.name() + ": " + line.ended());
        canvas.draw(cross, Pen.solid(Palette.PAPER, 5.5));
        canvas.draw(cross, Pen.solid(Palette.line(i), 2.5));
        canvas.close();
      }
    }
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

  private Optional<Mark> band(
      Line line, int number, Function<Estimate, @Nullable Range> which, double opacity) {
    List<Estimate> known = line.estimates().stream().filter(e -> which.apply(e) != null).toList();
    if (known.size() < 2) {
      return Optional.empty();
    }
    double[] low = heights(known, e -> ends(which, e).low());
    double[] high = heights(known, e -> ends(which, e).high());
    return Optional.of(Mark.band(places(known), low, high, Palette.line(number), opacity));
  }

  private static Range ends(Function<Estimate, @Nullable Range> which, Estimate e) {
    Range range = which.apply(e);
    return range == null ? new Range(e.median(), e.median()) : range;
  }

  private double[] places(List<Estimate> estimates) {
    return estimates.stream().mapToDouble(e -> days.number(e.date())).toArray();
  }

  private static double[] heights(List<Estimate> estimates, ToDoubleFunction<Estimate> value) {
    return estimates.stream().mapToDouble(value).toArray();
  }
}
