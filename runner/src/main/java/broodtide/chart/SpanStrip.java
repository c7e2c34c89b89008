package broodtide.chart;

import java.util.List;

/**
 * The bee calendar below a plot: a bar for each span, with its label, and a tint in the plot above.
 *
 * @param spans what is shown
 * @param days the foot of the plot
 */
record SpanStrip(List<Span> spans, Days days) {
  private static final double ROW = 22;
  private static final double BAR = 5;

  /** Only the spans that touch the days shown. */
  static SpanStrip of(List<Span> spans, Days days) {
    return new SpanStrip(
        spans.stream()
            .filter(s -> !s.to().isBefore(days.first()) && s.from().isBefore(days.last()))
            .toList(),
        days);
  }

  double height() {
    return spans.isEmpty() ? 0 : LabelRows.count(lanes()) * ROW + 3;
  }

  /** Tints the field of a plot. */
  void tint(Canvas canvas, Box plot) {
    canvas.open("spans", "");
    for (int i = 0; i < spans.size(); i++) {
      Box b = new Box(left(i), plot.y(), right(i) - left(i), plot.height());
      canvas.fill(Trace.around(b), Palette.span(i), 0.62);
    }
    canvas.close();
  }

  /** Paints bars and labels from y downwards. */
  void paint(Canvas canvas, double y) {
    int[] lanes = lanes();
    canvas.open("calendar", "");
    for (int i = 0; i < spans.size(); i++) {
      double top = y + 2 + lanes[i] * ROW;
      Box bar = new Box(left(i), top, right(i) - left(i), BAR);
      canvas.fill(Trace.around(bar), Palette.span(i).towards(Palette.INK, 0.25), 1);
      canvas.write(spans.get(i).label(), textLeft(i), top + BAR + 12, Type.LABEL.in(Palette.INK));
    }
    canvas.close();
  }

  private int[] lanes() {
    double[] from = new double[spans.size()];
    double[] to = new double[spans.size()];
    for (int i = 0; i < from.length; i++) {
      from[i] = Math.min(left(i), textLeft(i));
      to[i] = Math.max(right(i), textLeft(i) + width(i));
    }
    return LabelRows.of(from, to, 6);
  }

  private double left(int i) {
    return Math.max(days.left(), days.at(spans.get(i).from()));
  }

  /** A span holds its last day, so it ends where the next day begins. */
  private double right(int i) {
    return Math.min(days.right(), days.at(spans.get(i).to().plusDays(1)));
  }

  private double width(int i) {
    return Type.LABEL.room(spans.get(i).label(), 0, 0).width();
  }

  private double textLeft(int i) {
    return Math.max(days.left(), Math.min(left(i), days.right() - width(i)));
  }
}
