package broodtide.decision;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Outcome;
import broodtide.assessment.PlanRanking;
import broodtide.assessment.PlanRun;
import broodtide.assessment.UsualPlans;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import broodtide.fit.ExpectedWashes;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.Unworkable;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * What it is worth to wash again before deciding. Losses are the outcome and, for each treatment,
 * its cost in the unit of the outcome: without a cost the strongest treatment would be right
 * whatever a wash shows, and no wash could be worth anything.
 *
 * <p>A colony counts as much as it is likely to be alive on the wash day. Chances of loss hold what
 * dies before that day already, the same for whatever is chosen then, so that they are averaged
 * over all colonies.
 *
 * @param colony the case
 * @param outcome what plans are judged by
 * @param cost by how much a treatment must better the outcome to be worth its trouble
 * @param washDay the day of the wash
 * @param bees bees in it
 * @param todayPlan the best plan when deciding today
 * @param today its expected loss
 * @param laterPlan the best plan among those that can still be begun on the wash day, without a
 *     wash
 * @param later its expected loss
 * @param withWash expected loss when the wash is taken and the best plan for its count chosen
 * @param knowing expected loss if the colony's true state were known on the wash day, and how well
 *     each treatment will work in it: no wash can do better
 * @param decisions what to do at which count
 */
public record WashWorth(
    ColonyCase colony,
    Outcome outcome,
    double cost,
    LocalDate washDay,
    int bees,
    Plan todayPlan,
    double today,
    Plan laterPlan,
    double later,
    double withWash,
    double knowing,
    List<Decision> decisions) {
  /** Counts rarer than this have no say in what is told. */
  private static final double RARE = 1e-4;

  /**
   * What to do at a range of counts.
   *
   * @param from lowest count
   * @param to highest count
   * @param plan the best plan then
   * @param chance chance of such a count if there is a colony to wash
   */
  public record Decision(int from, int to, Plan plan, double chance) {}

  /** Copies the list. */
  public WashWorth {
    decisions = List.copyOf(decisions);
  }

  /** {@return the plans that it names, one or more times each} */
  public Stream<Plan> plans() {
    return Stream.concat(Stream.of(todayPlan, laterPlan), decisions.stream().map(Decision::plan));
  }

  /** {@return what washing first gains over deciding today; below 0 where the delay costs more} */
  public double gain() {
    return today - withWash;
  }

  /** {@return what is lost by itself when nothing is begun before the wash day, 0 or more} */
  public double delay() {
    return later - today;
  }

  /**
   * Works it out.
   *
   * @param colony the case
   * @param posterior what its washes say
   * @param today plans that can be chosen today; those of {@code later} can be chosen today too
   * @param later plans that can still be chosen on the wash day; none begins before it
   * @param washDay after the day of decision, before the end
   * @param bees bees in the wash, 50 to 1,000
   * @param outcome what plans are judged by
   * @param cost cost of each treatment in the unit of the outcome
   * @param preferred name of the plan to choose today where others are as good, see {@link
   *     PlanRanking}
   * @param workers threads; their number does not change the result
   * @return what the wash is worth
   * @throws Unworkable when the wash day or a plan lies outside the days to come
   */
  public static WashWorth of(
      ColonyCase colony,
      SeasonPosterior posterior,
      List<Plan> today,
      List<Plan> later,
      LocalDate washDay,
      int bees,
      Outcome outcome,
      double cost,
      String preferred,
      Workers workers) {
    outcome.check(colony);
    check(colony, later, washDay);
    double[][] then = losses(colony, posterior, later, outcome, cost, workers);
    double[][] soon = losses(colony, posterior, today, outcome, cost, workers);
    double[][] now =
        Stream.concat(Arrays.stream(soon), Arrays.stream(then)).toArray(double[][]::new);
    List<Plan> open = Stream.concat(today.stream(), later.stream()).toList();
    Plan nothing = colony.withGiven(Plan.waiting(UsualPlans.WAIT));
    ExpectedWashes.Chances counts =
        ExpectedWashes.chances(
            posterior, nothing, Wash.of(washDay, colony.colony(), 0, bees), workers);
    double[] living = shares(counts.living());
    double[] weight = outcome == Outcome.LOST ? alike(living.length) : living;
    Preposterior washed = Preposterior.of(counts.byCount(), weight, then);
    return new WashWorth(
        colony,
        outcome,
        cost,
        washDay,
        bees,
        open.get(chosen(open, preferred, weight, now)),
        Preposterior.blind(weight, now),
        later.get(Preposterior.bestBlind(weight, then)),
        Preposterior.blind(weight, then),
        washed.value(),
        Preposterior.knowing(weight, then),
        decisions(washed.best(), Preposterior.chances(counts.byCount(), living), later));
  }

  private static double[] alike(int members) {
    double[] out = new double[members];
    Arrays.fill(out, 1.0 / members);
    return out;
  }

  private static double[] shares(double[] living) {
    double all = Arrays.stream(living).sum();
    return Arrays.stream(living).map(w -> w / all).toArray();
  }

  /** The preferred plan where it is within a margin of the best, else the best. */
  private static int chosen(List<Plan> open, String preferred, double[] weight, double[][] losses) {
    int best = Preposterior.bestBlind(weight, losses);
    double least = Preposterior.blind(weight, losses);
    for (int i = 0; i < open.size(); i++) {
      boolean near =
          Preposterior.blind(weight, new double[][] {losses[i]}) - least < PlanRanking.APART;
      if (open.get(i).name().equals(preferred) && near) {
        return i;
      }
    }
    return best;
  }

  private static void check(ColonyCase colony, List<Plan> later, LocalDate washDay) {
    if (!washDay.isAfter(colony.now()) || !washDay.isBefore(colony.until())) {
      throw new Unworkable(
          "the wash of "
              + washDay
              + " must lie after "
              + colony.now()
              + " and before "
              + colony.until());
    }
    for (Plan plan : later) {
      plan.controls().stream()
          .filter(c -> c.from().isBefore(washDay))
          .findFirst()
          .ifPresent(
              c -> {
                throw new Unworkable(
                    "plan \""
                        + plan.name()
                        + "\": "
                        + c.name()
                        + " on "
                        + c.from()
                        + " would begin before the wash of "
                        + washDay);
              });
    }
  }

  private static double[][] losses(
      ColonyCase colony,
      SeasonPosterior posterior,
      List<Plan> plans,
      Outcome outcome,
      double cost,
      Workers workers) {
    double[][] out = new double[plans.size()][];
    Watched watched = outcome.watched(colony);
    for (int a = 0; a < out.length; a++) {
      Plan plan = plans.get(a);
      PlanRun run =
          new PlanRun(
              colony,
              plan,
              posterior.run(colony.season(plan), watched, workers, Progress.NONE),
              List.of());
      double trouble = cost * measures(plan);
      out[a] = Arrays.stream(outcome.of(run)).map(v -> v + trouble).toArray();
    }
    return out;
  }

  /** Applications of miticides and other measures. */
  static int measures(Plan plan) {
    return plan.controls().stream().mapToInt(Control::applications).sum();
  }

  /** Counts in a row that lead to the same plan, taken together. */
  private static List<Decision> decisions(int[] best, double[] chances, List<Plan> plans) {
    List<Decision> out = new ArrayList<>();
    int last = best.length - 1;
    while (last > 0 && chances[last] < RARE) {
      last--;
    }
    for (int y = 0; y <= last; ) {
      int from = y;
      double chance = 0;
      while (y <= last && best[y] == best[from]) {
        chance += chances[y++];
      }
      out.add(new Decision(from, y - 1, plans.get(best[from]), chance));
    }
    return out;
  }
}
