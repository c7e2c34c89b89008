package broodtide.report;

import broodtide.assessment.CountReading;
import broodtide.chart.DensityCurve;
import broodtide.chart.Figure;
import broodtide.chart.Heading;
import broodtide.chart.WashCurve;
import broodtide.wash.Infestation;
import broodtide.wash.RatePosterior;
import broodtide.words.Digits;
import broodtide.words.Plain;

/** What one count says of the infestation, against the threshold of the day. */
public final class CountPicture {
  private static final int STEPS = 160;

  /** Share of the belief that the curve shows; what is left trails off. */
  private static final double SHOWN = 0.995;

  /** How far the axis runs at least, in thresholds, so that words have room beyond it. */
  private static final double ROOM = 1.6;

  private CountPicture() {}

  /**
   * {@return the picture} The curve is what an alcohol wash of all bees would show, for that is
   * what thresholds are meant for.
   *
   * @param r a count read in its season
   */
  public static Figure of(CountReading r) {
    RatePosterior belief = Infestation.of(r.wash()).asAlcoholWash();
    boolean limited = r.threshold().isPresent();
    double limit = r.threshold().orElse(0);
    String chance = limited ? Digits.chance(r.chanceAbove()) : "";
    String counted =
        Digits.counted(r.wash().mites(), "mite")
            + " in "
            + (r.wash().beesAssumed() ? "a half cup of about " : "")
            + Digits.two(r.wash().beesOrAssumed())
            + " bees";
    String title =
        limited
            ? "The chance that the colony is above the treatment threshold is " + chance
            : counted + ", on a day without a treatment threshold";
    return WashCurve.of(
        new Heading(
            title,
            counted
                + " on "
                + Plain.day(r.wash().date())
                + ". Threshold "
                + r.thresholds().where()
                + "."),
        "mites per 100 bees, as an alcohol wash shows them",
        curve(belief, Math.max(belief.quantile(SHOWN), ROOM * limit)),
        limited ? limit : null,
        limited ? "threshold: " + Plain.threshold(limit) : "",
        chance + " above it");
  }

  /** Mean density of each step, so that it stays finite at 0 when no mite was found. */
  private static DensityCurve curve(RatePosterior belief, double most) {
    double step = most / STEPS;
    double[] x = new double[STEPS + 1];
    double[] y = new double[STEPS + 1];
    double below = 0;
    for (int i = 1; i <= STEPS; i++) {
      double atMost = belief.chanceAtMost(i * step);
      x[i] = (i - 0.5) * step;
      y[i] = (atMost - below) / step;
      below = atMost;
    }
    y[0] = y[1];
    return DensityCurve.of(x, y);
  }
}
