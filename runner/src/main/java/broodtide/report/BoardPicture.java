package broodtide.report;

import broodtide.assessment.CountOutlook;
import broodtide.assessment.PlanRun;
import broodtide.chart.DensityCurve;
import broodtide.chart.Figure;
import broodtide.chart.Heading;
import broodtide.chart.WashCurve;
import broodtide.fit.Density;
import broodtide.fit.Prior;
import broodtide.fit.Unknown;
import broodtide.wash.BoardCount;
import broodtide.words.BoardWords;
import broodtide.words.Digits;
import broodtide.words.Plain;
import java.util.Arrays;
import java.util.stream.DoubleStream;

/** What mites on one board say of the infestation, against the threshold of the day. */
public final class BoardPicture {
  /** How far the axis runs at least, in thresholds, so that words have room beyond it. */
  private static final double ROOM = 1.6;

  private BoardPicture() {}

  /**
   * {@return the picture} The curve is what an alcohol wash of the simulated colonies that fit the
   * board would show on average, for that is what thresholds are meant for.
   *
   * @param outlook the colony of which this board alone is known
   */
  public static Figure of(CountOutlook outlook) {
    BoardCount board = outlook.colony().boards().get(0);
    boolean limited = outlook.decision().threshold().isPresent();
    double limit = outlook.decision().threshold().orElse(0);
    String chance =
        limited ? Digits.chance(outlook.decision().overThresholdToday().orElseThrow()) : "";
    String fell = BoardWords.perDay(board);
    return WashCurve.of(
        new Heading(
            limited
                ? "The chance that the colony is above the treatment threshold is " + chance
                : fell + ", on a day without a treatment threshold",
            "Board of "
                + Plain.day(board.date())
                + ": "
                + fell
                + ". Threshold "
                + outlook.colony().thresholds().where()
                + "."),
        "mites per 100 bees, as an alcohol wash shows them",
        curve(outlook, ROOM * limit),
        limited ? limit : null,
        limited ? "threshold: " + Plain.threshold(limit) : "",
        chance + " above it");
  }

  private static DensityCurve curve(CountOutlook outlook, double atLeast) {
    Prior scale = outlook.colony().priors().of(Unknown.INFESTATION);
    double[] z =
        Arrays.stream(outlook.alone().infestation(outlook.colony().now()))
            .map(v -> PlanRun.SHOWN_BY_A_WASH * v)
            .filter(v -> v > 0)
            .map(v -> Math.log(v / scale.median()) / scale.logSd())
            .toArray();
    Density density = Density.after(scale, z);
    double[] x = density.values();
    double[] y = density.heights();
    double last = x[x.length - 1];
    double[] beyond = atLeast > last ? new double[] {(last + atLeast) / 2, atLeast} : new double[0];
    return DensityCurve.of(
        DoubleStream.concat(
                DoubleStream.concat(DoubleStream.of(0), Arrays.stream(x)), Arrays.stream(beyond))
            .toArray(),
        DoubleStream.concat(
                DoubleStream.concat(DoubleStream.of(0), Arrays.stream(y)),
                Arrays.stream(new double[beyond.length]))
            .toArray());
  }
}
