package broodtide.chart;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Names beside the ends of lines, in the column right of a plot.
 *
 * @param labels one for each line that has a name
 * @param width room they need, 0 when there are none
 */
record EndLabels(List<Label> labels, double width) {
  private static final double LEAD = 15;
  private static final double ROW = Type.SMALL * 1.2;
  private static final double GAP = 5;

  /** Ends no further apart than this share of themselves are under one pen. */
  private static final double SAME = 0.02;

  /** Name and note of one line, broken into rows; the first {@code strong} of them are the name. */
  record Label(int line, List<String> rows, int strong) {
    double height() {
      return rows.size() * ROW + GAP;
    }
  }

  /** Breaks the names so that the column takes no more than this width. */
  static EndLabels of(List<Line> lines, double most) {
    List<Label> labels = new ArrayList<>();
    double width = 0;
    for (int i = 0; i < lines.size(); i++) {
      Line line = lines.get(i);
      if (!line.name().isBlank()) {
        List<String> rows = new ArrayList<>(Lettering.wrap(line.name(), name(i), most - LEAD));
        int strong = rows.size();
        rows.addAll(Lettering.wrap(note(lines, i), Type.LABEL, most - LEAD));
        for (int r = 0; r < rows.size(); r++) {
          Type type = r < strong ? name(i) : Type.LABEL;
          width = Math.max(width, LEAD + type.room(rows.get(r), 0, 0).width());
        }
        labels.add(new Label(i, rows, strong));
      }
    }
    return new EndLabels(labels, width);
  }

  /** The note of a line, and which other line it cannot be told from at its end. */
  static String note(List<Line> lines, int i) {
    String note = lines.get(i).words();
    Estimate end = lines.get(i).last();
    for (Line other : lines.subList(0, i)) {
      double apart = Math.abs(other.last().median() - end.median());
      boolean same =
          apart <= SAME * Math.max(other.last().median(), end.median())
              || (!note.isBlank() && lines.get(i).ended().isEmpty() && other.words().equals(note));
      if (same && other.last().date().equals(end.date()) && !other.name().isBlank()) {
        return (note.isBlank() ? "" : note + "; ") + "same end as " + other.name();
      }
    }
    return note;
  }

  /** Height of all of them above one another. */
  double height() {
    return Arrays.stream(heights()).sum();
  }

  void paint(Canvas canvas, Plot plot, List<Line> lines) {
    double[] wishes = new double[labels.size()];
    for (int k = 0; k < wishes.length; k++) {
      wishes[k] = plot.scale().within(lines.get(labels.get(k).line()).last().median());
    }
    Box box = plot.box();
    double[] middles = LabelColumn.apart(wishes, heights(), box.y() - GAP, box.bottom() + GAP);
    canvas.open("names", "");
    for (int k = 0; k < wishes.length; k++) {
      Label label = labels.get(k);
      Colour colour = Palette.line(label.line());
      double x = plot.days().at(lines.get(label.line()).last().date());
      if (Math.abs(middles[k] - wishes[k]) > 4 || box.right() - x > 6) {
        Trace lead = Trace.of(x + 2, wishes[k], box.right() + LEAD - 4, middles[k]);
        canvas.draw(lead, Pen.solid(colour, 0.9));
      }
      double y = middles[k] - label.rows().size() * ROW / 2 + ROW * 0.78;
      for (int r = 0; r < label.rows().size(); r++) {
        Type type = r < label.strong() ? name(label.line()) : Type.LABEL;
        canvas.write(label.rows().get(r), box.right() + LEAD, y + r * ROW, type);
      }
    }
    canvas.close();
  }

  private double[] heights() {
    return labels.stream().mapToDouble(Label::height).toArray();
  }

  private static Type name(int line) {
    return Type.LABEL.in(Palette.line(line).asText()).heavy();
  }
}
