package broodtide.decision;

import broodtide.assessment.ColonyCase;
import broodtide.assessment.Obstacles;
import broodtide.assessment.Outcome;
import broodtide.assessment.PlanCheck;
import broodtide.assessment.PlanRun;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Progress;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.Watched;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import broodtide.measure.Unworkable;
import broodtide.wash.Wash;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * One rule through one season. A member's treatments hang on its own washes, so members are kept
 * together by what has been done to them; at each wash day every such group is run from the start
 * to that day, washed, and parted by what is decided. Runs from the start cost time but leave
 * nothing to be carried over that could go wrong.
 */
final class RulePlay {
  private static final Watched FOR_WASHES =
      Watched.daily(Set.of(Quantity.INFESTATION, Quantity.ADULTS));

  private final ColonyCase colony;
  private final SeasonPosterior posterior;
  private final WashRound round;
  private final List<LocalDate> dates;
  private final WashDraws luck;
  private final Rule rule;
  private final Workers workers;
  private final int members;

  private final double[] treatments;
  private final double[] misses;
  private final double[] needless;
  private final double[] blocked;

  /** How likely all members together were to be alive when the colony last was. */
  private double standing = Double.NaN;

  /** Whether there is a treatment threshold on any wash day. */
  private boolean judged;

  /** Whether it can be said of any treatment, or of there being none, that it was needless. */
  private boolean needlessKnown;

  /** Members by what has been done to them, each group in rising order. */
  private Map<List<Rule.Placed>, int[]> groups = new LinkedHashMap<>();

  RulePlay(
      ColonyCase colony,
      SeasonPosterior posterior,
      WashRound round,
      List<LocalDate> dates,
      WashDraws luck,
      Rule rule,
      Workers workers) {
    this.colony = colony;
    this.posterior = posterior;
    this.round = round;
    this.dates = dates;
    this.luck = luck;
    this.rule = rule;
    this.workers = workers;
    members = posterior.members().size();
    treatments = new double[members];
    misses = new double[members];
    needless = new double[members];
    blocked = new double[members];
  }

  RuleResult play() {
    List<Rule.Placed> planned =
        rule instanceof Rule.Calendar c ? c.treatments() : List.<Rule.Placed>of();
    int[] all = new int[members];
    Arrays.setAll(all, m -> m);
    groups.put(planned, all);
    needlessKnown = !(rule instanceof Rule.Calendar);
    planned.forEach(this::needlessByCalendar);
    inHand(all);
    List<RuleResult.WashDay> days = new ArrayList<>();
    for (int k = 0; k < dates.size(); k++) {
      days.add(wash(k, dates.get(k)));
    }
    return end(days);
  }

  /** One wash day: every group is washed and parted. */
  private RuleResult.WashDay wash(int k, LocalDate day) {
    double[] tally = new double[4];
    Optional<Double> threshold = colony.thresholdOn(day);
    judged |= threshold.isPresent();
    Map<List<Rule.Placed>, int[]> next = new LinkedHashMap<>();
    for (Map.Entry<List<Rule.Placed>, int[]> group : groups.entrySet()) {
      int[] who = group.getValue();
      PlanRun run = run(begunBy(group.getKey(), day), who, day, FOR_WASHES);
      double[] truth = run.infestation(day);
      double[] living = living(run, day);
      boolean lately = treatedLately(group.getKey(), day);
      Optional<Rule.Placed> treatment = possible(group.getKey(), day);
      List<Integer> treated = new ArrayList<>();
      List<Integer> left = new ArrayList<>();
      for (int i = 0; i < who.length; i++) {
        int m = who[i];
        boolean asks = !lately && asks(k, m, truth[i], day);
        boolean begins = asks && treatment.isPresent();
        boolean over = over(truth[i], threshold);
        blocked[m] += asks && !begins ? living[i] : 0;
        tally[0] += over ? living[i] : 0;
        tally[1] += begins ? living[i] : 0;
        if (over && !begins && !lately) {
          misses[m] += living[i];
          tally[2] += living[i];
        }
        if (begins) {
          treatments[m] += living[i];
          if (threshold.isPresent() && !over) {
            needless[m] += living[i];
            tally[3] += living[i];
          }
        }
        (begins ? treated : left).add(m);
      }
      put(next, group.getKey(), left);
      treatment.ifPresent(t -> put(next, with(group.getKey(), t), treated));
    }
    groups = next;
    double known = threshold.isPresent() ? members : Double.NaN;
    return new RuleResult.WashDay(
        day, tally[0] / known, tally[1] / members, tally[2] / known, tally[3] / known);
  }

  private static void put(
      Map<List<Rule.Placed>, int[]> groups, List<Rule.Placed> done, List<Integer> who) {
    if (!who.isEmpty()) {
      groups.put(done, who.stream().mapToInt(Integer::intValue).toArray());
    }
  }

  private static List<Rule.Placed> with(List<Rule.Placed> done, Rule.Placed more) {
    List<Rule.Placed> out = new ArrayList<>(done);
    out.add(more);
    return List.copyOf(out);
  }

  /** What the last wash asks for, unless it is older than the time between two washes. */
  private void inHand(int[] all) {
    LocalDate now = colony.now();
    Optional<Wash> last =
        colony.washes().stream()
            .max(Comparator.comparing(Wash::date))
            .filter(w -> !w.date().isBefore(now.minusDays(round.every())));
    if (last.isEmpty() || !asks(100.0 * last.get().mites() / last.get().beesOrAssumed(), now)) {
      return;
    }
    Optional<Rule.Placed> treatment = possible(List.of(), now.minusDays(1));
    if (treatment.isEmpty()) {
      Arrays.fill(blocked, 1);
      return;
    }
    Optional<Double> threshold = colony.thresholdOn(now);
    needlessKnown |= threshold.isPresent();
    double[] truth = run(List.of(), all, now.plusDays(1), FOR_WASHES).infestation(now);
    for (int m = 0; m < members; m++) {
      treatments[m]++;
      needless[m] += threshold.isPresent() && !over(truth[m], threshold) ? 1 : 0;
    }
    groups = new LinkedHashMap<>(Map.of(List.of(treatment.get()), all));
  }

  /** Whether a wash of a member reads over what the rule goes by. */
  private boolean asks(int k, int member, double truth, LocalDate day) {
    return asks(100.0 * luck.count(k, member, truth) / round.bees(), day);
  }

  private boolean asks(double read, LocalDate day) {
    if (!(rule instanceof Rule.Threshold t)) {
      return false;
    }
    // a treatment threshold holds from its own count on; "over N" leaves N out
    return t.perHundred().isPresent()
        ? read > t.perHundred().getAsDouble() + 1e-9
        : colony.thresholdOn(day).filter(least -> read >= least - 1e-9).isPresent();
  }

  /** Whether a colony is over the threshold of a day, as a wash would show it. */
  private boolean over(double truth, Optional<Double> threshold) {
    return threshold.filter(t -> truth * round.recovery() > t).isPresent();
  }

  /** The rule's treatment on the next day, when it can be begun after what has been done. */
  private Optional<Rule.Placed> possible(List<Rule.Placed> done, LocalDate day) {
    if (!(rule instanceof Rule.Threshold t)) {
      return Optional.empty();
    }
    LocalDate start = day.plusDays(1);
    return start.isBefore(colony.until())
            && Obstacles.of(t.control(), start, colony, controls(done)).isEmpty()
        ? Optional.of(new Rule.Placed(t.control(), start))
        : Optional.empty();
  }

  /** Whether a treatment was begun so short a time ago that it is still at work or just over. */
  private boolean treatedLately(List<Rule.Placed> done, LocalDate day) {
    return done.stream()
        .anyMatch(
            p -> {
              int wait = rule instanceof Rule.Threshold t ? t.apart() : Rule.usualWait(p.control());
              long since = day.plusDays(1).toEpochDay() - p.day().toEpochDay();
              return since >= 0 && since < wait;
            });
  }

  /**
   * A treatment by the calendar is needless in the colonies that are not over the threshold then.
   */
  private void needlessByCalendar(Rule.Placed p) {
    int[] all = new int[members];
    Arrays.setAll(all, m -> m);
    if (p.day().isBefore(colony.now()) || !p.day().isBefore(colony.until())) {
      throw new Unworkable(
          "rule \""
              + rule.name()
              + "\": "
              + p.control().name()
              + " on "
              + p.day()
              + " lies outside the days to come, "
              + colony.now()
              + " to "
              + colony.until().minusDays(1));
    }
    List<Rule.Placed> before =
        ((Rule.Calendar) rule)
            .treatments().stream().filter(o -> o.day().isBefore(p.day())).toList();
    Optional<Double> threshold = colony.thresholdOn(p.day());
    needlessKnown |= threshold.isPresent();
    PlanRun run = run(before, all, p.day().plusDays(1), FOR_WASHES);
    double[] truth = run.infestation(p.day());
    double[] living = run.living(p.day());
    for (int m = 0; m < members; m++) {
      treatments[m] += living[m];
      needless[m] += threshold.isPresent() && !over(truth[m], threshold) ? living[m] : 0;
    }
  }

  private static List<Rule.Placed> begunBy(List<Rule.Placed> done, LocalDate day) {
    return done.stream().filter(p -> !p.day().isAfter(day)).toList();
  }

  private static List<Control> controls(List<Rule.Placed> done) {
    return done.stream().map(p -> p.control().at(p.day())).toList();
  }

  private PlanRun run(List<Rule.Placed> done, int[] who, LocalDate last, Watched kept) {
    ColonyCase upTo = last.equals(colony.until()) ? colony : colony.until(last);
    Plan plan = new Plan(rule.name(), controls(done));
    Scenario season = upTo.season(plan);
    EnsembleRun run = posterior.run(season, who, kept, workers, Progress.NONE);
    return new PlanRun(upTo, plan, run, List.of());
  }

  private RuleResult end(List<RuleResult.WashDay> days) {
    double[] lost = new double[members];
    double[] infestation = new double[members];
    double[] winterBrood = new double[members];
    double[] raised = new double[members];
    Watched watched =
        Outcome.INFESTATION.watched(colony).with(Outcome.WINTER_BROOD.watched(colony));
    for (Map.Entry<List<Rule.Placed>, int[]> group : groups.entrySet()) {
      int[] who = group.getValue();
      PlanRun run = run(group.getKey(), who, colony.until(), watched);
      scatter(asAmongAll(Outcome.LOST.of(run), run), who, lost);
      scatter(Outcome.INFESTATION.of(run), who, infestation);
      scatter(Outcome.WINTER_BROOD.of(run), who, winterBrood);
      scatter(living(run, colony.winterBeesRaised()), who, raised);
    }
    boolean byCount = rule instanceof Rule.Threshold t && t.perHundred().isPresent();
    if (!judged) {
      Arrays.fill(misses, Double.NaN);
    }
    if (byCount ? !judged : !needlessKnown) {
      Arrays.fill(needless, Double.NaN);
    }
    return new RuleResult(
        rule,
        treatments,
        misses,
        needless,
        blocked,
        lost,
        infestation,
        winterBrood,
        raised,
        days,
        rule instanceof Rule.Calendar c
            ? PlanCheck.of(new Plan(rule.name(), controls(c.treatments())), colony)
            : List.of());
  }

  /** Weights of a group's members as living colonies on a day. */
  private double[] living(PlanRun run, LocalDate day) {
    return asAmongAll(run.living(day), run);
  }

  /** Weights within a group as they are among all members; all of them are together at first. */
  private double[] asAmongAll(double[] weights, PlanRun group) {
    if (Double.isNaN(standing)) {
      standing = group.standing();
    }
    double factor = group.standing() / standing;
    return Arrays.stream(weights).map(w -> w * factor).toArray();
  }

  private static void scatter(double[] values, int[] who, double[] into) {
    for (int i = 0; i < who.length; i++) {
      into[who[i]] = values[i];
    }
  }
}
