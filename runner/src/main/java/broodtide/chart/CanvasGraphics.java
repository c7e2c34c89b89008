package broodtide.chart;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What XChart draws on: a square that is stretched over a box of a {@link Canvas}. Segments that
 * follow one another become one line, so that dashes run on and the SVG stays small.
 */
final class CanvasGraphics extends ShapesOnly {
  private final Canvas canvas;
  private final Box box;
  private final double side;
  private final List<Double> line = new ArrayList<>();
  private @Nullable Mark mark;
  private Mark.@Nullable Group group;
  private boolean cut;

  CanvasGraphics(Canvas canvas, Box box, int side) {
    this.canvas = canvas;
    this.box = box;
    this.side = side;
  }

  @Override
  public void setColor(Color colour) {
    Mark next = colour instanceof PlotArea.Ink ink ? ink.mark() : null;
    if (next != mark) {
      endLine();
      mark = next;
    }
  }

  @Override
  public void draw(Shape shape) {
    Line2D s = (Line2D) shape;
    boolean follows =
        !line.isEmpty()
            && line.get(line.size() - 2) == x(s.getX1())
            && line.get(line.size() - 1) == y(s.getY1());
    if (!follows) {
      endLine();
      line.addAll(List.of(x(s.getX1()), y(s.getY1())));
    }
    line.addAll(List.of(x(s.getX2()), y(s.getY2())));
  }

  @Override
  public void fill(Shape shape) {
    Mark m = mark;
    if (m == null) {
      return;
    }
    endLine();
    open(m);
    if (shape instanceof Ellipse2D dot && m.kind == Mark.Kind.DIAMONDS) {
      Trace edge = Trace.diamond(x(dot.getCenterX()), y(dot.getCenterY()), m.measure);
      canvas.fill(edge, Palette.PAPER, 1);
      canvas.draw(edge, m.pen);
    } else if (shape instanceof Ellipse2D dot) {
      Pen rim = Pen.solid(Palette.PAPER, m.pen.width());
      canvas.disc(x(dot.getCenterX()), y(dot.getCenterY()), m.measure, m.pen.colour(), rim);
    } else if (shape instanceof Path2D area) {
      canvas.fill(trace(area).thinned(Trace.FINENESS), m.pen.colour(), m.measure);
    }
  }

  /** Draws what is not yet drawn. */
  void finish() {
    endLine();
    open(null);
  }

  private void endLine() {
    Mark m = mark;
    if (m != null && !line.isEmpty()) {
      open(m);
      Trace trace = Trace.of(line.stream().mapToDouble(Double::doubleValue).toArray());
      if (m.rim > 0) {
        canvas.draw(trace, Pen.solid(Palette.PAPER, m.rim));
      }
      canvas.draw(trace, m.pen);
    }
    line.clear();
  }

  /** Opens the group of a mark, and cuts at the edge of the box unless the mark may cross it. */
  private void open(@Nullable Mark next) {
    if (next != null && next.group == group) {
      return;
    }
    if (group != null) {
      canvas.close();
    }
    boolean cutNext = next != null && !next.over;
    if (cut && !cutNext) {
      canvas.close();
    } else if (!cut && cutNext) {
      canvas.openInside(box);
    }
    cut = cutNext;
    group = next == null ? null : next.group;
    if (next != null) {
      canvas.open(next.group.kind(), next.group.note());
    }
  }

  private Trace trace(Path2D area) {
    List<Double> xy = new ArrayList<>();
    double[] p = new double[6];
    for (PathIterator i = area.getPathIterator(null); !i.isDone(); i.next()) {
      if (i.currentSegment(p) != PathIterator.SEG_CLOSE) {
        xy.add(x(p[0]));
        xy.add(y(p[1]));
      }
    }
    return Trace.of(xy.stream().mapToDouble(Double::doubleValue).toArray());
  }

  private double x(double px) {
    return box.x() + px / side * box.width();
  }

  private double y(double py) {
    return box.y() + py / side * box.height();
  }
}
