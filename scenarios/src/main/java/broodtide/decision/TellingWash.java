package broodtide.decision;

import broodtide.assessment.ColonyCase;
import broodtide.control.Plan;
import broodtide.decision.TreatmentCheck.Verdict;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.SimulatedColony;
import broodtide.engine.Workers;
import broodtide.fit.CountDistribution;
import broodtide.fit.SeasonPosterior;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;

/**
 * A further wash that may tell whether a treatment worked, and the counts that would.
 *
 * @param day day of the wash
 * @param bees bees in it
 * @param workedUpTo with so many mites or fewer it would have worked; below 0 when no count says so
 * @param fellShortFrom with so many mites or more it would have fallen short; more than {@code
 *     bees} when no count says so
 * @param chance chance that it tells one or the other, 0 to 1
 */
public record TellingWash(
    LocalDate day, int bees, int workedUpTo, int fellShortFrom, double chance) {
  /** Most bees looked at: three half cups. */
  public static final int MOST_BEES = 900;

  private static final int HALF_CUP = 300;
  private static final int APART = 7;

  /** A wash that tells at least as often is good enough. Choice. */
  private static final double OFTEN = 0.5;

  /** One that tells more rarely is not worth naming. Choice. */
  private static final double RARELY = 0.2;

  private static final double BEYOND = 0.9999;

  /** The first day on which a wash may tell: the treatment is over and cells have emptied. */
  private static LocalDate first(LocalDate treatmentEnds, Wash last) {
    LocalDate emptied = treatmentEnds.plusDays(Shortfall.EARLY);
    return emptied.isAfter(last.date()) ? emptied : last.date().plusDays(1);
  }

  /**
   * The wash of fewest bees, and of those the earliest, that tells at least as often as not; or
   * else the one that tells most often.
   *
   * @param check what is known so far
   * @param posterior what the colony's washes say of it
   * @param last last day on which a wash still counts for the treatment
   * @param worked whether a strength counts as having worked
   * @param workers threads; their number does not change the result
   * @return empty when hardly any would tell, or when it is too late for one
   */
  static Optional<TellingWash> of(
      TreatmentCheck check,
      SeasonPosterior posterior,
      LocalDate last,
      DoublePredicate worked,
      Workers workers) {
    ColonyCase treated = check.colony();
    List<Wash> washes = treated.washes();
    LocalDate first = first(check.treatment().to(), washes.get(washes.size() - 1));
    if (first.isAfter(last)) {
      return Optional.empty();
    }
    EnsembleRun run =
        posterior.run(
            treated.until(last.plusDays(1)).season(Plan.waiting("nothing more")),
            Set.of(Quantity.INFESTATION),
            workers,
            Progress.NONE);
    boolean[] side = side(posterior.members(), worked);
    double[] sizes = sizes(posterior.dispersions(), check.after());
    Optional<TellingWash> best = Optional.empty();
    for (int bees = HALF_CUP; bees <= MOST_BEES; bees += HALF_CUP) {
      for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(APART)) {
        Counts counts =
            new Counts(run.values(Quantity.INFESTATION, day), sizes, side, check.after(), bees);
        TellingWash wash = told(check, day, bees, counts.given(true), counts.given(false));
        if (wash.chance() >= OFTEN) {
          return Optional.of(wash);
        }
        if (wash.chance() >= RARELY && best.map(b -> b.chance() < wash.chance()).orElse(true)) {
          best = Optional.of(wash);
        }
      }
    }
    return best;
  }

  private static TellingWash told(
      TreatmentCheck check,
      LocalDate day,
      int bees,
      CountDistribution good,
      CountDistribution bad) {
    double odds = check.chanceWorked() / (1 - check.chanceWorked());
    int most = Math.min(bees, Math.max(good.quantile(BEYOND), bad.quantile(BEYOND)));
    int upTo = -1;
    while (upTo < most
        && TreatmentCheck.sure(odds * ratio(good, bad, upTo + 1)) == Verdict.WORKED) {
      upTo++;
    }
    int from = most + 1;
    while (from - 1 > upTo
        && TreatmentCheck.sure(odds * ratio(good, bad, from - 1)) == Verdict.FELL_SHORT) {
      from--;
    }
    // without a mite in any wash before, another without one says nothing either
    upTo = check.noMites() && upTo == 0 ? -1 : upTo;
    double none = check.noMites() && upTo > 0 ? 1 : 0;
    double chance =
        check.chanceWorked() * tells(good, none, upTo, from)
            + (1 - check.chanceWorked()) * tells(bad, none, upTo, from);
    return new TellingWash(day, bees, upTo, from > most ? bees + 1 : from, chance);
  }

  private static double tells(CountDistribution count, double none, int upTo, int from) {
    return count.atMost(upTo) - none * count.atMost(0) + 1 - count.atMost(from - 1);
  }

  private static double ratio(CountDistribution good, CountDistribution bad, int count) {
    double more = good.atMost(count) - good.atMost(count - 1);
    double less = bad.atMost(count) - bad.atMost(count - 1);
    return more / Math.max(Double.MIN_NORMAL, less);
  }

  private static boolean[] side(List<SimulatedColony> members, DoublePredicate worked) {
    boolean[] out = new boolean[members.size()];
    for (int m = 0; m < out.length; m++) {
      List<Double> success = members.get(m).success();
      out[m] = worked.test(success.get(success.size() - 1));
    }
    return out;
  }

  /** Scatter of one wash and the unknown of method and frame together. */
  private static double[] sizes(double[] dispersions, Wash like) {
    double recovery = like.method().recovery().sd() / like.method().recovery().mean();
    double frame = like.frame().factor().sd() / like.frame().factor().mean();
    double[] out = new double[dispersions.length];
    for (int m = 0; m < out.length; m++) {
      out[m] = 1 / (1 / dispersions[m] + recovery * recovery + frame * frame);
    }
    return out;
  }

  /** The counts of one wash, by whether the treatment worked. */
  private record Counts(double[] truth, double[] sizes, boolean[] side, Wash like, int bees) {
    CountDistribution given(boolean worked) {
      double exposure = bees * like.exposure() / like.beesOrAssumed();
      int[] chosen = IntStream.range(0, side.length).filter(m -> side[m] == worked).toArray();
      double[] means = new double[chosen.length];
      double[] own = new double[chosen.length];
      for (int i = 0; i < chosen.length; i++) {
        means[i] = Math.min(bees, exposure * truth[chosen[i]] / 100);
        own[i] = sizes[chosen[i]];
      }
      return CountDistribution.mixture(means, own);
    }
  }
}
