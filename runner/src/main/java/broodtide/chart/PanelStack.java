package broodtide.chart;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Lays out and paints panels above one another that share their days. */
final class PanelStack {
  /** More lines than this are named in a key. */
  static final int NAMED_AT_ENDS = 7;

  private static final double AXIS_ROW = 22;
  private static final double NOTE_ROW = 19;
  private static final double LOWER_PANEL = 14;
  private static final double LEAST_HEIGHT = 150;
  private static final double FOOT = 6;

  private final Heading heading;
  private final List<Panel> panels;
  private final List<Reach> reaches;
  private final List<String> notes;
  private final Days days;
  private final SpanStrip strip;
  private final Flags flags;
  private final Size size;
  private final double fieldHeight;

  /**
   * @param heading stands above
   * @param panels one or more
   * @param almanac drawn through all of them
   * @param wish size asked for; the picture is made higher when what it shows needs that
   */
  PanelStack(Heading heading, List<Panel> panels, Almanac almanac, Size wish) {
    this.heading = heading;
    this.panels = panels;
    this.reaches = panels.stream().map(Panel::reach).toList();
    String cut = reaches.stream().map(Reach::notes).collect(Collectors.joining(" "));
    double line = wish.width() - 2 * Heading.MARGIN;
    this.notes =
        Stream.of(cut, Picture.CAUTION)
            .flatMap(text -> Lettering.wrap(text, Type.LABEL, line).stream())
            .toList();
    double right = wish.width() - Heading.MARGIN - names(wish);
    this.days = days(Heading.MARGIN + numbers(), right);
    this.strip = SpanStrip.of(almanac.spans(), days);
    this.flags = new Flags(almanac, days, wish.width() - 4);

    double around = heading.height(wish) + FOOT + flags.height() + below();
    double least = LEAST_HEIGHT;
    for (int i = 0; i < panels.size(); i++) {
      around += above(i, wish);
      least = beside(i, wish) ? Math.max(least, ends(i, wish).height()) : least;
    }
    double needed = around + least * panels.size();
    this.size = wish.atLeast(needed);
    this.fieldHeight = (size.height() - around) / panels.size();
  }

  /** The size of the whole picture, at least as high as asked for. */
  Size size() {
    return size;
  }

  void paint(Canvas canvas) {
    double top = heading.paint(canvas, size) + FOOT;
    for (int i = 0; i < panels.size(); i++) {
      double begin = top + above(i, size) + (i == 0 ? flags.height() : 0);
      Box box = new Box(days.left(), begin, days.right() - days.left(), fieldHeight);
      head(canvas, i, top);
      field(canvas, i, new Plot(box, days, reaches.get(i).scale(box.bottom(), box.y())));
      top = box.bottom();
    }
    strip.paint(canvas, top);
    Plot.months(canvas, days, top + strip.height());
    for (int i = 0; i < notes.size(); i++) {
      double y = size.height() - 8 - (notes.size() - 1 - i) * NOTE_ROW;
      canvas.write(notes.get(i), Heading.MARGIN, y, Type.LABEL);
    }
  }

  /** Axis label, key and names at the line ends of panel i. */
  private void head(Canvas canvas, int i, double top) {
    double y = top + (i == 0 ? 0 : LOWER_PANEL);
    canvas.write(panels.get(i).axis(), Heading.MARGIN, y + 13, Type.LABEL.in(Palette.INK));
    if (!beside(i, size)) {
      Legend.of(panels.get(i).lines(), size).paint(canvas, y + AXIS_ROW - 2);
    }
  }

  private void field(Canvas canvas, int i, Plot plot) {
    Panel panel = panels.get(i);
    ThresholdSteps threshold = panel.threshold();
    strip.tint(canvas, plot.box());
    List<Mark> marks = new ArrayList<>(plot.frame(canvas));
    marks.addAll(plot.bands(panel.lines()));
    marks.addAll(flags.poles(plot));
    if (threshold != null) {
      marks.addAll(ThresholdMark.line(threshold, plot));
    }
    marks.addAll(plot.medians(panel.lines()));
    marks.addAll(WashMarks.of(panel.washes(), plot));
    plot.field().paint(canvas, marks);
    plot.ends(canvas, panel.lines());
    if (i == 0) {
      flags.paint(canvas, plot.box().y());
    }
    if (threshold != null) {
      List<Box> washes = WashMarks.rooms(panel.washes(), plot);
      ThresholdMark.name(canvas, threshold, plot, plot.rooms(panel.lines()), washes);
    }
    if (beside(i, size)) {
      ends(i, size).paint(canvas, plot, panel.lines());
    }
  }

  /** Height of what stands above the field of panel i: axis label and key. */
  private double above(int i, Size width) {
    double key = beside(i, width) ? 0 : Legend.of(panels.get(i).lines(), width).height();
    return AXIS_ROW + key + (i == 0 ? 0 : LOWER_PANEL);
  }

  /** Height of what stands below the last field. */
  private double below() {
    return strip.height() + Plot.monthsHeight() + FOOT + notes.size() * NOTE_ROW;
  }

  private boolean beside(int i, Size width) {
    return !width.narrow() && panels.get(i).lines().size() <= NAMED_AT_ENDS;
  }

  private EndLabels ends(int i, Size width) {
    return EndLabels.of(panels.get(i).lines(), 0.27 * width.width());
  }

  /** Room for names right of the fields. */
  private double names(Size wish) {
    double width = 0;
    for (int i = 0; i < panels.size(); i++) {
      width = beside(i, wish) ? Math.max(width, ends(i, wish).width()) : width;
    }
    return width;
  }

  /** Room for numbers left of the fields: the height is not known yet, so for the most steps. */
  private double numbers() {
    double width = 0;
    for (Reach reach : reaches) {
      List<Double> ticks = reach.scale(1, 0).ticks(Plot.MOST_STEPS);
      width = Math.max(width, Plot.numbersWidth(ticks));
    }
    return width;
  }

  /** The days shown; washes stand a little inside the edges. */
  private Days days(double left, double right) {
    LocalDate first = panels.stream().flatMap(Panel::dates).min(LocalDate::compareTo).orElseThrow();
    LocalDate last = panels.stream().flatMap(Panel::dates).max(LocalDate::compareTo).orElseThrow();
    long pad = 3 + ChronoUnit.DAYS.between(first, last) / 40;
    for (Panel panel : panels) {
      for (WashPoint w : panel.washes()) {
        first = w.date().minusDays(pad).isBefore(first) ? w.date().minusDays(pad) : first;
        last = w.date().plusDays(pad).isAfter(last) ? w.date().plusDays(pad) : last;
      }
    }
    return new Days(first, last.isAfter(first) ? last : last.plusDays(7), left, right);
  }
}
