package broodtide.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
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

    private long length() {
      return days.get(days.size() - 1).date().toEpochDay() - days.get(0).date().toEpochDay();
    }
  }

  /**
   * One hive.
   *
   * @param name its name
   * @param washes its washes
   * @param segments fitted stretches in order
   * @param treatments days of treatment
   * @param note what is said where there is no line; may be empty
   */
  public record Hive(
      String name,
      List<WashPoint> washes,
      List<Segment> segments,
      List<Marker> treatments,
      String note) {
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
            .flatMap(s -> Stream.of(s.days(), s.ahead()))
            .filter(d -> !d.isEmpty())
            .map(d -> new Line("", "", d))
            .toList();
    Axis y = Reach.ratios(axis, lines, washes);
    Axis x = Axis.days(first, last);
    List<Facet> facets = new ArrayList<>();
    for (Hive hive : hives) {
      Axis named = facets.isEmpty() ? y : y.unnamed();
      facets.add(facet(hive, hives.size() > 1 ? hive.name() : "", x, named, first));
    }
    String said =
        Figure.sentences(
            hives.stream()
                .map(
                    h ->
                        h.name()
                            + ": "
                            + (h.segments().isEmpty()
                                ? h.note()
                                : Figure.list(h.segments().stream().map(Segment::said).toList()))));
    return Figure.of(heading, facets, 2, key(hives), axis + ". " + said);
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
    }
    // One rate holds for all stretches, so it is written once, on the longest.
    hive.segments().stream()
        .max(Comparator.comparingLong(Segment::length))
        .ifPresent(
            s -> {
              Estimate middle = s.days().get(s.days().size() / 3);
              double at = day(middle.date(), first);
              words.add(Facet.Words.at(at, middle.median(), s.said(), Palette.line(0)));
            });
    if (hive.segments().isEmpty() && !hive.note().isEmpty()) {
      words.add(Facet.Words.at(0, y.high(), hive.note()));
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
      key.add(
          Legend.Sample.line(
              new Pen(Palette.line(1), 2.5, Palette.dash(1)), "if it goes on like this"));
    }
    return key;
  }

  private static double day(LocalDate date, LocalDate first) {
    return (double) date.toEpochDay() - first.toEpochDay();
  }
}
