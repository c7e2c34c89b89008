package broodtide.words;

import broodtide.fit.Unknown;

/**
 * An unknown of a colony in a beekeeper's words.
 *
 * @param name what it is
 * @param unit what its figures mean
 */
public record UnknownWords(String name, String unit) {
  /**
   * {@return what an unknown is and what its figures mean}
   *
   * @param unknown the unknown
   */
  public static UnknownWords of(Unknown unknown) {
    return switch (unknown) {
      case INFESTATION -> new UnknownWords("Mites at the start", "per 100 bees on the first day");
      case REPRODUCTION_FACTOR ->
          new UnknownWords("Increase of the mites", "daughters per mite; 1 is usual");
      case LAYING_FACTOR ->
          new UnknownWords("Laying of the queen", "eggs; 1 is usual for the place");
      case START_SIZE ->
          new UnknownWords(
              "Bees at the start for such a queen", "bees and brood; 1 is usual for the day");
      case REINVASION ->
          new UnknownWords("Mites from other colonies", "arrivals; 1 is as assumed below");
      case OVERDISPERSION ->
          new UnknownWords(
              "Evenness of scoops", "the higher, the more alike two scoops of one day");
      case EFFICACY_FACTOR ->
          new UnknownWords("Strength of a treatment already given", "1 is as in trials");
      case INFECTIVITY -> new UnknownWords("Mites that carry virus", "share; washes do not tell");
    };
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
