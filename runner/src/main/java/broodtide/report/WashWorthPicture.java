package broodtide.report;

import broodtide.assessment.Outcome;
import broodtide.chart.Figure;
import broodtide.chart.Heading;
import broodtide.chart.Range;
import broodtide.chart.WorthPicture;
import broodtide.decision.WashWorth;
import broodtide.words.OutcomeWords;
import broodtide.words.Plain;
import java.util.Comparator;
import java.util.List;

/** What another wash is worth, by its date. */
public final class WashWorthPicture {
  private WashWorthPicture() {}

  /**
   * {@return the picture}
   *
   * @param best the wash whose counts are looked at
   * @param all washes of one colony, at least one
   */
  public static Figure of(WashWorth best, List<WashWorth> all) {
    Outcome o = best.outcome();
    String title =
        best.gain() * o.shownTimes() < 0.05
            ? "Washing again before deciding gains nothing"
            : "A wash on "
                + Plain.day(best.washDay())
                + " gains "
                + OutcomeWords.amount(o, best.gain());
    return WorthPicture.of(
        new Heading(
            title,
            "Colony "
                + best.colony().colony()
                + ". Gain in "
                + o.title()
                + ". Bars run from what putting off the decision does by itself to what knowing all"
                + " would gain. Counts: in "
                + best.bees()
                + " bees on "
                + Plain.day(best.washDay())
                + "."),
        o.shownTimes() == 100 ? "gain, %" : "gain, mites per 100 bees",
        all.stream()
            .sorted(Comparator.comparing(WashWorth::washDay))
            .map(WashWorthPicture::gain)
            .toList(),
        best.decisions().stream()
            .map(d -> new WorthPicture.Decision(d.from(), d.to(), d.plan().name()))
            .toList());
  }

  private static WorthPicture.Gain gain(WashWorth w) {
    double times = w.outcome().shownTimes();
    double alone = -w.delay() * times;
    double knowing = (w.today() - w.knowing()) * times;
    return new WorthPicture.Gain(
        w.washDay(),
        w.gain() * times,
        new Range(Math.min(alone, knowing), Math.max(alone, knowing)));
  }
}
