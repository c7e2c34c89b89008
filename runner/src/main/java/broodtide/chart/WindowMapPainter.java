package broodtide.chart;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Paints the field of a {@link WindowMap} and the words below it. */
final class WindowMapPainter {
  private static final Type LABEL = Type.LABEL.in(Palette.INK);
  private static final Type CENTRED = LABEL.at(Type.Anchor.MIDDLE);
  private static final double GAP = 1.5;
  private static final double DATES = 44;
  private static final double TOP = 12;
  private static final double FOOT = 8;
  private static final double LEAST_ROW = 40;
  private static final double MOST_ROW = 54;

  private final WindowMap map;
  private final Outcomes outcomes;

  WindowMapPainter(WindowMap map) {
    this.map = map;
    this.outcomes = Outcomes.of(map);
  }

  String bestInWords() {
    Outcomes.Place best = outcomes.best();
    if (best == null) {
      return "No control can begin on any of these days.";
    }
    String name = map.rows().get(best.row()).name();
    String start = day(map.starts().get(best.column()));
    return (map.lowerIsBetter() ? "Lowest" : "Highest")
        + " in the model: "
        + name
        + " from "
        + start
        + " ("
        + Numerals.two(best.value())
        + ").";
  }

  /** As high as asked for, or as the rows need. */
  Size size() {
    double needed = map.heading().height(map.size()) + TOP + DATES + key().height() + FOOT;
    return map.size().atLeast(needed + LEAST_ROW * map.rows().size());
  }

  /** Where a cell is painted. */
  Box box(int row, int column) {
    double top = map.heading().height(map.size()) + TOP;
    double width = columnWidth();
    double free = size().height() - top - DATES - key().height() - FOOT;
    double height = Math.min(MOST_ROW, free / map.rows().size());
    return new Box(left() + column * width, top + row * height, width - GAP, height - GAP);
  }

  void paint(Canvas canvas) {
    double top = map.heading().paint(canvas, map.size()) + TOP;
    double left = left();
    double width = columnWidth();
    WindowMapKey key = key();
    double free = size().height() - top - DATES - key.height() - FOOT;
    double height = Math.min(MOST_ROW, free / map.rows().size());
    for (int r = 0; r < map.rows().size(); r++) {
      name(canvas, map.rows().get(r), left - 10, top + (r + 0.5) * height);
    }
    PlotArea.cells(
        canvas,
        values(),
        outcomes.low(),
        outcomes.high(),
        (on, c, r, ground) -> {
          Box box = new Box(left + c * width, top + r * height, width - GAP, height - GAP);
          cell(on, r, c, box, ground);
        });
    for (Mask mask : Mask.all(map, width)) {
      double x = left + mask.from() * width;
      double y = top + mask.row() * height;
      mask.paint(canvas, new Box(x, y, mask.count() * width - GAP, height - GAP));
    }
    outline(canvas, left, top, width, height);
    double below = top + map.rows().size() * height;
    dates(canvas, left, width, below);
    key.paint(canvas, below + DATES);
  }

  private WindowMapKey key() {
    List<Mask> masks = Mask.all(map, columnWidth());
    return new WindowMapKey(map, outcomes, masks, words());
  }

  private double left() {
    return Heading.MARGIN + names();
  }

  private double columnWidth() {
    return (map.size().width() - Heading.MARGIN - left()) / map.starts().size();
  }

  /** Room for the names of the controls. */
  private double names() {
    double widest = 0;
    for (WindowMap.Row row : map.rows()) {
      for (String line : wrapped(row)) {
        widest = Math.max(widest, LABEL.room(line, 0, 0).width());
      }
    }
    return widest + 10;
  }

  private List<String> wrapped(WindowMap.Row row) {
    return Lettering.wrap(row.name(), LABEL, 0.27 * map.size().width());
  }

  private void name(Canvas canvas, WindowMap.Row row, double right, double middle) {
    List<String> name = wrapped(row);
    for (int i = 0; i < name.size(); i++) {
      double y = middle + 4.7 + (i - (name.size() - 1) / 2.0) * 16;
      canvas.write(name.get(i), right, y, LABEL.at(Type.Anchor.END));
    }
  }

  /** Outcomes row by row; not a number where a control cannot begin. */
  private double[][] values() {
    return map.rows().stream()
        .map(
            row ->
                row.cells().stream()
                    .mapToDouble(c -> c instanceof WindowMap.Outcome o ? o.value() : Double.NaN)
                    .toArray())
        .toArray(double[][]::new);
  }

  private void cell(Canvas canvas, int r, int c, Box b, Colour ground) {
    WindowMap.Row row = map.rows().get(r);
    WindowMap.Outcome o = (WindowMap.Outcome) row.cells().get(c);
    double value = o.value();
    String label = o.labelDecides() ? "; " + WindowMapKey.LABEL_DECIDES : "";
    String start = day(map.starts().get(c));
    canvas.open("cell", row.name() + " from " + start + ": " + Numerals.two(value) + label);
    canvas.fill(Trace.around(b), ground, 1);
    Colour ink = Palette.over(ground);
    Outcomes.Place best = outcomes.best();
    boolean isBest = best != null && value == best.value();
    String text = outcomes.text(value);
    double x = b.x() + b.width() / 2;
    double middle = b.y() + b.height() / 2;
    Type bold = CENTRED.in(ink).heavy();
    boolean boldFits = bold.room(text, 0, 0).width() <= b.width() - 2;
    Type type = isBest && boldFits ? bold : CENTRED.in(ink);
    boolean fits = type.room(text, 0, 0).width() <= b.width() - 1;
    if (fits) {
      canvas.write(text, x, middle + 4.7, type);
    }
    if (!isBest && o.tied() && (b.height() > 28 || !fits)) {
      canvas.disc(x, fits ? b.bottom() - 7 : middle, 2, ink, Pen.solid(ink, 0.5));
    }
    if (o.labelDecides()) {
      WindowMapKey.line(canvas, b, ink);
    }
    canvas.close();
  }

  private void outline(Canvas canvas, double left, double top, double width, double height) {
    Outcomes.@Nullable Place best = outcomes.best();
    if (best == null) {
      return;
    }
    double x = left + best.column() * width - GAP / 2;
    Trace edge = Trace.around(new Box(x, top + best.row() * height - GAP / 2, width, height));
    canvas.open("outline", "");
    canvas.draw(edge, Pen.solid(Palette.PAPER, 6));
    canvas.draw(edge, Pen.solid(Palette.INK, 2.8));
    canvas.close();
  }

  /** Days of the month below the columns they belong to, and months where they begin. */
  private void dates(Canvas canvas, double left, double width, double y) {
    canvas.open("starts", "");
    int every = (int) Math.ceil(24 / width);
    LocalDate before = null;
    double clear = 0;
    for (int c = 0; c < map.starts().size(); c++) {
      LocalDate d = map.starts().get(c);
      double x = left + c * width;
      if (c % every == 0) {
        canvas.write(Integer.toString(d.getDayOfMonth()), x + width / 2, y + 15, CENTRED);
      }
      boolean newYear = before == null || d.getYear() != before.getYear();
      boolean newMonth = newYear || (before != null && d.getMonth() != before.getMonth());
      String name = format(newYear ? "MMM uuuu" : "MMM", d);
      double room = LABEL.heavy().room(name, 0, 0).width();
      // At the right edge a name moves left rather than being cut.
      double at = Math.min(x + 2, map.size().width() - Heading.MARGIN - room);
      if (newMonth && at >= clear) {
        canvas.write(name, at, y + 33, LABEL.heavy());
        clear = at + room + 8;
      }
      before = d;
    }
    canvas.close();
  }

  private List<String> words() {
    String near = map.tied() ? " Dots: tied with it; choose by label, weather and effort." : "";
    String outlined = outcomes.best() == null ? "" : " Outlined above.";
    return Lettering.wrap(
        bestInWords() + outlined + near, LABEL, map.size().width() - 2 * Heading.MARGIN);
  }

  private static String day(LocalDate d) {
    return format("d MMM", d);
  }

  private static String format(String pattern, LocalDate d) {
    return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH).format(d);
  }
}
