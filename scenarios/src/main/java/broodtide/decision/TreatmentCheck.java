package broodtide.decision;

import broodtide.assessment.ColonyCase;
import broodtide.control.Control;
import broodtide.control.HazardSpread;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.SimulatedColony;
import broodtide.engine.StandardColony;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import broodtide.fit.Prior;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.Unworkable;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Whether a treatment worked: what its colony's washes imply that it took, against what the same
 * colonies would have come to without it and against what the treatment usually takes.
 *
 * @param colony the case, with the treatment among what was given
 * @param treatment the treatment
 * @param before the last wash before it
 * @param after the wash that judges it
 * @param reduction share of all mites that it took, by the day of the wash after it, by member
 * @param usual the same if it had acted as in the trials behind it, by member
 * @param untreated mites per 100 bees on that day had there been no treatment, by member
 * @param strength logarithm of its strength against the usual, by member
 * @param chanceWorked chance that it acted with at least half of its usual strength, 0 to 1, had
 *     that been as likely as not before the washes
 * @param season the season with the treatment and without it
 * @param telling a further wash that would tell; empty when the washes tell already, or when none
 *     would
 */
@SuppressWarnings("ArrayRecordComponent") // thousands of figures, read only, never compared
public record TreatmentCheck(
    ColonyCase colony,
    MiticideCourse treatment,
    Wash before,
    Wash after,
    double[] reduction,
    double[] usual,
    double[] untreated,
    double[] strength,
    double chanceWorked,
    TreatmentSeason season,
    Optional<TellingWash> telling) {
  /**
   * Spread of a treatment's strength before the washes are looked at, standard deviation of the
   * logarithm: from a tenth of the usual strength to its fivefold, so that a failure is not ruled
   * out beforehand. Choice.
   */
  static final double OPEN = 1.2;

  /** Half of the usual strength: less counts as falling short. Choice. */
  static final double HALF = 0.5;

  /** Strengths below this are all alike. */
  private static final double LEAST = 1e-4;

  /** Its multiples, whole parts left away, lie evenly between 0 and 1. */
  private static final double GOLDEN = 0.6180339887498949;

  /** A verdict is given when it is at least this likely. Choice. */
  private static final double SURE = 0.9;

  /** What can be said. */
  public enum Verdict {
    /** It acted with half of its usual strength or more. */
    WORKED,
    /** It acted with less than that. */
    FELL_SHORT,
    /** The washes do not tell. */
    CANNOT_TELL
  }

  /**
   * {@return what can be said of the treatment} Where no mite was found before or after it, that is
   * nothing, for a treatment cannot be seen to take what is not seen.
   */
  public Verdict verdict() {
    return noMites() ? Verdict.CANNOT_TELL : sure(chanceWorked / (1 - chanceWorked));
  }

  /** {@return whether no mite was found in the wash before it nor in any after it began} */
  public boolean noMites() {
    return before.mites() == 0
        && colony.washes().stream()
            .filter(w -> w.date().isAfter(treatment.from()))
            .allMatch(w -> w.mites() == 0);
  }

  /** How far colonies of one trial differ in the logarithm of the strength. */
  double usualSpread() {
    return treatment.substance().spread().colonies();
  }

  /** What odds of having worked allow to be said, infinite odds included. */
  static Verdict sure(double odds) {
    double enough = SURE / (1 - SURE);
    return odds >= enough
        ? Verdict.WORKED
        : odds <= 1 / enough ? Verdict.FELL_SHORT : Verdict.CANNOT_TELL;
  }

  /**
   * Judges a treatment.
   *
   * @param c the colony without the treatment; all of its washes
   * @param treatment the treatment
   * @param effort how hard to work
   * @param workers threads; their number does not change the result
   * @param progress is told of work done
   * @return the verdict and its figures
   * @throws Unworkable when it began before the record, or there is no wash before or none after
   *     its start
   */
  public static TreatmentCheck of(
      ColonyCase c,
      MiticideCourse treatment,
      SeasonPosterior.SamplerSettings effort,
      Workers workers,
      Progress progress) {
    Wash before = before(c, treatment);
    Wash after = after(c, treatment);
    ColonyCase bare = upTo(c, last(c, treatment, after), treatment);
    ColonyCase treated = bare.withGiven(open(treatment));
    SeasonPosterior posterior = treated.posterior(effort, workers, progress);
    LocalDate day = after.date();
    Plan nothing = Plan.waiting("nothing more");
    Set<Quantity> kept = Set.of(Quantity.MITES, Quantity.INFESTATION);
    EnsembleRun with = posterior.run(treated.season(nothing), kept, workers, Progress.NONE);
    EnsembleRun without = posterior.run(bare.season(nothing), kept, workers, Progress.NONE);
    StandardColony start = StandardColony.on(treated.model(), treated.start());
    Function<List<SimulatedColony>, double[]> mites =
        members ->
            EnsembleRun.of(
                    treated.season(nothing),
                    start,
                    members,
                    Watched.daily(Set.of(Quantity.MITES)),
                    workers,
                    Progress.NONE)
                .values(Quantity.MITES, day);
    double[] usual = mites.apply(asUsual(posterior.members()));
    double[] believed =
        mites.apply(asBelieved(posterior.members(), c.priors().efficacy(treatment.substance())));
    double[] untreated = without.values(Quantity.MITES, day);
    double[] reduction = taken(with.values(Quantity.MITES, day), untreated);
    TreatmentCheck check =
        new TreatmentCheck(
            treated,
            treatment,
            before,
            after,
            reduction,
            taken(usual, untreated),
            without.values(Quantity.INFESTATION, day),
            strength(posterior.members()),
            chanceWorked(
                posterior.members(), treated.priors().efficacy(treatment.substance()).median()),
            TreatmentSeason.of(
                treated, treatment.from(), with, without, taken(believed, untreated), reduction),
            Optional.empty());
    return check.verdict() == Verdict.CANNOT_TELL
            && check.chanceWorked() > 0
            && check.chanceWorked() < 1
        ? check.with(
            TellingWash.of(
                check, posterior, judgedUpTo(c, treatment), success -> success >= HALF, workers))
        : check;
  }

  private TreatmentCheck with(Optional<TellingWash> wash) {
    return new TreatmentCheck(
        colony,
        treatment,
        before,
        after,
        reduction,
        usual,
        untreated,
        strength,
        chanceWorked,
        season,
        wash);
  }

  /**
   * The last day whose wash counts for a treatment: later, what has grown since weighs as much as
   * what it left; and a further treatment would be judged with it.
   */
  private static LocalDate judgedUpTo(ColonyCase c, Control treatment) {
    LocalDate end = treatment.to().plusDays(Shortfall.LATE);
    return c.given().stream()
        .map(Control::from)
        .filter(d -> d.isAfter(treatment.from()) && d.isBefore(end))
        .min(LocalDate::compareTo)
        .orElse(end);
  }

  /** The last wash that counts for a treatment, the one after it at the least. */
  private static Wash last(ColonyCase c, Control treatment, Wash after) {
    LocalDate end = judgedUpTo(c, treatment);
    return c.washes().stream()
        .filter(w -> w.date().isAfter(after.date()) && !w.date().isAfter(end))
        .reduce((a, b) -> b)
        .orElse(after);
  }

  /** The last wash on or before the first day of a treatment. */
  static Wash before(ColonyCase c, Control treatment) {
    if (treatment.from().isBefore(c.start())) {
      throw new Unworkable(
          "colony \""
              + c.colony()
              + "\": \""
              + treatment.name()
              + "\" on "
              + treatment.from()
              + " began before the record, whose first wash is of "
              + c.start()
              + "; without a wash before it there is nothing to hold the later ones against");
    }
    return c.washes().stream()
        .filter(w -> !w.date().isAfter(treatment.from()))
        .reduce((a, b) -> b)
        .orElseThrow(
            () ->
                new Unworkable(
                    "colony \"" + c.colony() + "\" has no wash on or before " + treatment.from()));
  }

  /** The first wash after a treatment has ended, or else the last one after it began. */
  static Wash after(ColonyCase c, Control treatment) {
    List<Wash> later = c.washes().stream().filter(w -> w.date().isAfter(treatment.from())).toList();
    if (later.isEmpty()) {
      throw new Unworkable(
          "colony \""
              + c.colony()
              + "\" has no wash after "
              + treatment.from()
              + ", so nothing can be said of \""
              + treatment.name()
              + "\" yet; it ends on "
              + treatment.to());
    }
    return later.stream()
        .filter(w -> w.date().isAfter(treatment.to()))
        .findFirst()
        .orElse(later.get(later.size() - 1));
  }

  /** The same treatment with any strength thinkable. */
  private static MiticideCourse open(MiticideCourse treatment) {
    return new MiticideCourse(
        treatment.name(),
        treatment.substance().with(new HazardSpread(0, OPEN)),
        treatment.start(),
        treatment.applications(),
        treatment.every());
  }

  /** The case up to a wash; the treatment itself is added later. */
  private static ColonyCase upTo(ColonyCase c, Wash last, Control treatment) {
    List<Wash> washes = c.washes().stream().filter(w -> !w.date().isAfter(last.date())).toList();
    List<Control> begun =
        c.given().stream()
            .filter(g -> !g.from().isAfter(last.date()))
            .filter(g -> !g.name().equals(treatment.name()) || !g.from().equals(treatment.from()))
            .toList();
    LocalDate day = last.date().plusDays(1);
    return new ColonyCase(
        c.colony(),
        c.model(),
        c.start(),
        day,
        day.plusDays(1),
        washes,
        begun,
        c.thresholds(),
        c.priors());
  }

  private static List<SimulatedColony> asUsual(List<SimulatedColony> members) {
    List<SimulatedColony> out = new ArrayList<>();
    for (SimulatedColony m : members) {
      List<Double> success = new ArrayList<>(m.success());
      success.set(success.size() - 1, 1.0);
      out.add(m.with(success));
    }
    return out;
  }

  private static double[] strength(List<SimulatedColony> members) {
    return members.stream()
        .mapToDouble(m -> Math.log(Math.max(LEAST, m.success().get(m.success().size() - 1))))
        .toArray();
  }

  /**
   * The same colonies, the treatment acting as believed before the washes: spread evenly over what
   * was believed, in an order that goes with nothing else.
   */
  private static List<SimulatedColony> asBelieved(List<SimulatedColony> members, Prior prior) {
    NormalDistribution normal = new NormalDistribution(null, 0, 1);
    List<SimulatedColony> out = new ArrayList<>();
    for (SimulatedColony m : members) {
      double place = (out.size() + 0.5) * GOLDEN % 1;
      List<Double> success = new ArrayList<>(m.success());
      success.set(success.size() - 1, prior.at(normal.inverseCumulativeProbability(place)));
      out.add(m.with(success));
    }
    return out;
  }

  private static double[] taken(double[] with, double[] without) {
    double[] out = new double[with.length];
    Arrays.setAll(out, m -> 1 - with[m] / Math.max(Double.MIN_NORMAL, without[m]));
    return out;
  }

  /**
   * The chance that the washes alone give, as if half of the usual strength or more had been as
   * likely as not before them: otherwise washes that show nothing would lean to what was believed.
   */
  private static double chanceWorked(List<SimulatedColony> members, double median) {
    double after =
        members.stream().filter(m -> m.success().get(m.success().size() - 1) >= HALF).count()
            / (double) members.size();
    double before =
        1
            - new NormalDistribution(null, Math.log(median), OPEN)
                .cumulativeProbability(Math.log(HALF));
    double worked = after / before;
    double not = (1 - after) / (1 - before);
    return worked / (worked + not);
  }
}
