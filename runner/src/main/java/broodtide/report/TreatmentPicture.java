package broodtide.report;

import broodtide.assessment.QuantileSummary;
import broodtide.chart.DensityCurve;
import broodtide.chart.EffectPicture;
import broodtide.chart.Estimate;
import broodtide.chart.Figure;
import broodtide.chart.Heading;
import broodtide.chart.Line;
import broodtide.chart.Marker;
import broodtide.chart.PriorPosterior;
import broodtide.decision.TreatmentCheck;
import broodtide.decision.TreatmentSeason;
import broodtide.fit.Density;
import broodtide.words.Plain;
import broodtide.words.TreatmentWords;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Whether a treatment worked, as a picture. */
public final class TreatmentPicture {
  private TreatmentPicture() {}

  /**
   * {@return the picture}
   *
   * @param check the treatment as its washes judge it
   */
  public static Figure of(TreatmentCheck check) {
    TreatmentSeason season = check.season();
    String name = check.treatment().name().split(",", 2)[0];
    List<Estimate> with = new ArrayList<>();
    List<Estimate> without = new ArrayList<>();
    for (TreatmentSeason.Day day : season.days()) {
      with.add(estimate(day, day.treated()));
      day.untreated().ifPresent(s -> without.add(estimate(day, s)));
    }
    return EffectPicture.of(
        new Heading(
            TreatmentWords.answer(check.verdict()) + ": " + name,
            "Colony "
                + check.colony().colony()
                + ", treated from "
                + Plain.day(check.treatment().from())
                + ". Lines: the middle of the simulated colonies; bands: 90 % intervals."),
        "mites per 100 adult bees",
        WashPoints.of(check.colony().washes()),
        new Line("as it went", "", with),
        new Line("without the treatment", "", without),
        new Marker("treated", check.treatment().from()),
        efficacy("% of all mites taken by " + Plain.shortDay(check.after().date()), check));
  }

  /**
   * {@return what is believed of the efficacy before the washes and with them}
   *
   * @param name what it is called, with its unit
   * @param check the treatment as its washes judge it
   */
  public static PriorPosterior.Unknown efficacy(String name, TreatmentCheck check) {
    TreatmentSeason season = check.season();
    return new PriorPosterior.Unknown(name, curve(season.believed()), curve(season.found()));
  }

  private static Estimate estimate(TreatmentSeason.Day day, QuantileSummary s) {
    return Estimate.of(day.date(), s.q05(), s.q25(), s.median(), s.q75(), s.q95());
  }

  private static DensityCurve curve(double[] shares) {
    Density d = Density.ofShare(shares);
    return DensityCurve.of(Arrays.stream(d.values()).map(v -> 100 * v).toArray(), d.heights());
  }
}
