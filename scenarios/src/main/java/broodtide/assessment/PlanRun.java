package broodtide.assessment;

import broodtide.assessment.FiguresByMember.Kind;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.engine.EnsembleRun;
import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.engine.SpringLow;
import broodtide.engine.Survival;
import broodtide.engine.Watched;
import broodtide.wash.Wash;
import broodtide.wash.WashMethod;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * One plan played out by every colony that fits the washes.
 *
 * <p>Each simulated colony weighs by its chance of being alive, see {@link Survival}: since the
 * last wash, which found it alive, or since the first day where there was none. Middles and bands
 * are those of living colonies; chances of loss sum what is missing. No colony is taken out.
 */
public final class PlanRun {
  /** Thresholds are counts of alcohol washes, which find fewer mites than there are. */
  public static final double SHOWN_BY_A_WASH = WashMethod.ALCOHOL.recovery().mean();

  /** Simulated colonies whose highest infestations are looked for at most. Choice. */
  private static final int MOST_PEAKS = 16_384;

  /** Quantities that are kept on nearly every day, and room for those that are kept on some. */
  public static final int MOST_KEPT = 4;

  private final ColonyCase colony;
  private final Plan plan;
  private final Supplier<Played> played;
  private final List<String> objections;

  /** Another plan of the same colonies, whose days up to the decision are these, too. */
  private final Optional<PlanRun> like;

  private final Lazy<Double> standing = new Lazy<>(this::findStanding);
  private final Map<LocalDate, Double> lostBy = new ConcurrentHashMap<>();
  private final Map<LocalDate, QuantileSummary> byYard = new ConcurrentHashMap<>();
  private final Lazy<QuantileSummary> peaks = new Lazy<>(this::findPeaks);
  private final Lazy<LocalDate> peakDay = new Lazy<>(this::findPeakDay);
  private final Lazy<CrossingDays> crossing = new Lazy<>(this::findCrossing);
  private final Lazy<double[]> winterBrood = new Lazy<>(this::findWinterBrood);
  private final Lazy<QuantileSummary> winterBroodBand = new Lazy<>(this::findWinterBroodBand);
  private final Lazy<PlanSummary> summary = new Lazy<>(() -> PlanSummary.of(this));
  private final Lazy<Integer> members = new Lazy<>(() -> run().members());
  private final Lazy<Double> mitesWhenLost = new Lazy<>(this::findMitesWhenLost);
  private final Map<Quantity, Map<LocalDate, QuantileSummary>> summed = new ConcurrentHashMap<>();

  private final FiguresByMember byMember = new FiguresByMember();

  /** The colonies day by day, and how likely each is alive. */
  record Played(EnsembleRun run, Lazy<LifeChances> chances) {}

  /**
   * A finished run.
   *
   * @param colony the case
   * @param plan the plan, without what was already done
   * @param run the colonies, day by day, with what is {@link #watched}
   * @param objections what stands against the plan in its calendar
   */
  public PlanRun(ColonyCase colony, Plan plan, EnsembleRun run, List<String> objections) {
    this(colony, plan, fixed(played(colony, run)), objections, Optional.empty());
  }

  /** A run that may have to be played again. */
  PlanRun(
      ColonyCase colony,
      Plan plan,
      Supplier<Played> played,
      List<String> objections,
      Optional<PlanRun> like) {
    this.colony = colony;
    this.plan = plan;
    this.played = played;
    this.objections = List.copyOf(objections);
    this.like = like;
  }

  private static Supplier<Played> fixed(Played played) {
    return () -> played;
  }

  /** A run of a case, with how likely its colonies are alive. */
  static Played played(ColonyCase colony, EnsembleRun run) {
    LocalDate from = knownAlive(colony);
    return new Played(
        run, new Lazy<>(() -> new LifeChances(colony.winter().survival(), run, from)));
  }

  /**
   * The same run for a case that looks less far ahead and differs in nothing else; its figures are
   * those of a run of its own.
   */
  PlanRun upTo(ColonyCase shorter) {
    Played longer = played.get();
    Played part = new Played(longer.run().upTo(shorter.season(plan)), longer.chances());
    return new PlanRun(shorter, plan, fixed(part), PlanCheck.of(plan, shorter), Optional.empty());
  }

  /** Works out what is asked of every plan, so that its days need not be kept. */
  void sumUp() {
    LocalDate last = springLow().map(SpringLow::day).orElse(colony.until());
    Set<LocalDate> asked =
        Stream.of(knownAlive(), colony.now(), colony.winterBeesRaised(), colony.until(), last)
            .collect(Collectors.toUnmodifiableSet());
    byMember.keep(asked);
    for (LocalDate day : asked) {
      if (!day.isAfter(colony.until())) {
        infestation(day);
      }
      living(day);
    }
    springLow().ifPresent(this::winterLosses);
    members();
    PlanDay.all(this);
    summary();
    peaks();
    crossing();
    winterBrood();
    losses();
    lossByYard(last);
    mitesWhenRaised();
    LocalDate end = last.isAfter(colony.until()) ? last : colony.until();
    for (LocalDate day = knownAlive(); !day.isAfter(end); day = day.plusDays(1)) {
      shareLost(day);
    }
  }

  /**
   * {@return what is kept of every colony: bees of every day, infestation up to the last day that
   * is looked at, mites from when the colony was last known to be alive, infested cells while
   * winter bees are raised, and winter bees in spring}
   *
   * @param c the case
   */
  public static Watched watched(ColonyCase c) {
    Set<LocalDate> spring = c.springLow().map(low -> Set.of(low.day())).orElse(Set.of());
    LocalDate last = c.springLow().map(SpringLow::day).orElse(c.until());
    Stream<LocalDate> raised =
        Stream.of(c.winterBeesRaised()).filter(day -> !day.isBefore(c.start()));
    Stream<LocalDate> sinceAlive = knownAlive(c).datesUntil(last.plusDays(1));
    return Watched.daily(Set.of(Quantity.ADULTS))
        .and(
            Quantity.INFESTATION,
            c.start().datesUntil(c.until().plusDays(1)).collect(Collectors.toUnmodifiableSet()))
        .and(
            Quantity.MITES,
            Stream.concat(sinceAlive, raised).collect(Collectors.toUnmodifiableSet()))
        .and(Quantity.INFESTED_WORKER_SHARE, Set.copyOf(c.winterBroodDays()))
        .and(Quantity.WINTER_BEES, spring);
  }

  /** {@return the case} */
  public ColonyCase colony() {
    return colony;
  }

  /** {@return the plan, without what was already done} */
  public Plan plan() {
    return plan;
  }

  /** {@return the figures that decisions rest on} */
  public PlanSummary summary() {
    return summary.get();
  }

  /** {@return the colonies, day by day} */
  public EnsembleRun run() {
    return played.get().run();
  }

  private LifeChances alive() {
    return played.get().chances().get();
  }

  private int index(LocalDate day) {
    return run().index(day);
  }

  /** Simulated colonies. */
  int members() {
    return members.get();
  }

  /** The days that were played. */
  Scenario season() {
    return colony.season(plan);
  }

  /** {@return what stands against the plan in its calendar} */
  public List<String> objections() {
    return objections;
  }

  /**
   * {@return a quantity of living colonies on a day}
   *
   * @param quantity one of those that were kept
   * @param day a day of the run
   */
  public QuantileSummary on(Quantity quantity, LocalDate day) {
    if (like.isPresent() && !day.isAfter(colony.now())) {
      return like.get().on(quantity, day);
    }
    return summed
        .computeIfAbsent(quantity, q -> new ConcurrentHashMap<>())
        .computeIfAbsent(day, d -> QuantileSummary.of(run().values(quantity, d), living(d)));
  }

  /**
   * {@return mites per 100 adult bees on a day, by member, whether it lives or not}
   *
   * @param day a day of the run
   */
  public double[] infestation(LocalDate day) {
    return byMember.get(Kind.INFESTATION, day, () -> run().values(Quantity.INFESTATION, day));
  }

  /** Adult bees on a day, by member. */
  double[] adults(LocalDate day) {
    return byMember.get(Kind.ADULTS, day, () -> run().values(Quantity.ADULTS, day));
  }

  /** The fewest adult bees up to a day since the colony was last known to be alive, by member. */
  double[] fewestAdults(LocalDate day) {
    return byMember.get(Kind.FEWEST, day, () -> run().least(Quantity.ADULTS, knownAlive(), day));
  }

  /** {@return the day on which the colony was last known to be alive} */
  LocalDate knownAlive() {
    return knownAlive(colony);
  }

  private static LocalDate knownAlive(ColonyCase colony) {
    return colony.washes().stream()
        .map(Wash::date)
        .filter(day -> !day.isAfter(colony.until()))
        .max(Comparator.naturalOrder())
        .orElse(colony.start());
  }

  /**
   * {@return how likely any member was to be alive on the day of the last wash, before that wash
   * found it so; above 0, at most 1} Runs of some of the members are put together with it.
   */
  public double standing() {
    return standing.get();
  }

  private double findStanding() {
    return mean(alive().on(0));
  }

  private static double mean(float[] byMember) {
    double sum = 0;
    for (float v : byMember) {
      sum += v;
    }
    return sum / byMember.length;
  }

  /**
   * {@return the weights of members as living colonies on a day; their mean is the chance that the
   * colony is alive}
   *
   * @param day a day of the run
   */
  public double[] living(LocalDate day) {
    return byMember.get(Kind.LIVING, day, () -> findLiving(day));
  }

  private double[] findLiving(LocalDate day) {
    float[] then = alive().on(index(day));
    double standing = standing();
    double[] out = new double[then.length];
    for (int m = 0; m < out.length; m++) {
      out[m] = then[m] / standing;
    }
    return out;
  }

  /**
   * {@return chance that the colony is lost by a day: dead or too weak at any time since it was
   * last known to be alive, for whatever cause}
   *
   * @param day a day of the run
   */
  public double shareLost(LocalDate day) {
    return lostBy.computeIfAbsent(day, d -> 1 - mean(alive().on(index(d))) / standing());
  }

  /**
   * {@return the first day on which half of the simulated colonies are lost; the last day that is
   * asked about when that does not come}
   *
   * @param until the last day asked about, a day of the run
   */
  public LocalDate halfLost(LocalDate until) {
    LocalDate day = knownAlive();
    while (day.isBefore(until) && shareLost(day) < 0.5) {
      day = day.plusDays(1);
    }
    return day.isAfter(until) ? until : day;
  }

  /**
   * {@return the loss of each member by a day, weighted by how likely it was to be alive when the
   * colony last was, 0 to a little over 1; the mean is {@link #shareLost}}
   *
   * @param day a day of the run
   */
  public double[] lost(LocalDate day) {
    return byMember.get(Kind.LOST, day, () -> findLost(day));
  }

  private double[] findLost(LocalDate day) {
    float[] then = alive().on(index(day));
    float[] before = alive().on(0);
    double standing = standing();
    double[] out = new double[then.length];
    for (int m = 0; m < out.length; m++) {
      out[m] = (before[m] - then[m]) / standing;
    }
    return out;
  }

  /**
   * {@return the day in spring on which a colony of the place has the fewest bees; empty when the
   * run ends before it, or where winter losses cannot be told}
   */
  public Optional<SpringLow> springLow() {
    return colony.springLow();
  }

  /**
   * {@return chance that each member is lost by the low in spring, had it been alive when the
   * colony last was; 0 to 1} Their mean by weight is {@link #shareLost} of that day.
   *
   * @param low from {@link #springLow()}
   */
  public double[] winterLosses(SpringLow low) {
    return byMember.get(Kind.LOST_IN_WINTER, low.day(), () -> findWinterLosses(low));
  }

  private double[] findWinterLosses(SpringLow low) {
    float[] then = alive().on(index(low.day()));
    float[] before = alive().on(0);
    double[] out = new double[then.length];
    for (int m = 0; m < out.length; m++) {
      out[m] = before[m] > 0 ? 1 - then[m] / before[m] : 1;
    }
    return out;
  }

  /**
   * {@return the chance of loss by a day in yards and winters of different luck; what is not known
   * of the colony itself is averaged over in each} Colonies of one yard share its luck, so their
   * losses must not be added up as if each stood alone.
   *
   * @param day a day of the run, not before the last wash
   */
  public QuantileSummary lossByYard(LocalDate day) {
    return byYard.computeIfAbsent(day, this::findByYard);
  }

  private QuantileSummary findByYard(LocalDate day) {
    LocalDate from = knownAlive();
    return YardLuck.losses(colony.winter().survival(), adults(from), fewestAdults(day), from, day);
  }

  /**
   * {@return the loss of each member as in {@link #lost}: by the low in spring, or by the last day
   * of a run that does not reach it}
   */
  public double[] losses() {
    return lost(springLow().map(SpringLow::day).orElse(colony.until()));
  }

  /**
   * {@return mites in the colony on the day before it is lost, on average over all simulated
   * colonies, of which those that are never lost count none; up to the low in spring, or the last
   * day of a run that does not reach it} These mites can leave it with robbers. How many do is
   * measured nowhere, so that this is the most that it can give to others.
   */
  public double mitesWhenLost() {
    return mitesWhenLost.get();
  }

  private double findMitesWhenLost() {
    LifeChances living = alive();
    int last = index(springLow().map(SpringLow::day).orElse(colony.until()));
    double sum = 0;
    int first = index(knownAlive());
    float[] then = living.on(first);
    for (int day = first; day < last; day++) {
      float[] next = living.on(day + 1);
      double[] mites = run().values(Quantity.MITES, colony.start().plusDays(day));
      for (int m = 0; m < mites.length; m++) {
        sum += (then[m] - next[m]) * mites[m];
      }
      then = next;
    }
    return sum / (run().members() * standing());
  }

  /**
   * {@return chance that a wash of the colony, if it is alive on a day, shows more than a
   * threshold}
   *
   * @param threshold mites per 100 bees
   * @param day a day of the run
   */
  public double chanceOver(double threshold, LocalDate day) {
    double[] values = infestation(day);
    double[] living = living(day);
    double over = 0;
    double all = 0;
    for (int m = 0; m < values.length; m++) {
      over += Decision.over(values[m], threshold) ? living[m] : 0;
      all += living[m];
    }
    return all > 0 ? over / all : 0;
  }

  /** {@return all mites, in mites, left when the winter bees have been raised} */
  public QuantileSummary mitesWhenRaised() {
    return on(Quantity.MITES, colony.winterBeesRaised());
  }

  /** {@return highest infestation from now on while the colony lives} */
  public QuantileSummary peaks() {
    return peaks.get();
  }

  /**
   * Members weigh in with their highest so far whenever a part of them dies, and at the end. That
   * takes dozens of figures of each, so that of many members the first stand for all.
   */
  private QuantileSummary findPeaks() {
    DoubleStream.Builder tops = DoubleStream.builder();
    DoubleStream.Builder weights = DoubleStream.builder();
    double[] top = new double[Math.min(MOST_PEAKS, run().members())];
    double[] ended = new double[top.length];
    float[] living = alive().on(nowIndex());
    for (int day = nowIndex(); day <= lastIndex(); day++) {
      double[] values = infestation(colony.start().plusDays(day));
      float[] next = day == lastIndex() ? new float[top.length] : alive().on(day + 1);
      for (int m = 0; m < top.length; m++) {
        if (values[m] > top[m]) {
          if (ended[m] > 0) {
            tops.add(top[m]);
            weights.add(ended[m]);
            ended[m] = 0;
          }
          top[m] = values[m];
        }
        ended[m] += living[m] - next[m];
      }
      living = next;
    }
    for (int m = 0; m < top.length; m++) {
      tops.add(top[m]);
      weights.add(ended[m]);
    }
    return QuantileSummary.of(tops.build().toArray(), weights.build().toArray());
  }

  /** {@return day of the median colony's highest infestation} */
  public LocalDate peakDay() {
    return peakDay.get();
  }

  private LocalDate findPeakDay() {
    int best = nowIndex();
    double top = -1;
    for (int day = nowIndex(); day <= lastIndex(); day++) {
      double median = on(Quantity.INFESTATION, colony.start().plusDays(day)).median();
      if (median > top) {
        top = median;
        best = day;
      }
    }
    return colony.start().plusDays(best);
  }

  /** {@return when the colony, while it lives, first stands over the threshold of the day} */
  public CrossingDays crossing() {
    return crossing.get();
  }

  private CrossingDays findCrossing() {
    int[] days = new int[run().members()];
    double[] weights = new double[days.length];
    Arrays.fill(days, -1);
    double standing = standing();
    YearStages stages = colony.stages();
    for (int day = nowIndex(); day <= lastIndex(); day++) {
      LocalDate date = colony.start().plusDays(day);
      double threshold =
          stages.thresholdOn(colony.thresholds(), date).orElse(Double.POSITIVE_INFINITY);
      double[] then = infestation(date);
      float[] living = alive().on(day);
      for (int m = 0; m < days.length; m++) {
        if (days[m] < 0 && Decision.over(then[m], threshold)) {
          days[m] = day - nowIndex();
          weights[m] = living[m] / standing;
        }
      }
    }
    return new CrossingDays(colony.now(), days, weights);
  }

  /**
   * {@return mean share of capped worker cells with a mite while winter bees are raised, by member,
   * over the days on which there are such cells}
   */
  public double[] winterBroodInfested() {
    return winterBrood.get().clone();
  }

  /**
   * {@return the same as bands of colonies that are alive when the winter bees have been raised}
   */
  public QuantileSummary winterBrood() {
    return winterBroodBand.get();
  }

  private QuantileSummary findWinterBroodBand() {
    return QuantileSummary.of(winterBrood.get(), living(colony.winterBeesRaised()));
  }

  private double[] findWinterBrood() {
    double[] out = new double[run().members()];
    int[] days = new int[out.length];
    List<LocalDate> raising = colony.winterBroodDays();
    for (LocalDate day : raising) {
      double[] shares = run().values(Quantity.INFESTED_WORKER_SHARE, day);
      for (int m = 0; m < out.length; m++) {
        out[m] += shares[m];
        days[m] += shares[m] > 0 ? 1 : 0;
      }
    }
    for (int m = 0; m < out.length; m++) {
      out[m] = raising.isEmpty() ? Double.NaN : out[m] / Math.max(1, days[m]);
    }
    return out;
  }

  /** {@return miticide applications in the plan} */
  public int treatments() {
    return plan.courses().stream().mapToInt(MiticideCourse::applications).sum();
  }

  /** {@return days on which a miticide acts while supers are usually on} */
  public int daysTreatedWithSupers() {
    return plan.courses().stream()
        .mapToInt(c -> PlanCheck.daysWithSupers(c, colony.model().climate()))
        .sum();
  }

  private int nowIndex() {
    return days(colony.now());
  }

  private int lastIndex() {
    return days(colony.until());
  }

  private int days(LocalDate day) {
    return Math.toIntExact(ChronoUnit.DAYS.between(colony.start(), day));
  }
}
