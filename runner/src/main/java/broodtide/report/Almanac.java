package broodtide.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known of the year beside the quantity drawn: shaded spans, things done, and today.
 *
 * @param spans stretches of the season
 * @param markers things done
 * @param today where the past ends; null for no such line
 */
public record Almanac(List<Span> spans, List<Marker> markers, @Nullable LocalDate today) {
  /** Nothing known. */
  public static final Almanac BLANK = new Almanac(List.of(), List.of(), null);

  public Almanac {
    spans = List.copyOf(spans);
    markers = List.copyOf(markers);
  }

  /** This almanac with a shaded span more. */
  public Almanac with(Span span) {
    List<Span> more = new ArrayList<>(spans);
    more.add(span);
    return new Almanac(more, markers, today);
  }

  /** This almanac with a marker more. */
  public Almanac with(Marker marker) {
    List<Marker> more = new ArrayList<>(markers);
    more.add(marker);
    return new Almanac(spans, more, today);
  }

  /** This almanac with a line where the past ends. */
  public Almanac today(LocalDate day) {
    return new Almanac(spans, markers, day);
  }
}
