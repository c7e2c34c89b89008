package broodtide.assessment;

import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.RefusedException;
import broodtide.measure.Unworkable;
import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/**
 * Plans side by side for one colony. Every plan is played by the same colonies with the same luck,
 * so that differences between plans are sharper than the plans themselves.
 *
 * <p>Plans never change; what they lead to together, as the decision, is worked out when it is
 * first asked for. Threads may share a comparison as far as they may share its {@link PlanRun}s.
 */
public final class Comparison {
  /** Simulated colonies for a figure that is spoken of and not written. */
  private static final int SPOKEN_OF = 256;

  private final ColonyCase colony;
  private final SeasonPosterior posterior;
  private final List<PlanRun> runs;
  private final List<Refused> refused;
  private final Lazy<Decision> decision = new Lazy<>(() -> Decision.of(this));

  /**
   * A plan that cannot be carried out.
   *
   * @param plan its name
   * @param reason why not
   */
  public record Refused(String plan, String reason) {}

  /**
   * Plans that were played.
   *
   * @param colony the case
   * @param posterior what the washes say of it
   * @param runs one per plan that can be carried out, in their order
   * @param refused plans that cannot be carried out, each with the reason
   */
  public Comparison(
      ColonyCase colony, SeasonPosterior posterior, List<PlanRun> runs, List<Refused> refused) {
    this.colony = colony;
    this.posterior = posterior;
    this.runs = List.copyOf(runs);
    this.refused = List.copyOf(refused);
  }

  /** {@return the case} */
  public ColonyCase colony() {
    return colony;
  }

  /** {@return what the washes say of it} */
  public SeasonPosterior posterior() {
    return posterior;
  }

  /** {@return one run for each plan that can be carried out, in their order} */
  public List<PlanRun> runs() {
    return runs;
  }

  /** {@return plans that cannot be carried out, each with the reason} */
  public List<Refused> refused() {
    return refused;
  }

  /**
   * {@return this comparison, in which at least one plan was carried out}
   *
   * @throws Unworkable when none was, with the reason of each
   */
  public Comparison carriedOut() {
    if (runs.isEmpty()) {
      throw new Unworkable(
          "colony \""
              + colony.colony()
              + "\": no plan can be carried out: "
              + refused.stream()
                  .map(r -> r.plan() + " (" + r.reason() + ")")
                  .collect(Collectors.joining("; ")));
    }
    return this;
  }

  /** {@return the decision that these plans lead to; there must be one that was played} */
  public Decision decision() {
    return decision.get();
  }

  /**
   * {@return the day that an answer speaks of: when the winter bees have been raised, or the last
   * day looked at when that comes first or when there is one plan only}
   */
  public LocalDate answerDay() {
    return runs.size() == 1 ? colony.until() : colony.winterBeesRaised();
  }

  /**
   * Plays plans with a posterior. A plan that cannot run is named and does not stop the rest.
   *
   * @param colony the case
   * @param posterior the colonies that fit the washes
   * @param plans what to play, in the order of the results
   * @param workers threads; their number does not change the result
   * @param progress is told of every plan done
   * @return the plans side by side
   */
  public static Comparison of(
      ColonyCase colony,
      SeasonPosterior posterior,
      List<Plan> plans,
      Workers workers,
      Progress progress) {
    List<PlanRun> runs = new ArrayList<>();
    List<Refused> refused = new ArrayList<>();
    Watched watched = PlanRun.watched(colony);
    KeptRuns kept = new KeptRuns(posterior.members().size());
    int done = 0;
    for (Plan plan : plans) {
      Optional<Scenario> season = Optional.empty();
      try {
        decidedIn(plan, colony);
        season = Optional.of(colony.season(plan));
      } catch (RefusedException e) {
        refused.add(new Refused(plan.name(), e.reason()));
      }
      if (season.isPresent()) {
        Scenario days = season.get();
        Supplier<PlanRun.Played> played =
            kept.of(() -> play(colony, posterior, days, watched, workers.threads()));
        Optional<PlanRun> like = runs.stream().findFirst();
        PlanRun run = new PlanRun(colony, plan, played, PlanCheck.of(plan, colony), like);
        if (!kept.holds(plans.size())) {
          run.sumUp();
        }
        runs.add(run);
      }
      progress.at(++done, plans.size());
    }
    return new Comparison(colony, posterior, runs, refused);
  }

  /**
   * {@return how many plans side by side are kept day by day; of more, the days are summed up when
   * they have been played, and played again if something else is asked of them}
   *
   * @param members simulated colonies, 0 or more
   */
  public static int kept(int members) {
    return KeptRuns.most(members);
  }

  /** Played anew each time, with threads of its own: those of the first time may be gone. */
  private static PlanRun.Played play(
      ColonyCase colony, SeasonPosterior posterior, Scenario season, Watched watched, int threads) {
    try (Workers workers = new Workers(threads)) {
      return PlanRun.played(colony, posterior.run(season, watched, workers, Progress.NONE));
    }
  }

  /** What lies before the decision cannot be decided on, and the washes were read without it. */
  private static void decidedIn(Plan plan, ColonyCase c) {
    for (Control control : plan.controls()) {
      if (control.from().isBefore(c.now())) {
        throw new Unworkable(
            "plan \""
                + plan.name()
                + "\": \""
                + control.name()
                + "\" on "
                + control.from()
                + " lies before the day of decision, "
                + c.now()
                + "; if it was done, give it as done, so that the washes are read with it");
      }
    }
  }

  /** {@return the plan that others are held against: the one that waits, or else the first} */
  public PlanRun reference() {
    return runs.stream()
        .filter(r -> r.plan().controls().isEmpty())
        .findFirst()
        .orElseGet(() -> runs.get(0));
  }

  /**
   * {@return median mites per 100 bees on a day if one waited and no mite came in from other
   * colonies from the decision on; empty where none comes in by then, and where the days of the
   * case span a year or more} Worked out with some of the simulated colonies, since it is only
   * spoken of.
   *
   * @param day a day of the case, after the decision
   */
  public OptionalDouble withoutArrivals(LocalDate day) {
    Immigration usual = colony.model().immigration();
    boolean some = colony.now().datesUntil(day).anyMatch(d -> usual.on(d) > 0);
    if (!some || !colony.until().isBefore(colony.start().plusYears(1))) {
      return OptionalDouble.empty();
    }
    List<Immigration.Window> past =
        colony
            .start()
            .datesUntil(colony.now())
            .filter(d -> usual.on(d) > 0)
            .map(d -> new Immigration.Window(oneDay(d), usual.on(d)))
            .toList();
    ColonyCase quiet = colony.with(colony.model().with(new Immigration(past)));
    Plan wait = Plan.waiting("no mites from outside");
    try (Workers workers = new Workers(1)) {
      EnsembleRun run =
          posterior
              .thinned(SPOKEN_OF)
              .run(
                  quiet.season(wait),
                  Set.of(Quantity.INFESTATION, Quantity.ADULTS),
                  workers,
                  Progress.NONE);
      return OptionalDouble.of(
          new PlanRun(quiet, wait, run, List.of()).on(Quantity.INFESTATION, day).median());
    }
  }

  private static YearSpan oneDay(LocalDate day) {
    return new YearSpan(MonthDay.from(day), MonthDay.from(day));
  }

  /**
   * {@return how a plan's outcome differs from the reference's, colony by colony}
   *
   * @param run a plan of this comparison
   * @param outcome what it is judged by
   */
  public Difference against(PlanRun run, Outcome outcome) {
    return Difference.of(outcome.of(run), outcome.of(reference()));
  }

  /**
   * {@return share of members in which one figure is smaller than another; ties count half}
   *
   * @param a figures by member
   * @param b figures of the same members
   */
  public static double chanceSmaller(double[] a, double[] b) {
    double sum = 0;
    for (int m = 0; m < a.length; m++) {
      sum += a[m] < b[m] ? 1 : a[m] == b[m] ? 0.5 : 0;
    }
    return sum / a.length;
  }

  /**
   * {@return differences between two figures, member by member}
   *
   * @param a figures by member
   * @param b figures of the same members
   */
  public static double[] differences(double[] a, double[] b) {
    double[] out = new double[a.length];
    for (int m = 0; m < a.length; m++) {
      out[m] = a[m] - b[m];
    }
    return out;
  }
}
