package broodtide.report;

import broodtide.assessment.SeasonShares;
import broodtide.chart.Figure;
import broodtide.chart.Heading;
import broodtide.chart.SeasonInside;
import broodtide.words.Digits;
import broodtide.words.Plain;
import java.util.List;
import java.util.stream.IntStream;

/** A season seen from inside the hive. */
public final class InsidePicture {
  private InsidePicture() {}

  /**
   * {@return the picture}
   *
   * @param season two days or more
   * @param whose what is shown, a sentence
   */
  public static Figure of(SeasonShares season, String whose) {
    double[] inBrood =
        IntStream.range(0, season.adults().length)
            .mapToDouble(i -> season.inWorkerCells()[i] + season.inDroneCells()[i])
            .toArray();
    int most =
        IntStream.range(0, inBrood.length).reduce(0, (a, b) -> inBrood[b] > inBrood[a] ? b : a);
    return SeasonInside.of(
        new Heading(
            "Up to "
                + Digits.percent(inBrood[most])
                + " of the mites are in capped cells, on "
                + Plain.shortDay(season.first().plusDays(most)),
            whose),
        season.first(),
        new SeasonInside.Stack(
            "of each 100 mites, where they are",
            true,
            List.of(
                new SeasonInside.State("on adult bees", season.onBees()),
                new SeasonInside.State("in worker cells", season.inWorkerCells()),
                new SeasonInside.State("in drone cells", season.inDroneCells()))),
        new SeasonInside.Ribbon("adult bees", season.adults(), "winter bees", season.winterBees()),
        new SeasonInside.Stack(
            "of each 100 adult bees, those with virus",
            false,
            List.of(
                new SeasonInside.State("infected in the cell", season.infectedAtEmergence()),
                new SeasonInside.State("infected as adults", season.infectedAsAdults()))));
  }
}
