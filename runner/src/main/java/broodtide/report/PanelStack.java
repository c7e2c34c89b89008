package broodtide.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Lays out and paints panels above one another that share their days.
 *
 * @param heading stands above
 * @param panels one or more
 * @param almanac drawn through all of them
 * @param size of the whole picture
 */
record PanelStack(Heading heading, List<Panel> panels, Almanac almanac, Size size) {
  /** More lines than this are named in a key. */
  static final int NAMED_AT_ENDS = 6;

  private static final double AXIS_ROW = 22;
  private static final double NOTE_ROW = 19;
  private static final double LEAST_HEIGHT = 60;

  /** The days shown; a single day is given a week. */
  private Days days(double left, double right) {
    LocalDate first = panels.stream().flatMap(Panel::dates).min(LocalDate::compareTo).orElseThrow();
    LocalDate last = panels.stream().flatMap(Panel::dates).max(LocalDate::compareTo).orElseThrow();
    return new Days(first, last.isAfter(first) ? last : last.plusDays(7), left, right);
  }

  void paint(Canvas canvas) {
    double top = heading.paint(canvas, size) + 6;
    List<Reach> reaches = panels.stream().map(Panel::reach).toList();
    List<String> notes = notes(reaches);
    Days days = days(Heading.MARGIN + numbers(reaches), size.width() - Heading.MARGIN - names());
    SpanStrip strip = SpanStrip.of(almanac.spans(), days);
    Flags flags = new Flags(almanac, days, size.width() - 4);
    double foot =
        size.height() - strip.height() - Plot.monthsHeight() - 6 - notes.size() * NOTE_ROW;

    double free = foot - top - flags.height();
    for (Panel panel : panels) {
      free -= above(panel);
    }
    double height = free / panels.size();
    if (height < LEAST_HEIGHT) {
      throw new IllegalArgumentException(
          "a picture "
              + size.height()
              + " high leaves no room for what it shows; make it "
              + Math.round(Math.ceil(LEAST_HEIGHT - height) * panels.size())
              + " higher or show less");
    }
    for (int i = 0; i < panels.size(); i++) {
      double begin = top + above(panels.get(i)) + (i == 0 ? flags.height() : 0);
      Box box = new Box(days.left(), begin, days.right() - days.left(), height);
      Plot plot = new Plot(box, days, reaches.get(i).scale(box.bottom(), box.y()));
      head(canvas, panels.get(i), top);
      field(canvas, panels.get(i), plot, strip, flags, i == 0);
      top = box.bottom();
    }
    strip.paint(canvas, foot);
    Plot.months(canvas, days, foot + strip.height());
    for (int i = 0; i < notes.size(); i++) {
      double y = size.height() - 8 - (notes.size() - 1 - i) * NOTE_ROW;
      canvas.write(notes.get(i), Heading.MARGIN, y, Type.LABEL);
    }
  }

  /** Height of what stands above the field of a panel: the key, if any, and the axis label. */
  private double above(Panel panel) {
    double key = beside(panel) ? 0 : LineKey.of(panel.lines(), size).height();
    boolean lower = panel != panels.get(0);
    return key + AXIS_ROW + (lower ? 14 : 0);
  }

  private void head(Canvas canvas, Panel panel, double top) {
    double y = top + (panel == panels.get(0) ? 0 : 14);
    canvas.write(panel.axis(), Heading.MARGIN, y + 13, Type.LABEL.in(Palette.INK));
    if (!beside(panel)) {
      LineKey.of(panel.lines(), size).paint(canvas, y + AXIS_ROW - 2);
    }
  }

  private void field(
      Canvas canvas, Panel panel, Plot plot, SpanStrip strip, Flags flags, boolean flying) {
    strip.tint(canvas, plot.box());
    plot.frame(canvas);
    plot.bands(canvas, panel.lines());
    flags.poles(canvas, plot.box());
    if (flying) {
      flags.paint(canvas, plot.box().y());
    }
    Limit limit = panel.limit();
    if (limit != null) {
      LimitMark.line(canvas, limit, plot);
    }
    plot.medians(canvas, panel.lines());
    WashMarks.paint(canvas, panel.washes(), plot);
    if (limit != null) {
      LimitMark.name(
          canvas, limit, plot, plot.rooms(panel.lines()), WashMarks.rooms(panel.washes(), plot));
    }
    if (beside(panel)) {
      ends(panel).paint(canvas, plot, panel.lines());
    }
  }

  private boolean beside(Panel panel) {
    double share = 0.55 * size.height() / panels.size();
    return !size.narrow() && panel.lines().size() <= NAMED_AT_ENDS && ends(panel).fit(share);
  }

  private EndLabels ends(Panel panel) {
    return EndLabels.of(panel.lines(), 0.27 * size.width());
  }

  /** Room for names right of the fields. */
  private double names() {
    return panels.stream().filter(this::beside).mapToDouble(p -> ends(p).width()).max().orElse(0);
  }

  /** Room for numbers left of the fields. */
  private double numbers(List<Reach> reaches) {
    double width = 0;
    for (Reach reach : reaches) {
      // The height is not known yet, so the axis with the most steps is taken.
      List<Double> ticks = reach.scale(1, 0).ticks(Plot.MOST_STEPS);
      width = Math.max(width, Plot.numbersWidth(ticks));
    }
    return width;
  }

  private List<String> notes(List<Reach> reaches) {
    String all =
        reaches.stream()
            .map(Reach::notes)
            .filter(n -> !n.isEmpty())
            .collect(Collectors.joining(" "));
    return new ArrayList<>(Lettering.wrap(all, Type.LABEL, size.width() - 2 * Heading.MARGIN));
  }
}
