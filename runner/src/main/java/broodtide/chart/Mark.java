package broodtide.chart;

import java.util.Arrays;
import java.util.List;

/**
 * Something drawn in a field from data: lines, steps, areas or dots of one pen. Coordinates are in
 * the units of the axes; a coordinate that is not a number parts one line or area from the next.
 */
final class Mark {
  /** How the points are used. */
  enum Kind {
    LINE,
    STEPS,
    AREA,
    DOTS,
    DIAMONDS
  }

  /** Marks that belong together; in an SVG their kind becomes a class, their note a tooltip. */
  record Group(String kind, String note) {}

  final Kind kind;
  final double[] x;
  final double[] y;
  final Pen pen;

  /** Strength of an area, radius of a dot, half the width of a diamond. */
  final double measure;

  /** Width of the paper-coloured rim that lifts a line off what it crosses; 0 for none. */
  final double rim;

  final Group group;

  /** Whether it may reach over the edge of the field. */
  final boolean over;

  private Mark(
      Kind kind,
      double[] x,
      double[] y,
      Pen pen,
      double measure,
      double rim,
      Group group,
      boolean over) {
    if (x.length == 0 || x.length != y.length) {
      throw new IllegalArgumentException(
          "a mark has " + x.length + " places and " + y.length + " heights; give as many of each");
    }
    this.kind = kind;
    this.x = x;
    this.y = y;
    this.pen = pen;
    this.measure = measure;
    this.rim = rim;
    this.group = group;
    this.over = over;
  }

  private Mark(Kind kind, double[] x, double[] y, Pen pen, double measure) {
    this(kind, x, y, pen, measure, 0, new Group("mark", ""), false);
  }

  /** A line from point to point. */
  static Mark line(double[] x, double[] y, Pen pen) {
    return new Mark(Kind.LINE, x.clone(), y.clone(), pen, 1);
  }

  /** A line between two points. */
  static Mark line(double x1, double y1, double x2, double y2, Pen pen) {
    return new Mark(Kind.LINE, new double[] {x1, x2}, new double[] {y1, y2}, pen, 1);
  }

  /** A line that keeps each height until the next place. */
  static Mark steps(double[] x, double[] y, Pen pen) {
    return new Mark(Kind.STEPS, x.clone(), y.clone(), pen, 1);
  }

  /** The area between two lines. */
  static Mark band(double[] x, double[] low, double[] high, Colour colour, double opacity) {
    int n = x.length;
    double[] around = Arrays.copyOf(x, 2 * n);
    double[] edge = Arrays.copyOf(high, 2 * n);
    for (int i = 0; i < n; i++) {
      around[n + i] = x[n - 1 - i];
      edge[n + i] = low[n - 1 - i];
    }
    return new Mark(Kind.AREA, around, edge, Pen.solid(colour, 0), opacity);
  }

  /** Boxes, each from a left to a right place and from a low to a high one. */
  static Mark bars(
      double[] left, double[] right, double[] low, double[] high, Colour colour, double opacity) {
    int n = left.length;
    double[] xs = new double[5 * n];
    double[] ys = new double[5 * n];
    for (int i = 0; i < n; i++) {
      double[] x = {left[i], right[i], right[i], left[i], left[i]};
      double[] y = {high[i], high[i], low[i], low[i], Double.NaN};
      System.arraycopy(x, 0, xs, 5 * i, 5);
      System.arraycopy(y, 0, ys, 5 * i, 5);
    }
    return new Mark(Kind.AREA, xs, ys, Pen.solid(colour, 0), opacity);
  }

  /** The outline between two lines, to be hatched with a pen. */
  static Mark hatch(double[] x, double[] low, double[] high, Pen pen) {
    Mark band = band(x, low, high, pen.colour(), 1);
    return new Mark(Kind.AREA, band.x, band.y, pen, 1);
  }

  /** Dots with a rim of paper. */
  static Mark dots(double[] x, double[] y, Colour colour, double radius) {
    return new Mark(Kind.DOTS, x.clone(), y.clone(), Pen.solid(colour, 1.4), radius);
  }

  /** A dot with an upright bar from low to high, which need not be as long on both sides. */
  static List<Mark> upright(double x, double value, double low, double high, Colour c, Group g) {
    return List.of(
        line(x, high, x, low, Pen.solid(c, 1.6)).rimmed(4).in(g),
        dots(new double[] {x}, new double[] {value}, c, 4.6).in(g));
  }

  /** Diamonds with a rim of paper, which are hollow. */
  static Mark diamonds(double[] x, double[] y, Colour colour, double half) {
    return new Mark(Kind.DIAMONDS, x.clone(), y.clone(), Pen.solid(colour, 1.8), half);
  }

  /** The same as {@link #upright} with a hollow diamond. */
  static List<Mark> uprightDiamond(
      double x, double value, double low, double high, Colour c, Group g) {
    return List.of(
        line(x, high, x, low, Pen.solid(c, 1.6)).rimmed(4).in(g),
        diamonds(new double[] {x}, new double[] {value}, c, 6.5).in(g));
  }

  /** A dot with a level bar from low to high. */
  static List<Mark> level(double y, double value, double low, double high, Colour c, Group g) {
    return List.of(
        line(low, y, high, y, Pen.solid(c, 1.6)).rimmed(4).in(g),
        dots(new double[] {value}, new double[] {y}, c, 4.6).in(g));
  }

  /** The same, lifted off what it crosses by a pale rim. */
  Mark rimmed(double width) {
    return new Mark(kind, x, y, pen, measure, width, group, over);
  }

  /** The same as one of a group. */
  Mark in(Group other) {
    return new Mark(kind, x, y, pen, measure, rim, other, over);
  }

  /** The same, which may reach over the edge of the field. */
  Mark over() {
    return new Mark(kind, x, y, pen, measure, rim, group, true);
  }

  /** The same in a group of its own. */
  Mark in(String kindOfGroup, String note) {
    return in(new Group(kindOfGroup, note));
  }
}
