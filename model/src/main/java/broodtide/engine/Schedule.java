package broodtide.engine;

import broodtide.control.ControlEffects;
import broodtide.control.Miticide;
import broodtide.control.Plan;
import broodtide.mite.StockTraits;
import broodtide.season.Curve;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * A scenario written out day by day, so that the engines look nothing up while they run. Index 0 is
 * the start day.
 */
public final class Schedule {
  /** First day of the scenario. */
  public final LocalDate start;

  /** Days of the scenario; every array has one element for each. */
  public final int days;

  /** Share of the year gone by at the start. */
  public final double yearShare;

  /** Length in days of the year of the start, 365 or 366. */
  public final double yearLength;

  /** Days on which a brood break keeps the queen from laying. */
  public final boolean[] noLaying;

  /** Least share of eggs in drone cells, where drone comb is in. */
  public final double[] droneFloor;

  /** Daily highs, degrees Celsius. */
  private final double[] highs;

  /** Largest drone share of the year. */
  private final double mostDrones;

  final double[] laying;
  final double[] droneShare;
  final double[] winterShare;
  final double[] springRelease;

  /** Mites that arrive from other colonies, per day. */
  public final double[] immigration;

  /** Multiplier on the daughters of a mother mite, as the queen's stock sets it. */
  public final double[] fertility;

  /** Miticide courses in the order of the plan. */
  public final List<Course> courses = new ArrayList<>();

  /** Extra deaths of adult bees while a miticide acts, 1/day. */
  public final double[] beeCost;

  /** Share of the brood due for capping that a miticide costs. */
  public final double[] broodCost;

  /** Share of the drone brood that is cut out in the morning, before anything else. */
  public final double[] droneCut;

  /** Share of the adult bees that a split moves away in the morning. */
  public final double[] beesLeaving;

  /** Share of the brood that a split moves away in the morning. */
  public final double[] broodLeaving;

  /**
   * One miticide course.
   *
   * @param action share of its full hazards on each day, 0 where it does not act
   * @param onBees full hazard of mites on bees, 1/day
   * @param inCells full hazard of mites in cells, 1/day
   */
  @SuppressWarnings("ArrayRecordComponent") // one value for each day, read only, never compared
  public record Course(double[] action, double onBees, double inCells) {}

  private Schedule(Scenario s) {
    start = s.start();
    days = s.days();
    yearShare = Curve.phase(start);
    yearLength = start.lengthOfYear();
    ColonyModel model = s.model();
    noLaying = new boolean[days];
    droneFloor = new double[days];
    laying = model.climate().laying().daily(start, days);
    droneShare = model.climate().droneShare().daily(start, days);
    highs = model.climate().highs(start, days);
    mostDrones = model.climate().droneShare().peak();
    winterShare = model.climate().winterShare().daily(start, days);
    springRelease = model.climate().springRelease().daily(start, days);
    immigration = new double[days];
    fertility = new double[days];
    beeCost = new double[days];
    broodCost = new double[days];
    droneCut = new double[days];
    beesLeaving = new double[days];
    broodLeaving = new double[days];
    Arrays.fill(fertility, model.stock().fertility());
    for (int t = 0; t < days; t++) {
      immigration[t] = model.immigration().on(start.plusDays(t));
      springRelease[t] *= model.bees().springRelease();
    }
    apply(s.plan());
    for (int t = 0; t < days; t++) {
      laying[t] = noLaying[t] ? 0 : laying[t];
      droneShare[t] = Math.max(droneShare[t], droneFloor[t]);
    }
  }

  /**
   * {@return the days of a scenario written out}
   *
   * @param scenario the rates, the plan and the days
   */
  public static Schedule of(Scenario scenario) {
    return new Schedule(scenario);
  }

  private void apply(Plan plan) {
    Days colony = new Days();
    plan.controls().forEach(control -> control.act(colony));
  }

  /** Writes what controls do into the days. */
  private final class Days implements ControlEffects {
    @Override
    public void stopLaying(LocalDate from, int length) {
      int first = index(from);
      Arrays.fill(noLaying, first, Math.min(days, first + length), true);
    }

    @Override
    public void rearDrones(LocalDate from, LocalDate until, double share) {
      for (int t = index(from); t < Math.min(days, index(until)); t++) {
        double season = mostDrones > 0 ? droneShare[t] / mostDrones : 0;
        droneFloor[t] = Math.max(droneFloor[t], share * season);
      }
    }

    @Override
    public void cutDroneBrood(LocalDate day, double share) {
      take(droneCut, day, share);
    }

    @Override
    public void moveBees(LocalDate day, double share) {
      take(beesLeaving, day, share);
    }

    @Override
    public void moveBrood(LocalDate day, double share) {
      take(broodLeaving, day, share);
    }

    @Override
    public void treat(
        Miticide substance, LocalDate from, LocalDate to, Predicate<LocalDate> actsOn) {
      double[] action = new double[days];
      courses.add(new Course(action, substance.onBees(), substance.inCells()));
      for (int t = index(from); t < Math.min(days, index(to) + 1); t++) {
        if (actsOn.test(start.plusDays(t))) {
          double cost = substance.warmth().cost(highs[t]);
          action[t] = substance.warmth().action(highs[t]);
          beeCost[t] += Math.min(1, cost * substance.beeCost());
          broodCost[t] = together(broodCost[t], Math.min(1, cost * substance.broodCost()));
        }
      }
    }

    @Override
    public void replaceStock(StockTraits stock, ToDoubleFunction<LocalDate> takenOver) {
      for (int t = 0; t < days; t++) {
        double share = takenOver.applyAsDouble(start.plusDays(t));
        fertility[t] += share * (stock.fertility() - fertility[t]);
      }
    }

    private void take(double[] shares, LocalDate day, double share) {
      int t = index(day);
      if (t < days) {
        shares[t] = together(shares[t], share);
      }
    }
  }

  private int index(LocalDate day) {
    return Math.toIntExact(day.toEpochDay() - start.toEpochDay());
  }

  /**
   * {@return the first day after a day on which anything of the plan changes or happens, or {@link
   * #days} when nothing more does}
   *
   * @param day index of a day, from 0
   */
  public int nextBreak(int day) {
    int t = day + 1;
    while (t < days && steady(t)) {
      t++;
    }
    return t;
  }

  private boolean steady(int t) {
    boolean same =
        noLaying[t] == noLaying[t - 1]
            && droneFloor[t] == droneFloor[t - 1]
            && immigration[t] == immigration[t - 1]
            && beeCost[t] == beeCost[t - 1]
            && broodCost[t] == broodCost[t - 1]
            && droneCut[t] == 0
            && beesLeaving[t] == 0
            && broodLeaving[t] == 0;
    for (Course c : courses) {
      same &= c.action()[t] == c.action()[t - 1];
    }
    return same;
  }

  /** Whether nothing differs from a schedule on any of its days, which may be fewer. */
  boolean beginsLike(Schedule fewer) {
    boolean same =
        start.equals(fewer.start)
            && begins(laying, fewer.laying)
            && begins(droneShare, fewer.droneShare)
            && begins(winterShare, fewer.winterShare)
            && begins(springRelease, fewer.springRelease)
            && begins(immigration, fewer.immigration)
            && begins(fertility, fewer.fertility)
            && begins(beeCost, fewer.beeCost)
            && begins(broodCost, fewer.broodCost)
            && begins(droneCut, fewer.droneCut)
            && begins(beesLeaving, fewer.beesLeaving)
            && begins(broodLeaving, fewer.broodLeaving)
            && courses.size() >= fewer.courses.size();
    for (int c = 0; same && c < courses.size(); c++) {
      Course ours = courses.get(c);
      if (c < fewer.courses.size()) {
        Course theirs = fewer.courses.get(c);
        same =
            begins(ours.action, theirs.action)
                && ours.onBees == theirs.onBees
                && ours.inCells == theirs.inCells;
      } else {
        same = begins(ours.action, new double[fewer.days]);
      }
    }
    return same;
  }

  private static boolean begins(double[] longer, double[] with) {
    return longer.length >= with.length
        && Arrays.equals(longer, 0, with.length, with, 0, with.length);
  }

  /** Share taken when two measures each take theirs. */
  private static double together(double a, double b) {
    return 1 - (1 - a) * (1 - b);
  }
}
