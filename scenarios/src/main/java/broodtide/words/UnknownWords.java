package broodtide.words;

import broodtide.fit.SeasonPosterior;
import broodtide.fit.Unknown;
import broodtide.fit.UnknownSummary;

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
          new UnknownWords("Reproduction factor of the mites", "daughters per mite; 1 is usual");
      case LAYING_FACTOR ->
          new UnknownWords("Laying factor of the queen", "eggs; 1 is usual for the place");
      case START_SIZE ->
          new UnknownWords(
              "Colony strength at the start", "bees and brood; 1 is usual for the day");
      case REINVASION -> new UnknownWords("Reinvasion", "1 is as assumed below");
      case LATE_REINVASION ->
          new UnknownWords("Reinvasion late in the season", "on top of the one above; 1 is usual");
      case OVERDISPERSION ->
          new UnknownWords(
              "Variation between washes", "the higher, the more alike two washes of one day");
      case EFFICACY_FACTOR ->
          new UnknownWords("Efficacy factor of an earlier treatment", "1 is as in trials");
      case GROWTH_TO_COME ->
          new UnknownWords("Reproduction factor from the last wash on", "1 is usual");
      case INFECTIVITY -> new UnknownWords("Mites that carry virus", "share; washes do not tell");
    };
  }

  /**
   * {@return the same for one of the unknowns that a posterior sums up; says from when it holds
   * where a record crosses winters}
   *
   * @param summary the unknown
   * @param posterior what the washes say of the colony
   */
  public static UnknownWords of(UnknownSummary summary, SeasonPosterior posterior) {
    UnknownWords words = of(summary.unknown());
    return summary.season() == 0
        ? words
        : new UnknownWords(
            words.name() + " from " + posterior.seasonStart(summary.season()), words.unit());
  }

  /**
   * {@return how much the washes said of an unknown}
   *
   * @param learned how much
   */
  public static String said(UnknownSummary.Learned learned) {
    return switch (learned) {
      case LESS_SURE -> "less sure than before";
      case LITTLE -> "little";
      case SOMETHING -> "something";
      case MUCH -> "much";
    };
  }
}
