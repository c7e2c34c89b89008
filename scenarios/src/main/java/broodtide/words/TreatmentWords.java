package broodtide.words;

import broodtide.assessment.QuantileSummary;
import broodtide.catalog.NaturalFall;
import broodtide.decision.ApiaryTreatmentCheck;
import broodtide.decision.CountedEfficacy;
import broodtide.decision.ResistanceCheck;
import broodtide.decision.TellingWash;
import broodtide.decision.TreatmentCheck;
import broodtide.decision.TreatmentCheck.Verdict;
import broodtide.wash.Interval;
import broodtide.wash.Wash;
import java.util.Locale;
import java.util.Optional;

/**
 * Whether a treatment worked, in plain sentences: one answer, and beside it only figures that bear
 * it out. Where the washes cannot tell, no share is named as if they could.
 */
public final class TreatmentWords {
  /** From this many times as many mites on, a share in hundredths is hard to read. */
  private static final double MANY = 4;

  private TreatmentWords() {}

  /**
   * {@return the answer alone, in a few words}
   *
   * @param verdict what the washes allow to be said
   */
  public static String answer(Verdict verdict) {
    return switch (verdict) {
      case WORKED -> "Worked as expected";
      case FELL_SHORT -> "Fell short";
      case CANNOT_TELL -> "Cannot tell";
    };
  }

  /**
   * {@return the answer with what it rests on, the season taken into account}
   *
   * @param check the treatment as its washes judge it
   * @param control name of the control in the library
   */
  public static String verdict(TreatmentCheck check, String control) {
    Verdict verdict = check.verdict();
    String what = control + " from " + Plain.day(check.treatment().from());
    String answer = answer(verdict) + ": ";
    if (verdict == Verdict.CANNOT_TELL) {
      return check.noMites()
          ? answer
              + "no mite was found before "
              + what
              + " or after it, so the washes cannot show its effect."
          : answer
              + "the washes are consistent with both: that "
              + what
              + " worked, and that it fell short.";
    }
    boolean worked = verdict == Verdict.WORKED;
    double chance = worked ? check.chanceWorked() : 1 - check.chanceWorked();
    return answer
        + what
        + " acted with "
        + (worked ? "at least" : "less than")
        + " half of its usual efficacy (chance from these washes "
        + Digits.chance(chance)
        + "). "
        + taken(check);
  }

  /**
   * {@return what the treatment took of the mites, with its interval, beside what it takes at its
   * usual efficacy}
   *
   * @param check the treatment as its washes judge it
   */
  public static String taken(TreatmentCheck check) {
    QuantileSummary taken = QuantileSummary.of(check.reduction());
    return "Untreated, the colony would have stood at about "
        + Plain.level(QuantileSummary.of(check.untreated()).median())
        + " mites per 100 bees on "
        + Plain.day(check.after().date())
        + "; against that the treatment took about "
        + Digits.percent(taken.median())
        + " of all mites (90 % interval "
        + Digits.percent(taken.q05())
        + " to "
        + Digits.percent(taken.q95())
        + "). At its usual efficacy it takes about "
        + Digits.percent(QuantileSummary.of(check.usual()).median())
        + " here.";
  }

  /**
   * {@return what the hives of an apiary say together}
   *
   * @param apiary the hives that were treated together
   * @param hives how many were judged
   */
  public static String apiary(ApiaryTreatmentCheck apiary, int hives) {
    return "Over the apiary, "
        + apiary.hives()
        + " of "
        + hives
        + " hives together: "
        + answer(apiary.verdict()).toLowerCase(Locale.ROOT)
        + ". It acted with "
        + Digits.two(apiary.strength())
        + " times its usual strength (90 % interval "
        + Digits.two(apiary.low())
        + " to "
        + Digits.two(apiary.high())
        + "); the chance that it was half or more is "
        + Digits.chance(apiary.chanceWorked())
        + ".";
  }

  /**
   * {@return which further wash would tell, or that none would; empty when the washes tell already}
   *
   * @param check the treatment as its washes judge it
   */
  public static Optional<String> whatWouldTell(TreatmentCheck check) {
    if (check.verdict() != Verdict.CANNOT_TELL) {
      return Optional.empty();
    }
    return Optional.of(
        check
            .telling()
            .map(TreatmentWords::telling)
            .orElse(
                "No further wash of up to "
                    + TellingWash.MOST_BEES
                    + " bees is likely to tell, or it is too late for one. Go by what the washes of"
                    + " the colony show."));
  }

  private static String telling(TellingWash t) {
    String worked =
        t.workedUpTo() == 0 ? "no mite" : "up to " + Digits.counted(t.workedUpTo(), "mite");
    String fallen = Digits.counted(t.fellShortFrom(), "mite") + " or more";
    boolean says = t.workedUpTo() >= 0;
    boolean denies = t.fellShortFrom() <= t.bees();
    return "A further wash of about "
        + t.bees()
        + " bees on "
        + Plain.day(t.day())
        + ", with nothing more done, would tell with a chance of "
        + Digits.chance(t.chance())
        + ": "
        + (says ? worked + " would mean that it worked" : "")
        + (says && denies ? ", " : "")
        + (denies ? fallen + (says ? "" : " would mean") + " that it fell short" : "")
        + ".";
  }

  /**
   * {@return what the two counts alone say, the season left in}
   *
   * @param check the treatment as its washes judge it
   * @param counted the share that they show; empty when no mite was found before
   */
  public static String counts(TreatmentCheck check, Optional<CountedEfficacy> counted) {
    String seen =
        "From the counts alone: " + spell(check.before()) + ", then " + spell(check.after());
    if (counted.isEmpty()) {
      return seen + ". With no mite before, they show no efficacy.";
    }
    return seen
        + ": "
        + change(counted.get(), check.verdict(), "before")
        + ". That includes what the season did meanwhile, and mites that fell naturally: "
        + Math.round(100 * NaturalFall.LEAST)
        + " to "
        + Digits.percent(NaturalFall.MOST)
        + " in untreated groups of trials. The untreated season behind the answer loses mites"
        + " likewise.";
  }

  /**
   * {@return what a neighbour that was not treated adds}
   *
   * @param verdict what the washes allow to be said
   * @param neighbour name of the neighbour
   * @param against the share against it; empty when it cannot be worked out
   */
  public static String neighbour(
      Verdict verdict, String neighbour, Optional<CountedEfficacy> against) {
    return against
        .map(
            e ->
                "Against the untreated neighbour "
                    + neighbour
                    + " (Henderson & Tilton 1955): "
                    + change(e, verdict, "expected from it")
                    + ". Two colonies differ by more than sampling, so the answer above does not"
                    + " use it.")
        .orElse(
            "The neighbour "
                + neighbour
                + " or the colony had no mite in a wash that the comparison divides by, so no"
                + " comparison is possible.");
  }

  /**
   * {@return what a treatment that fell short says of resistance, and how to reckon with it}
   *
   * @param resistance what the washes say of resistance
   */
  public static String resistance(ResistanceCheck resistance) {
    return "The chance that the mites are resistant is "
        + Digits.chance(resistance.chance())
        + " by these washes, if nothing else went wrong and the odds were even before. To plan for"
        + " mites that resist "
        + resistance.substance()
        + ", add --resistant "
        + resistance.substance()
        + " to compare, windows or rules.";
  }

  private static String change(CountedEfficacy e, Verdict verdict, String base) {
    String range = range(e.interval(), base);
    if (verdict == Verdict.CANNOT_TELL) {
      return range + " (90 % interval)";
    }
    String middle = range(new Interval(e.share(), e.share(), e.interval().level()), base);
    return middle + " (90 % interval: " + range + ")";
  }

  /**
   * {@return a range of the share of mites gone, said from fewer to more: {@code between 27 % fewer
   * and 120 % more mites than before}}
   *
   * @param share from the least share gone to the most; below 0 for more mites, down to minus
   *     infinity
   * @param base what the mites are held against, for example {@code before}
   */
  static String range(Interval share, String base) {
    double most = 1 - share.low();
    if (Double.isInfinite(most)) {
      return "anything from " + one(share.high(), base) + " upwards";
    }
    String from = amount(share.high());
    String to = amount(share.low());
    if (from.equals(to) && share.high() < 0 == share.low() < 0) {
      // both ends read alike
      return one(share.high(), base);
    }
    boolean fewestTimes = 1 - share.high() >= MANY;
    if (most >= MANY) {
      return fewestTimes
          ? "between " + from + " and " + to + " times as many mites as " + base
          : "between " + one(share.high(), base) + " and " + to + " times as many";
    }
    if (share.low() >= 0) {
      return "between " + to + " and " + from + " fewer mites than " + base;
    }
    return share.high() < 0
        ? "between " + from + " and " + to + " more mites than " + base
        : "between " + from + " fewer and " + to + " more mites than " + base;
  }

  private static String one(double share, String base) {
    if (1 - share >= MANY) {
      return amount(share) + " times as many mites as " + base;
    }
    return share == 0
        ? "as many mites as " + base
        : amount(share) + (share < 0 ? " more" : " fewer") + " mites than " + base;
  }

  private static String amount(double share) {
    return 1 - share >= MANY ? Digits.two(1 - share) : Digits.percent(Math.abs(share));
  }

  private static String spell(Wash w) {
    return Digits.counted(w.mites(), "mite")
        + " in "
        + Math.round(w.beesOrAssumed())
        + " bees on "
        + Plain.shortDay(w.date());
  }
}
