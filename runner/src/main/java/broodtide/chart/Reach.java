package broodtide.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * How far an upright axis reaches, and what has to be said about values beyond it.
 *
 * @param low value at the foot
 * @param high value at the top
 * @param log whether the axis is logarithmic
 * @param notes a sentence for the foot of the picture; empty when everything is inside
 */
record Reach(double low, double high, boolean log, String notes) {
  /** Wide bands may stretch the axis by this factor. */
  private static final double STRETCH = 2.2;

  /** Bands wider than that are cut here, lest all else lie flat. */
  private static final double CUT = 1.7;

  /** How far below the lowest value an axis reaches for intervals at most; choice. */
  private static final double DEEPER = 3;

  /** A logarithmic axis shows no more than this ratio. */
  private static final double RATIO = 1e4;

  static Reach of(
      List<Line> lines, List<WashPoint> washes, @Nullable ThresholdSteps threshold, boolean log) {
    List<Double> core = new ArrayList<>();
    List<Double> tails = new ArrayList<>();
    List<Double> lows = new ArrayList<>();
    for (Line line : lines) {
      for (Estimate e : line.estimates()) {
        core.add(e.median());
        Range inner = e.inner();
        if (inner != null) {
          core.add(inner.high());
        }
        Range outer = e.outer();
        if (outer != null) {
          tails.add(outer.high());
          lows.add(outer.low());
        }
      }
    }
    for (WashPoint w : washes) {
      core.add(w.value());
      tails.add(w.interval().high());
      lows.add(w.interval().low());
    }
    if (threshold != null) {
      threshold.levels().forEach(level -> core.add(level.value()));
    }
    double needed = greatest(core);
    double wanted = Math.max(needed, greatest(tails));
    double shown = wanted <= STRETCH * needed ? wanted : CUT * needed;
    return log ? logarithmic(core, lows, wanted) : linear(least(core), shown, wanted);
  }

  private static Reach linear(double least, double shown, double wanted) {
    double top = shown > 0 ? shown * 1.04 : 1;
    double foot = Math.min(0, least);
    String notes = "";
    if (wanted > shown) {
      notes = "Cut at the top: the widest band or bar reaches " + Numerals.two(wanted) + ".";
    }
    return new Reach(foot, top, false, notes);
  }

  private static Reach logarithmic(List<Double> core, List<Double> lows, double wanted) {
    double top = wanted > 0 ? wanted * 1.15 : 1;
    double least = core.stream().filter(v -> v > 0).min(Double::compare).orElse(top / 10);
    double low = Math.max(top / RATIO, Math.min(least / 1.15, top / 10));
    boolean cut = Stream.concat(core.stream(), lows.stream()).anyMatch(v -> v < low);
    String notes = cut ? "Values below " + Numerals.two(low) + " are drawn at the bottom." : "";
    return new Reach(low, top, true, notes);
  }

  /**
   * An axis of ratios on which the intervals end inside, as long as that does not squeeze the rest.
   */
  static Axis ratios(String label, List<Line> lines, List<WashPoint> washes) {
    Reach reach = of(lines, washes, null, true);
    double least =
        Stream.concat(
                washes.stream().map(WashPoint::interval),
                lines.stream().flatMap(l -> l.estimates().stream()).flatMap(Reach::outer))
            .map(Range::low)
            .filter(v -> v > 0)
            .min(Double::compare)
            .orElse(reach.low());
    double low = Math.max(least / 1.1, reach.low() / DEEPER);
    return Axis.ratios(label, Math.min(low, reach.low()), reach.high());
  }

  private static Stream<Range> outer(Estimate e) {
    return Stream.ofNullable(e.outer());
  }

  Scale scale(double foot, double top) {
    return new Scale(low, high, log, foot, top);
  }

  private static double greatest(List<Double> values) {
    return values.stream().max(Double::compare).orElse(0.0);
  }

  private static double least(List<Double> values) {
    return values.stream().min(Double::compare).orElse(0.0);
  }
}
