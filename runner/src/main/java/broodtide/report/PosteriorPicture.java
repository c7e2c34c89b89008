package broodtide.report;

import broodtide.assessment.Comparison;
import broodtide.chart.DensityCurve;
import broodtide.chart.Figure;
import broodtide.chart.Heading;
import broodtide.chart.PriorPosterior;
import broodtide.fit.Density;
import broodtide.fit.SeasonPosterior;
import broodtide.fit.UnknownSummary;
import broodtide.words.UnknownWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** What was believed of each unknown of a colony before its washes, and what is with them. */
final class PosteriorPicture {
  /** Share of the doubt taken away from which the washes taught something; as in words. */
  private static final double SOMETHING = 0.15;

  /** The ratio of its ends from which an axis is one of ratios; choice. */
  private static final double WIDE = 10;

  private PosteriorPicture() {}

  /**
   * {@return the picture; empty when nothing was in doubt}
   *
   * @param comparison the plans of a colony
   */
  public static Optional<Figure> of(Comparison comparison) {
    SeasonPosterior posterior = comparison.posterior();
    List<UnknownSummary> summaries = posterior.summaries();
    List<PriorPosterior.Unknown> unknowns = new ArrayList<>();
    int taught = 0;
    for (UnknownSummary s : summaries) {
      if (s.prior().logSd() > 0) {
        double[] z = posterior.draws(s);
        unknowns.add(
            unknown(
                UnknownWords.of(s, posterior).name(),
                Density.before(s.prior()),
                Density.after(s.prior(), z)));
        taught += s.shrinkage() >= SOMETHING ? 1 : 0;
      }
    }
    if (unknowns.isEmpty()) {
      return Optional.empty();
    }
    Heading heading =
        new Heading(
            "The washes say something about " + taught + " of " + unknowns.size() + " unknowns",
            "Colony "
                + comparison.colony().colony()
                + ": how likely each value is. The higher, the likelier; areas are alike.");
    return Optional.of(PriorPosterior.of(heading, unknowns));
  }

  private static PriorPosterior.Unknown unknown(String name, Density before, Density after) {
    double[] b = before.values();
    boolean wide = b[b.length - 1] > WIDE * b[0];
    return new PriorPosterior.Unknown(name, curve(before, wide), curve(after, wide), wide);
  }

  /**
   * On an axis of ratios heights are per step of the logarithm, so that areas stay what they are.
   */
  private static DensityCurve curve(Density d, boolean ratios) {
    double[] x = d.values();
    double[] y = d.heights();
    return DensityCurve.of(
        x, IntStream.range(0, x.length).mapToDouble(i -> ratios ? x[i] * y[i] : y[i]).toArray());
  }
}
