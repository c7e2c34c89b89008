package broodtide.report;

import broodtide.assessment.BoardReading;
import broodtide.assessment.ColonyCase;
import broodtide.chart.Range;
import broodtide.chart.WashPoint;
import broodtide.wash.BoardCount;
import broodtide.wash.Infestation;
import broodtide.wash.Interval;
import broodtide.wash.RatePosterior;
import broodtide.wash.Wash;
import broodtide.words.BoardWords;
import broodtide.words.Digits;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;

/** Counts as points with their 90 % intervals, in mites per 100 adult bees of the colony. */
final class WashPoints {
  private WashPoints() {}

  static List<WashPoint> of(List<Wash> washes) {
    return washes.stream().map(WashPoints::point).toList();
  }

  /** Washes and boards of a colony, each read by itself. */
  static List<WashPoint> of(ColonyCase c) {
    return Stream.concat(
            of(c.washes()).stream(),
            c.boards().stream().map(b -> point(BoardReading.of(b, c.model()))))
        .toList();
  }

  private static WashPoint point(BoardReading reading) {
    BoardCount board = reading.board();
    return point(
        board.date(),
        reading.infestation(),
        "Board: " + BoardWords.perDay(board) + ", taken out on " + board.date(),
        WashPoint.Kind.BOARD);
  }

  private static WashPoint point(
      LocalDate date, RatePosterior belief, String note, WashPoint.Kind kind) {
    Interval band = belief.interval(0.9);
    double value = Math.max(band.low(), Math.min(band.high(), belief.median()));
    return new WashPoint(date, value, new Range(band.low(), band.high()), note, kind);
  }

  private static WashPoint point(Wash w) {
    return point(
        w.date(),
        Infestation.of(w).inColony(),
        Digits.counted(w.mites(), "mite")
            + " in "
            + Digits.counted(Math.round(w.beesOrAssumed()), "bee")
            + " on "
            + w.date(),
        WashPoint.Kind.WASH);
  }
}
