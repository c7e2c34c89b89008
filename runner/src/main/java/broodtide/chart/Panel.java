package broodtide.chart;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * One quantity over the days: lines with bands, washes, a threshold.
 *
 * @param axis what the upright axis shows, with its unit
 * @param log whether that axis is logarithmic
 * @param lines named lines, the one asked about first; give bands to three at most, or they cover
 *     one another
 * @param washes washes taken
 * @param threshold the threshold; null for none
 */
public record Panel(
    String axis,
    boolean log,
    List<Line> lines,
    List<WashPoint> washes,
    @Nullable ThresholdSteps threshold) {
  public Panel {
    lines = List.copyOf(lines);
    washes = List.copyOf(washes);
    if (lines.isEmpty() && washes.isEmpty()) {
      throw new IllegalArgumentException(
          "panel '" + axis + "' has nothing to draw; give it a line or a wash");
    }
  }

  /**
   * {@return lines alone, on a linear axis}
   *
   * @param axis what is drawn, with its unit
   * @param lines the lines, the main one first
   */
  public static Panel of(String axis, List<Line> lines) {
    return new Panel(axis, false, lines, List.of(), null);
  }

  /** All days that something is drawn for. */
  Stream<LocalDate> dates() {
    return Stream.concat(
        lines.stream().flatMap(l -> l.estimates().stream()).map(Estimate::date),
        washes.stream().map(WashPoint::date));
  }

  /** How far the axis reaches. */
  Reach reach() {
    return Reach.of(lines, washes, threshold, log);
  }

  /** Axis, days and where the lines end, in words. */
  String words() {
    StringBuilder s = new StringBuilder(axis).append('.');
    for (Line line : lines) {
      Estimate end = line.last();
      Range outer = end.outer();
      s.append(' ').append(begun(line.name())).append(": ").append(Numerals.two(end.median()));
      if (outer != null) {
        s.append(" (").append(Numerals.range(outer.low(), outer.high())).append(')');
      }
      s.append(" on ").append(end.date());
      s.append(line.ended().isEmpty() ? "." : ", where the line ends: " + line.ended() + ".");
    }
    return s.toString();
  }

  /** A name as a sentence begins. */
  private static String begun(String name) {
    return name.isEmpty() ? "" : Character.toUpperCase(name.charAt(0)) + name.substring(1);
  }
}
