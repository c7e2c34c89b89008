package broodtide.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/** What another wash is worth: the gain by its date, and what would be done at each count. */
public final class WorthPicture {
  /**
   * The gain of a wash on one day.
   *
   * @param date day of the wash
   * @param gain what it gains, in the unit of the axis; below 0 for a loss
   * @param range what it lies between
   */
  public record Gain(LocalDate date, double gain, Range range) {}

  /**
   * What would be done at some counts.
   *
   * @param from lowest count
   * @param to highest count
   * @param plan the plan
   */
  public record Decision(int from, int to, String plan) {}

  private WorthPicture() {}

  /**
   * {@return the picture}
   *
   * @param heading what stands above
   * @param axis what is gained, with its unit
   * @param gains one day or more, in order
   * @param decisions counts in order, none left out
   */
  public static Figure of(
      Heading heading, String axis, List<Gain> gains, List<Decision> decisions) {
    Figure.some(heading, gains);
    Figure.some(heading, decisions);
    LocalDate first = gains.get(0).date().minusDays(4);
    LocalDate last = gains.get(gains.size() - 1).date().plusDays(4);
    Axis days = Axis.days(first, last);
    List<Mark> marks = new ArrayList<>();
    marks.add(Mark.line(days.low(), 0, days.high(), 0, Pen.ZERO).in("zero", "no gain"));
    double[] ends =
        gains.stream()
            .flatMapToDouble(g -> DoubleStream.of(g.range().low(), g.range().high()))
            .toArray();
    for (Gain g : gains) {
      double x = g.date().toEpochDay() - first.toEpochDay();
      Mark.Group group = new Mark.Group("gain", g.date() + ": " + Numerals.two(g.gain()));
      marks.addAll(
          Mark.upright(x, g.gain(), g.range().low(), g.range().high(), Palette.line(0), group));
    }
    Facet gain = Facet.of("Gain by date of the wash", days, Axis.around(axis, ends), marks);
    List<String> plans = decisions.stream().map(Decision::plan).distinct().toList();
    List<Mark> bars = new ArrayList<>();
    double most = 1;
    for (Decision d : decisions) {
      int row = plans.indexOf(d.plan());
      double[] left = {d.from() - 0.5};
      double[] right = {d.to() + 0.5};
      most = Math.max(most, d.to() + 0.5);
      bars.add(
          Mark.bars(
                  left,
                  right,
                  new double[] {row - 0.3},
                  new double[] {row + 0.3},
                  Palette.line(row),
                  0.9)
              .in("decision", d.from() + " to " + d.to() + ": " + d.plan()));
    }
    Facet what =
        Facet.of(
            "What to do at each count",
            Axis.numbers("mites counted", -0.5, most),
            Axis.list(plans),
            bars);
    String said =
        Figure.sentences(
            decisions.stream().map(d -> d.from() + " to " + d.to() + " mites: " + d.plan()));
    return Figure.of(heading, List.of(gain, what), 2, List.of(), axis + ". " + said);
  }
}
