package broodtide.assessment;

import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Quantity;
import broodtide.wash.WashMethod;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One plan played out by every colony that fits the washes.
 *
 * <p>A colony that falls below {@value #LOST_BELOW} adult bees counts as lost from that day on. Its
 * infestation, and any above one mite per bee, reads {@value #FULL}: what is left then says nothing
 * more, and no wash would be taken.
 */
public final class PlanRun {
  /** Adult bees below which a colony is lost; choice. */
  public static final int LOST_BELOW = 1000;

  /** Highest infestation that is read, mites per 100 adult bees. */
  public static final int FULL = 100;

  /** Thresholds are counts of alcohol washes, which find fewer mites than there are. */
  public static final double SHOWN_BY_A_WASH = WashMethod.ALCOHOL.recovery().mean();

  /** What is kept of every colony on every day. */
  public static final Set<Quantity> KEPT =
      Set.of(
          Quantity.INFESTATION,
          Quantity.ADULTS,
          Quantity.MITES,
          Quantity.INFESTED_WORKER_SHARE,
          Quantity.WINTER_BEES);

  private final ColonyCase colony;
  private final Plan plan;
  private final EnsembleRun run;
  private final List<String> objections;
  private final int[] lostOn;
  private final Once<Optional<SpringLow>> springLow;
  private final Once<double[]> peaks = new Once<>(this::findPeaks);
  private final Once<LocalDate> peakDay = new Once<>(this::findPeakDay);
  private final Once<int[]> daysToThreshold = new Once<>(this::findDaysToThreshold);
  private final Once<double[]> winterBrood = new Once<>(this::findWinterBrood);

  /**
   * A finished run.
   *
   * @param colony the case
   * @param plan the plan, without what was already done
   * @param run the colonies, day by day, with {@link #KEPT}
   * @param objections what stands against the plan in its calendar
   */
  public PlanRun(ColonyCase colony, Plan plan, EnsembleRun run, List<String> objections) {
    this.colony = colony;
    springLow = new Once<>(colony::springLow);
    this.plan = plan;
    this.run = run;
    this.objections = List.copyOf(objections);
    lostOn = new int[run.members()];
    for (int m = 0; m < lostOn.length; m++) {
      int day = nowIndex();
      while (day <= lastIndex() && run.value(Quantity.ADULTS, day, m) >= LOST_BELOW) {
        day++;
      }
      lostOn[m] = day;
    }
  }

  /** {@return the case} */
  public ColonyCase colony() {
    return colony;
  }

  /** {@return the plan, without what was already done} */
  public Plan plan() {
    return plan;
  }

  /** {@return the colonies, day by day} */
  public EnsembleRun run() {
    return run;
  }

  /** {@return what stands against the plan in its calendar} */
  public List<String> objections() {
    return objections;
  }

  /**
   * {@return a quantity on a day}
   *
   * @param quantity one of those that were kept
   * @param day a day of the run
   */
  public Spread on(Quantity quantity, LocalDate day) {
    return Spread.of(run.values(quantity, day));
  }

  /**
   * {@return mites per 100 adult bees on a day, by member, at most {@value #FULL}}
   *
   * @param day a day of the run
   */
  public double[] infestation(LocalDate day) {
    int index = run.index(day);
    double[] out = new double[run.members()];
    for (int m = 0; m < out.length; m++) {
      out[m] = infestation(index, m);
    }
    return out;
  }

  /**
   * {@return share of colonies that are lost by a day, 0 to 1}
   *
   * @param day a day of the run
   */
  public double shareLost(LocalDate day) {
    int index = run.index(day);
    return Arrays.stream(lostOn).filter(d -> d <= index).count() / (double) lostOn.length;
  }

  /**
   * {@return whether a member is lost by a day: 1 when it is, 0 when not}
   *
   * @param day a day of the run
   */
  public double[] lost(LocalDate day) {
    int index = run.index(day);
    return Arrays.stream(lostOn).mapToDouble(d -> d <= index ? 1 : 0).toArray();
  }

  /**
   * {@return the day in spring on which a colony of the place has the fewest bees; empty when the
   * run ends before it}
   */
  public Optional<SpringLow> springLow() {
    return springLow.get();
  }

  /**
   * {@return chance that each member is dead or too weak in spring, mites and other causes
   * together} A colony that was lost before stays lost, whatever the model makes of its last bees.
   *
   * @param low from {@link #springLow()}
   */
  public double[] winterLosses(SpringLow low) {
    double[] chances = Wintering.defaults().lost(run, low);
    int spring = run.index(low.day());
    Arrays.setAll(chances, m -> lostOn[m] <= spring ? 1 : chances[m]);
    return chances;
  }

  /**
   * {@return chance that each member is lost, the one meaning of the word wherever plans and rules
   * are judged: {@link #winterLosses} when the run reaches spring, else 1 for a colony that has
   * died out by the last day and 0 for one that has not}
   */
  public double[] losses() {
    return springLow().map(this::winterLosses).orElseGet(() -> lost(colony.until()));
  }

  /**
   * {@return winter bees that grew up without mites, on a day, by member}
   *
   * @param day a day of the run
   */
  public double[] soundWinterBees(LocalDate day) {
    return run.values(Quantity.WINTER_BEES, day);
  }

  /** {@return all mites, in mites, left when the winter bees have been raised} */
  public Spread mitesWhenRaised() {
    return on(Quantity.MITES, colony.raised());
  }

  private double infestation(int day, int member) {
    return day >= lostOn[member]
        ? FULL
        : Math.min(FULL, run.value(Quantity.INFESTATION, day, member));
  }

  /** {@return highest infestation from now on, by member} */
  public double[] peaks() {
    return peaks.get().clone();
  }

  private double[] findPeaks() {
    double[] out = new double[run.members()];
    for (int day = nowIndex(); day <= lastIndex(); day++) {
      for (int m = 0; m < out.length; m++) {
        out[m] = Math.max(out[m], infestation(day, m));
      }
    }
    return out;
  }

  /** {@return day of the median colony's highest infestation} */
  public LocalDate peakDay() {
    return peakDay.get();
  }

  private LocalDate findPeakDay() {
    int best = nowIndex();
    double top = -1;
    for (int day = nowIndex(); day <= lastIndex(); day++) {
      double median = Spread.of(infestation(colony.start().plusDays(day))).median();
      if (median > top) {
        top = median;
        best = day;
      }
    }
    return colony.start().plusDays(best);
  }

  /**
   * {@return days from now until a member first stands over the threshold of the day; -1 when it
   * never does}
   */
  public int[] daysToThreshold() {
    return daysToThreshold.get().clone();
  }

  private int[] findDaysToThreshold() {
    int[] out = new int[run.members()];
    Arrays.fill(out, -1);
    YearStages stages = colony.stages();
    for (int day = nowIndex(); day <= lastIndex(); day++) {
      LocalDate date = colony.start().plusDays(day);
      double threshold =
          stages.thresholdOn(colony.thresholds(), date).orElse(Double.POSITIVE_INFINITY);
      for (int m = 0; m < out.length; m++) {
        if (out[m] < 0 && Decision.over(infestation(day, m), threshold)) {
          out[m] = day - nowIndex();
        }
      }
    }
    return out;
  }

  /**
   * {@return mean share of capped worker cells with a mite while winter bees are raised, by member,
   * over the days on which there are such cells; a colony that is lost counts as infested
   * throughout}
   */
  public double[] winterBroodInfested() {
    return winterBrood.get().clone();
  }

  private double[] findWinterBrood() {
    double[] out = new double[run.members()];
    int[] days = new int[out.length];
    boolean raised = false;
    LocalDate end = colony.raised();
    for (LocalDate d = colony.stages().decidesFrom(colony.now());
        !d.isAfter(end);
        d = d.plusDays(1)) {
      if (colony.model().climate().winterBees().holds(d)) {
        int day = run.index(d);
        raised = true;
        for (int m = 0; m < out.length; m++) {
          double share = day >= lostOn[m] ? 1 : run.value(Quantity.INFESTED_WORKER_SHARE, day, m);
          out[m] += share;
          days[m] += share > 0 ? 1 : 0;
        }
      }
    }
    for (int m = 0; m < out.length; m++) {
      out[m] = raised ? out[m] / Math.max(1, days[m]) : Double.NaN;
    }
    return out;
  }

  /** {@return miticide applications in the plan} */
  public int treatments() {
    return courses().stream().mapToInt(MiticideCourse::applications).sum();
  }

  /** {@return days on which a miticide acts while honey supers usually stand} */
  public int daysTreatedWithSupers() {
    return courses().stream()
        .mapToInt(c -> PlanCheck.daysWithSupers(c, colony.model().climate()))
        .sum();
  }

  private List<MiticideCourse> courses() {
    return plan.controls().stream()
        .filter(c -> c instanceof MiticideCourse)
        .map(c -> (MiticideCourse) c)
        .toList();
  }

  private int nowIndex() {
    return run.index(colony.now());
  }

  private int lastIndex() {
    return run.index(colony.until());
  }
}
