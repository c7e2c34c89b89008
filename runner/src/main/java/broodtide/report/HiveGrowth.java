package broodtide.report;

import broodtide.chart.Estimate;
import broodtide.chart.Figure;
import broodtide.chart.GrowthPicture;
import broodtide.chart.Heading;
import broodtide.chart.Marker;
import broodtide.chart.Range;
import broodtide.fit.Growth;
import broodtide.fit.GrowthFit;
import broodtide.fit.GrowthPoint;
import broodtide.wash.Interval;
import broodtide.wash.Wash;
import broodtide.words.Digits;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/**
 * How fast the mites of one hive or of several grow, as a picture.
 *
 * @param name the hive
 * @param washes its washes, at least one
 * @param fit their growth
 * @param treated days on which treatments began
 */
public record HiveGrowth(String name, List<Wash> washes, GrowthFit fit, List<LocalDate> treated) {
  /** Most hives in one picture, so that each can be read; choice. */
  private static final int MOST = 12;

  /** Days that the line goes on when no day is asked for; choice. */
  private static final int AHEAD = 30;

  /** Copies the lists. */
  public HiveGrowth {
    washes = List.copyOf(washes);
    treated = List.copyOf(treated);
  }

  /**
   * {@return the picture of all hives, on the same axes}
   *
   * @param hives one or more
   * @param until day to which lines go on; the day of the last wash or earlier for 30 days
   */
  public static Figure picture(List<HiveGrowth> hives, LocalDate until) {
    List<HiveGrowth> shown =
        hives.size() <= MOST
            ? hives
            : hives.stream()
                .sorted(Comparator.comparingDouble(HiveGrowth::rate).reversed())
                .limit(MOST)
                .toList();
    return GrowthPicture.of(
        new Heading(title(hives), subtitle(hives, shown.size())),
        "mites per 100 adult bees",
        shown.stream().map(h -> h.drawn(until, shown.size() == 1)).toList());
  }

  private static String title(List<HiveGrowth> hives) {
    long tell = hives.stream().filter(h -> h.fit.differsFromZero()).count();
    if (hives.size() > 1) {
      long grow = hives.stream().filter(h -> h.grows()).count();
      String all = " of " + hives.size() + " hives";
      return (grow == tell
              ? "Mites grow in " + grow + all
              : "Mites grow in " + grow + " and fall in " + (tell - grow) + all)
          + (tell < hives.size() ? "; the other washes cannot tell yet" : "");
    }
    Growth g = hives.get(0).fit.growth();
    if (g.differsFromZero() && g.doublingDays().isPresent()) {
      return "Mites double in about " + Digits.two(g.doublingDays().getAsDouble()) + " days";
    }
    if (g.differsFromZero() && g.halvingDays().isPresent()) {
      return "Mites halve in about " + Digits.two(g.halvingDays().getAsDouble()) + " days";
    }
    return g.differsFromZero()
        ? "The washes tell that mites change, not how fast"
        : "These washes cannot show yet whether the mites are increasing";
  }

  private static String subtitle(List<HiveGrowth> hives, int shown) {
    String whose =
        hives.size() == 1
            ? "Colony " + hives.get(0).name + ". "
            : shown < hives.size()
                ? "The " + shown + " of " + hives.size() + " hives with the fastest growth. "
                : "";
    return whose
        + "Equal steps up are equal factors. The line takes growth as steady; a treatment parts"
        + " it.";
  }

  private boolean grows() {
    return fit.growth().perDayInterval().low() > 0;
  }

  private double rate() {
    return fit.growth().perDay().orElse(Double.NEGATIVE_INFINITY);
  }

  private GrowthPicture.Hive drawn(LocalDate until, boolean alone) {
    LocalDate last = washes.stream().map(Wash::date).max(LocalDate::compareTo).orElseThrow();
    List<List<GrowthPoint>> lines = fit.line();
    List<GrowthPoint> ahead = fit.lineAhead(until.isAfter(last) ? until : last.plusDays(AHEAD));
    List<GrowthPicture.Segment> segments = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      if (lines.get(i).size() > 1) {
        boolean end = i == lines.size() - 1;
        segments.add(
            new GrowthPicture.Segment(
                estimates(lines.get(i)), end ? estimates(ahead) : List.of(), said(alone)));
      }
    }
    return new GrowthPicture.Hive(
        name,
        WashPoints.of(washes),
        segments,
        treated.stream().map(d -> new Marker("treated", d)).toList(),
        segments.isEmpty() ? unfitted() : "");
  }

  private static List<Estimate> estimates(List<GrowthPoint> points) {
    boolean bounded =
        points.stream()
            .map(GrowthPoint::interval)
            .allMatch(i -> Double.isFinite(i.low()) && Double.isFinite(i.high()));
    return points.stream()
        .map(
            p -> {
              Range most = bounded ? new Range(p.interval().low(), p.interval().high()) : null;
              return new Estimate(p.date(), p.perHundred(), null, most);
            })
        .toList();
  }

  private String unfitted() {
    return !fit.differsFromZero()
        ? "cannot tell yet"
        : grows() ? "grows, how fast is open" : "falls, how fast is open";
  }

  /** The doubling time as it stands on the line, with its interval where there is room for it. */
  private String said(boolean interval) {
    Growth g = fit.growth();
    if (!g.differsFromZero()) {
      return "cannot be told from no growth";
    }
    Interval rates = g.perDayInterval();
    return g.doublingDays().isPresent()
        ? "doubles in " + times(g.doublingDays(), rates.low(), rates.high(), interval)
        : "halves in " + times(g.halvingDays(), -rates.high(), -rates.low(), interval);
  }

  private static String times(OptionalDouble days, double slow, double fast, boolean interval) {
    String range = Digits.range(Math.log(2) / fast, Math.log(2) / slow);
    return Digits.two(days.orElseThrow()) + " days" + (interval ? " (" + range + ")" : "");
  }
}
