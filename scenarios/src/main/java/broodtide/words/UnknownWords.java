package broodtide.words;

import broodtide.fit.Prior;
import broodtide.fit.Priors;
import broodtide.fit.UnknownSummary;

/**
 * An unknown of a colony in a beekeeper's words.
 *
 * @param name what it is
 * @param unit what its figures mean
 */
public record UnknownWords(String name, String unit) {
  public static UnknownWords of(UnknownSummary summary, Priors priors) {
    Prior p = summary.prior();
    if (p.equals(priors.infestation())) {
      return new UnknownWords("Mites at the start", "per 100 bees on the first day");
    }
    if (p.equals(priors.vigour())) {
      return new UnknownWords("Increase of the mites", "daughters per mite; 1 is usual");
    }
    if (p.equals(priors.strength())) {
      return new UnknownWords("Laying of the queen", "eggs; 1 is usual for the place");
    }
    if (p.equals(priors.startSize())) {
      return new UnknownWords(
          "Bees at the start for such a queen", "bees and brood; 1 is usual for the day");
    }
    if (p.equals(priors.immigration())) {
      return new UnknownWords("Mites from other colonies", "arrivals; 1 is as assumed below");
    }
    if (p.equals(priors.dispersion())) {
      return new UnknownWords(
          "Evenness of scoops", "the higher, the more alike two scoops of one day");
    }
    if (p.is().equals(priors.success().is())) {
      return new UnknownWords("Strength of a treatment already given", "1 is as in trials");
    }
    return new UnknownWords(p.is(), "");
  }

  /**
   * How much the washes said of it; the steps are those of {@link
   * broodtide.fit.PosteriorNarrative}.
   */
  public static String said(double shrinkage) {
    if (shrinkage < -0.15) {
      return "less sure than before";
    }
    if (shrinkage < 0.15) {
      return "little";
    }
    return shrinkage < 0.5 ? "something" : "much";
  }
}
