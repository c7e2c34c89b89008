package broodtide.chart;

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

  /**
   * {@return this almanac with a shaded span more}
   *
   * @param span a stretch of days, drawn below those before it
   */
  public Almanac with(Span span) {
    List<Span> more = new ArrayList<>(spans);
    more.add(span);
    return new Almanac(more, markers, today);
  }

  /**
   * {@return this almanac with a marker more}
   *
   * @param marker a day to be marked
   */
  public Almanac with(Marker marker) {
    List<Marker> more = new ArrayList<>(markers);
    more.add(marker);
    return new Almanac(spans, more, today);
  }

  /**
   * {@return this almanac with a line where the past ends}
   *
   * @param day the day of decision
   */
  public Almanac today(LocalDate day) {
    return new Almanac(spans, markers, day);
  }
}
