package broodtide.cli;

import broodtide.assessment.CountOutlook;
import broodtide.assessment.CountReading;
import broodtide.wash.Interval;
import broodtide.words.Answer;
import broodtide.words.Digits;
import broodtide.words.Odds;
import broodtide.words.Plain;
import java.util.ArrayList;
import java.util.List;

/** One count in words. */
final class WashWords {
  private WashWords() {}

  static List<String> sentences(CountReading r) {
    List<String> out = new ArrayList<>();
    Interval seen = r.exact();
    out.add(
        Digits.counted(r.wash().mites(), "mite")
            + " in "
            + (r.wash().beesAssumed() ? "a half cup of about " : "")
            + Digits.two(r.wash().beesOrAssumed())
            + " bees is "
            + Digits.two(r.wash().perHundred())
            + " per 100, 90 % interval "
            + Plain.levels(seen.low(), seen.high())
            + ". "
            + inColony(r));
    if (r.threshold().isEmpty()) {
      out.add(Answer.noThreshold(r.wash().date(), r.thresholds()) + ".");
    } else {
      out.add(
          "On "
              + Plain.day(r.wash().date())
              + " ("
              + r.stage().title()
              + ") the treatment threshold "
              + r.thresholds().where()
              + " is "
              + Answer.thresholdWords(r.thresholds(), r.threshold().getAsDouble())
              + ". "
              + Plain.capital(above(r.chanceAbove()))
              + ".");
    }
    Interval mites = r.mitesInAll().interval(0.9);
    out.add(
        "In a colony of the usual size for the day ("
            + Digits.two(r.adults())
            + " bees) it means about "
            + Digits.two(r.mitesInAll().median())
            + " mites in all ("
            + Digits.range(mites.low(), mites.high())
            + "), of which "
            + Digits.percent(1 - 1 / r.mitesPerMiteOnBees())
            + " are in capped cells.");
    return out;
  }

  /** What the count means for the colony; pictures of a season draw their dots there. */
  private static String inColony(CountReading r) {
    Interval colony = r.inColony().interval(0.9);
    return "Corrected for mites that it misses, the colony has about "
        + Plain.level(r.inColony().median())
        + " ("
        + Plain.levels(colony.low(), colony.high())
        + ").";
  }

  static String above(double chance) {
    String odds = Odds.words(chance);
    return Odds.nearlySure(chance)
        ? "the colony is " + odds + " above the treatment threshold"
        : "the odds that the colony is above the treatment threshold are " + odds;
  }

  /** Where such a colony would stand in autumn, for people. */
  static String ahead(CountOutlook.Ahead o) {
    return "Left alone, and judged from this count only, the colony would have about "
        + Plain.level(o.infestation().median())
        + " mites per 100 bees on "
        + Plain.day(o.day())
        + " (90 % interval "
        + Plain.levels(o.infestation().q05(), o.infestation().q95())
        + "). By then the winter bees have been raised. Several washes give a better answer:"
        + " 'broodtide compare'.";
  }
}
