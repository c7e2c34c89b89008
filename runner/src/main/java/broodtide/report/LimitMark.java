package broodtide.report;

import java.util.ArrayList;
import java.util.List;

/** Draws a limit as a dashed step line, with its name where the fewest lines and points are. */
final class LimitMark {
  private static final Pen PEN = new Pen(Palette.INK, 1.6, "5 4");
  private static final Type NAME = Type.LABEL.in(Palette.INK).haloed();
  private static final int PLACES = 24;

  private LimitMark() {}

  static void line(Canvas canvas, Limit limit, Plot plot) {
    canvas.open("limit", limit.name());
    canvas.openInside(plot.box());
    canvas.draw(trace(limit, plot), PEN);
    canvas.close();
    canvas.close();
  }

  static Trace trace(Limit limit, Plot plot) {
    List<Limit.Level> levels = limit.levels();
    double[] xy = new double[4 * levels.size()];
    for (int i = 0; i < levels.size(); i++) {
      double y = plot.scale().at(levels.get(i).value());
      boolean last = i == levels.size() - 1;
      xy[4 * i] = x(levels.get(i), plot);
      xy[4 * i + 1] = y;
      xy[4 * i + 2] = last ? plot.box().right() : x(levels.get(i + 1), plot);
      xy[4 * i + 3] = y;
    }
    return Trace.of(xy);
  }

  private static double x(Limit.Level level, Plot plot) {
    Box box = plot.box();
    return Math.max(box.x(), Math.min(box.right(), plot.days().at(level.from())));
  }

  /**
   * Writes the name.
   *
   * @param lines places along lines, which the name should rather not cover
   * @param washes places of washes, which it must not cover
   */
  static void name(Canvas canvas, Limit limit, Plot plot, List<Box> lines, List<Box> washes) {
    Box box = plot.box();
    double best = Double.POSITIVE_INFINITY;
    double bestX = 0;
    double bestY = 0;
    for (Seat seat : seats(limit, plot)) {
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
  private static List<Seat> seats(Limit limit, Plot plot) {
    Trace trace = trace(limit, plot);
    double width = NAME.room(limit.name(), 0, 0).width();
    List<Seat> seats = new ArrayList<>();
    for (int i = 0; i < limit.levels().size(); i++) {
      double from = trace.x(2 * i) + 6;
      double to = Math.max(from, trace.x(2 * i + 1) - width - 6);
      boolean fits = trace.x(2 * i + 1) - trace.x(2 * i) >= width;
      for (int k = 0; k <= PLACES; k++) {
        double x = from + (to - from) * k / PLACES;
        double cost = (fits ? 0 : 2) + 0.01 * k;
        seats.add(new Seat(x, trace.y(2 * i) - 6, cost));
        seats.add(new Seat(x, trace.y(2 * i) + 16, cost + 0.005));
      }
    }
    return seats;
  }
}
