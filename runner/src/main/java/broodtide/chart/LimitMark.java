package broodtide.chart;

import java.util.ArrayList;
import java.util.List;

/** Draws a limit as a dashed step line, with its name where the fewest lines and points are. */
final class LimitMark {
  private static final Type NAME = Type.LABEL.in(Palette.INK).haloed();
  private static final int PLACES = 24;

  private LimitMark() {}

  static List<Mark> line(Limit limit, Plot plot) {
    List<Limit.Level> levels = shown(limit, plot.days());
    if (levels.isEmpty()) {
      return List.of();
    }
    int n = levels.size();
    double[] x = new double[n + 1];
    double[] y = new double[n + 1];
    for (int i = 0; i < n; i++) {
      x[i] = Math.max(0, plot.days().number(levels.get(i).from()));
      y[i] = levels.get(i).value();
    }
    x[n] = plot.days().number(plot.days().last());
    y[n] = y[n - 1];
    return List.of(Mark.steps(x, y, Pen.THRESHOLD).in("limit", limit.name()));
  }

  /** Those steps that hold on a day shown. */
  static List<Limit.Level> shown(Limit limit, Days days) {
    List<Limit.Level> shown = new ArrayList<>();
    for (Limit.Level level : limit.levels()) {
      if (!level.from().isAfter(days.first())) {
        shown.clear();
      }
      if (level.from().isBefore(days.last())) {
        shown.add(level);
      }
    }
    return shown;
  }

  private static Trace trace(List<Limit.Level> levels, Plot plot) {
    double[] xy = new double[4 * levels.size()];
    for (int i = 0; i < levels.size(); i++) {
      double y = plot.scale().at(levels.get(i).value());
      boolean last = i == levels.size() - 1;
      xy[4 * i] = Math.max(plot.box().x(), plot.days().at(levels.get(i).from()));
      xy[4 * i + 1] = y;
      xy[4 * i + 2] = last ? plot.box().right() : plot.days().at(levels.get(i + 1).from());
      xy[4 * i + 3] = y;
    }
    return Trace.of(xy);
  }

  /**
   * Writes the name.
   *
   * @param lines places along lines, which the name should rather not cover
   * @param washes places of washes, which it must not cover
   */
  static void name(Canvas canvas, Limit limit, Plot plot, List<Box> lines, List<Box> washes) {
    List<Limit.Level> levels = shown(limit, plot.days());
    if (levels.isEmpty()) {
      return;
    }
    Box box = plot.box();
    double best = Double.POSITIVE_INFINITY;
    double bestX = 0;
    double bestY = 0;
    for (Seat seat : seats(limit.name(), trace(levels, plot))) {
      Box room = NAME.room(limit.name(), seat.x, seat.y);
      boolean inside =
          room.x() >= box.x()
              && room.right() <= box.right()
              && room.y() >= box.y()
              && room.bottom() <= box.bottom();
      double cost = inside ? seat.cost : seat.cost + 1000;
      cost += lines.stream().filter(room::overlaps).count();
      cost += 20 * washes.stream().filter(room::overlaps).count();
      if (cost < best) {
        best = cost;
        bestX = seat.x;
        bestY = seat.y;
      }
    }
    canvas.open("limit", "");
    canvas.write(limit.name(), bestX, bestY, NAME);
    canvas.close();
  }

  private record Seat(double x, double y, double cost) {}

  /** Places above and below each step, the leftmost first. */
  private static List<Seat> seats(String name, Trace trace) {
    double width = NAME.room(name, 0, 0).width();
    List<Seat> seats = new ArrayList<>();
    for (int i = 0; i < trace.size(); i += 2) {
      double from = trace.x(i) + 6;
      double to = Math.max(from, trace.x(i + 1) - width - 6);
      boolean fits = trace.x(i + 1) - trace.x(i) >= width;
      for (int k = 0; k <= PLACES; k++) {
        double x = from + (to - from) * k / PLACES;
        double cost = (fits ? 0 : 2) + 0.01 * k;
        seats.add(new Seat(x, trace.y(i) - 6, cost));
        seats.add(new Seat(x, trace.y(i) + 16, cost + 0.005));
      }
    }
    return seats;
  }
}
