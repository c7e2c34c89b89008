package broodtide.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * How fast mites grow: washes on an axis of ratios, the fitted line with its band, the forecast,
 * and the doubling time written on the line. Several hives stand side by side on the same axes.
 */
public final class GrowthPicture {
  /**
   * A stretch between treatments.
   *
   * @param days fitted values with their 90 % bands, two days or more
   * @param ahead the same, continued beyond the last wash; empty for none
   * @param said the doubling time in words, written on the line
   */
  public record Segment(List<Estimate> days, List<Estimate> ahead, String said) {
    /** Copies the lists. */
    public Segment {
      days = List.copyOf(days);
      ahead = List.copyOf(ahead);
      if (days.size() < 2) {
        throw new IllegalArgumentException("a segment needs two days or more; give both its ends");
      }
    }
  }

  /**
   * One hive.
   *
   * @param name its name
   * @param washes its washes
   * @param segments fitted stretches in order
   * @param treatments days of treatment
   */
  public record Hive(
      String name, List<WashPoint> washes, List<Segment> segments, List<Marker> treatments) {
    /** Copies the lists. */
    public Hive {
      washes = List.copyOf(washes);
      segments = List.copyOf(segments);
      treatments = List.copyOf(treatments);
    }

    private Stream<Estimate> estimates() {
      return segments.stream().flatMap(s -> Stream.concat(s.days().stream(), s.ahead().stream()));
    }

    private Stream<LocalDate> dates() {
      return Stream.concat(washes.stream().map(WashPoint::date), estimates().map(Estimate::date));
    }
  }

  private GrowthPicture() {}

  /**
   * {@return the picture}
   *
   * @param heading what stands above
   * @param axis what is drawn, with its unit
   * @param hives one hive or more, each with a wash or a segment
   */
  public static Figure of(Heading heading, String axis, List<Hive> hives) {
    Figure.some(heading, hives.stream().flatMap(Hive::dates).toList());
    LocalDate first =
        hives.stream().flatMap(Hive::dates).min(LocalDate::compareTo).orElseThrow().minusDays(4);
    LocalDate last =
        hives.stream().flatMap(Hive::dates).max(LocalDate::compareTo).orElseThrow().plusDays(4);
    List<WashPoint> washes = hives.stream().flatMap(h -> h.washes().stream()).toList();
    List<Line> lines =
        hives.stream()
            .filter(h -> h.estimates().findAny().isPresent())
            .flatMap(h -> h.segments().stream())
            .map(s -> new Line("", "", s.days()))
            .toList();
    Reach reach = Reach.of(lines, washes, null, true);
    Axis y = Axis.ratios(axis, reach.low(), reach.high());
    Axis x = Axis.days(first, last);
    List<Facet> facets = new ArrayList<>();
    for (Hive hive : hives) {
      facets.add(facet(hive, hives.size() > 1 ? hive.name() : "", x, y, first));
    }
    String said =
        Figure.list(
            hives.stream()
                .map(
                    h ->
                        h.name()
                            + ": "
                            + Figure.list(h.segments().stream().map(Segment::said).toList()))
                .toList());
    return Figure.of(heading, facets, 2, key(hives), axis + ". " + said + ".");
  }

  private static Facet facet(Hive hive, String title, Axis x, Axis y, LocalDate first) {
    List<Mark> marks = new ArrayList<>();
    List<Facet.Words> words = new ArrayList<>();
    Scale inside = y.scale(0, 1);
    for (Marker m : hive.treatments()) {
      double at = day(m.date(), first);
      marks.add(Mark.line(at, y.low(), at, y.high(), new Pen(Palette.INK, 1, "1 3")));
      words.add(Facet.Words.at(at, y.high(), m.label()));
    }
    for (Segment s : hive.segments()) {
      marks.addAll(Estimates.banded(s.days(), first, Palette.line(0), ""));
      if (s.ahead().size() > 1) {
        marks.addAll(Estimates.banded(s.ahead(), first, Palette.line(1), Palette.dash(1)));
      }
      Estimate middle = s.days().get(s.days().size() / 2);
      words.add(
          Facet.Words.at(day(middle.date(), first), middle.median(), s.said(), Palette.line(0)));
    }
    for (WashPoint w : hive.washes()) {
      Mark.Group group = new Mark.Group("wash", w.note());
      double low = inside.inside(w.interval().low());
      double high = inside.inside(w.interval().high());
      double value = inside.inside(w.value());
      marks.addAll(Mark.upright(day(w.date(), first), value, low, high, Palette.INK, group));
    }
    return Facet.of(title, x, y, marks, words.toArray(new Facet.Words[0]));
  }

  private static List<Legend.Sample> key(List<Hive> hives) {
    List<Legend.Sample> key = new ArrayList<>();
    key.add(Legend.Sample.dot(Palette.INK, "wash, 90 % interval"));
    key.add(Legend.Sample.line(Pen.solid(Palette.line(0), 2.5), "fitted, with 90 % band"));
    if (hives.stream().flatMap(h -> h.segments().stream()).anyMatch(s -> s.ahead().size() > 1)) {
      key.add(Legend.Sample.line(new Pen(Palette.line(1), 2.5, Palette.dash(1)), "forecast"));
    }
    return key;
  }

  private static double day(LocalDate date, LocalDate first) {
    return (double) date.toEpochDay() - first.toEpochDay();
  }
}
