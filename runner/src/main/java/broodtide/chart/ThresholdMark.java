package broodtide.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * Draws a threshold as a dashed step line, open where there is none, with its name where the fewest
 * lines and points are.
 */
final class ThresholdMark {
  private static final Type NAME = Type.LABEL.in(Palette.INK).haloed();
  private static final int PLACES = 24;

  private ThresholdMark() {}

  static List<Mark> line(ThresholdSteps threshold, Plot plot) {
    Mark.Group group = new Mark.Group("threshold", threshold.name());
    return runs(shown(threshold, plot.days())).stream()
        .map(run -> steps(run, plot.days()).in(group))
        .toList();
  }

  private static Mark steps(List<ThresholdSteps.Level> run, Days days) {
    int n = run.size();
    double[] x = new double[n + 1];
    double[] y = new double[n + 1];
    for (int i = 0; i < n; i++) {
      x[i] = Math.max(0, days.number(run.get(i).from()));
      y[i] = run.get(i).value();
    }
    LocalDate end = run.get(n - 1).to().plusDays(1);
    x[n] = days.number(end.isAfter(days.last()) ? days.last() : end);
    y[n] = y[n - 1];
    return Mark.steps(x, y, Pen.THRESHOLD);
  }

  /** Those steps that hold on a day shown. */
  static List<ThresholdSteps.Level> shown(ThresholdSteps threshold, Days days) {
    return threshold.levels().stream()
        .filter(l -> l.from().isBefore(days.last()) && !l.to().isBefore(days.first()))
        .toList();
  }

  /** Steps that follow one another without a day between them, together. */
  private static List<List<ThresholdSteps.Level>> runs(List<ThresholdSteps.Level> levels) {
    List<List<ThresholdSteps.Level>> out = new ArrayList<>();
    LocalDate next = LocalDate.MIN;
    for (ThresholdSteps.Level level : levels) {
      if (!level.from().equals(next)) {
        out.add(new ArrayList<>());
      }
      out.get(out.size() - 1).add(level);
      next = level.to().plusDays(1);
    }
    return out;
  }

  private static Trace trace(List<ThresholdSteps.Level> run, Plot plot) {
    double[] xy = new double[4 * run.size()];
    for (int i = 0; i < run.size(); i++) {
      double y = plot.scale().at(run.get(i).value());
      xy[4 * i] = Math.max(plot.box().x(), plot.days().at(run.get(i).from()));
      xy[4 * i + 1] = y;
      xy[4 * i + 2] = Math.min(plot.box().right(), plot.days().at(run.get(i).to().plusDays(1)));
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
  static void name(
      Canvas canvas, ThresholdSteps threshold, Plot plot, List<Box> lines, List<Box> washes) {
    List<ThresholdSteps.Level> levels = shown(threshold, plot.days());
    if (levels.isEmpty()) {
      return;
    }
    Box box = plot.box();
    double best = Double.POSITIVE_INFINITY;
    double bestX = 0;
    double bestY = 0;
    List<Seat> seats = new ArrayList<>();
    runs(levels).forEach(run -> seats.addAll(seats(threshold.name(), trace(run, plot))));
    for (Seat seat : seats) {
      Box room = NAME.room(threshold.name(), seat.x, seat.y);
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
    canvas.open("threshold", "");
    canvas.write(threshold.name(), bestX, bestY, NAME);
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
