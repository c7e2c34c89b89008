package broodtide.report;

import broodtide.chart.Range;
import broodtide.chart.WashPoint;
import broodtide.wash.Infestation;
import broodtide.wash.Interval;
import broodtide.wash.RatePosterior;
import broodtide.wash.Wash;
import broodtide.words.Digits;
import java.util.List;

/** Washes as dots with their 90 % intervals, in mites per 100 adult bees of the colony. */
final class WashPoints {
  private WashPoints() {}

  static List<WashPoint> of(List<Wash> washes) {
    return washes.stream().map(WashPoints::point).toList();
  }

  private static WashPoint point(Wash w) {
    RatePosterior belief = Infestation.of(w).inColony();
    Interval band = belief.interval(0.9);
    double value = Math.max(band.low(), Math.min(band.high(), belief.median()));
    return new WashPoint(
        w.date(),
        value,
        new Range(band.low(), band.high()),
        Digits.counted(w.mites(), "mite")
            + " in "
            + Digits.counted(Math.round(w.beesOrAssumed()), "bee")
            + " on "
            + w.date());
  }
}
