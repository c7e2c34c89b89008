package broodtide.assessment;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.control.DroneCombRemoval;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.measure.Unworkable;
import broodtide.season.Climate;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The plans that a beekeeper would weigh first: wait, cut drone comb, treat now, treat after
 * harvest, the same with oxalic acid in the broodless winter, cage the queen and dribble oxalic
 * acid on the day of her release, treat late.
 *
 * <p>Where no treatment is named, each day takes the first of a short list that suits its warmth
 * and its supers. The list goes by published efficacy, with miticides that stay in wax last. It
 * holds active substances of several makers with several trials, and none that amounts to one
 * product. In the broodless time oxalic acid is dribbled, and its vapour is a plan beside it.
 * Treating now is left out while supers keep every treatment of the list off the hive.
 */
public final class UsualPlans {
  /** The plan that does nothing. */
  public static final String WAIT = "wait";

  private static final List<String> WITH_BROOD = List.of("thymol", "formic-slow", "amitraz-strips");
  private static final String BROODLESS = "oxalic-dribble";
  private static final String VAPOUR = "oxalic-vapour";
  private static final String DRONE_COMB = "drone-comb-part";
  private static final String CAGING = "queen-caging";
  private static final String BROODLESS_BY_CAGING = "oxalic-dribble-caged";

  private UsualPlans() {}

  /**
   * {@return the plans that fit into the days ahead, at most eight, with treatments that suit each
   * date}
   *
   * @param c the colony
   */
  public static List<Plan> of(ColonyCase c) {
    return of(c, Optional.empty());
  }

  /**
   * {@return the plans that fit into the days ahead, at most eight}
   *
   * @param c the colony
   * @param treatment the treatment to lay at each date; empty to choose by date. The oxalic acid
   *     that follows a late-summer treatment in winter stays a dribble.
   */
  public static List<Plan> of(ColonyCase c, Optional<ControlTemplate> treatment) {
    return of(c, treatment, "now");
  }

  /**
   * {@return the same plans as of another day}
   *
   * @param c the colony, decided on that day
   * @param treatment the treatment to lay at each date; empty to choose by date
   * @param today what plans that begin on that day are named after, such as {@code on 5 Oct}
   */
  public static List<Plan> of(ColonyCase c, Optional<ControlTemplate> treatment, String today) {
    List<Plan> plans = new ArrayList<>();
    plans.add(Plan.waiting(WAIT));
    droneComb(c).ifPresent(plans::add);
    YearStages stages = c.stages();
    LocalDate harvest = stages.afterHarvest(c.now());
    boolean ahead = harvest.isAfter(c.now().plusDays(2));
    if (!waitsForHarvest(c, treatment)) {
      add(today, c.now(), c, treatment, plans);
    }
    if (!ahead) {
      thenOxalic(today, c.now(), c, treatment).ifPresent(plans::add);
    } else if (harvest.isBefore(c.until())) {
      add("after harvest", harvest, c, treatment, plans);
      thenOxalic("after harvest", harvest, c, treatment).ifPresent(plans::add);
    }
    if (treatment.isEmpty()) {
      caged(c, harvest).ifPresent(plans::add);
    }
    late(c, stages, harvest)
        .filter(day -> day.isAfter(c.now()) && !day.equals(harvest))
        .ifPresent(day -> add("late", day, c, treatment, plans));
    return List.copyOf(plans);
  }

  /**
   * {@return whether no plan treats now because supers are usually on and are on for days to come}
   *
   * @param c the colony
   * @param treatment the treatment to lay at each date; empty to choose by date
   */
  public static boolean waitsForHarvest(ColonyCase c, Optional<ControlTemplate> treatment) {
    LocalDate harvest = c.stages().afterHarvest(c.now());
    return treatment.isEmpty()
        && harvest.isAfter(c.now().plusDays(2))
        && harvest.isBefore(c.until())
        && suiting(c.now(), c).isEmpty();
  }

  private static Optional<LocalDate> late(ColonyCase c, YearStages stages, LocalDate harvest) {
    LocalDate from =
        stages.raisedAlready(c.now()) ? c.now() : stages.endOfWinterBees(harvest).plusDays(1);
    LocalDate late = stages.broodless(from).filter(d -> d.isBefore(c.until())).orElse(from);
    return late.isBefore(c.until()) ? Optional.of(late) : Optional.empty();
  }

  private static void add(
      String when,
      LocalDate day,
      ColonyCase c,
      Optional<ControlTemplate> treatment,
      List<Plan> into) {
    ControlTemplate chosen = treatment.orElseGet(() -> suited(day, c));
    into.add(new Plan(chosen.name() + " " + when, List.of(chosen.at(day))));
    if (treatment.isEmpty() && chosen.name().equals(BROODLESS)) {
      into.add(new Plan(VAPOUR + " " + when, List.of(Catalog.control(VAPOUR).at(day))));
    }
  }

  /** The same treatment, and a dribble of oxalic acid once the winter leaves no brood. */
  private static Optional<Plan> thenOxalic(
      String when, LocalDate day, ColonyCase c, Optional<ControlTemplate> treatment) {
    YearStages stages = c.stages();
    if (stages.raisedAlready(day)) {
      return Optional.empty();
    }
    ControlTemplate first = treatment.orElseGet(() -> suited(day, c));
    return stages
        .broodless(stages.endOfWinterBees(day).plusDays(1))
        .filter(winter -> winter.isBefore(c.until()))
        .map(
            winter ->
                new Plan(
                    first.name() + " " + when + " + oxalic",
                    List.of(first.at(day), Catalog.control(BROODLESS).at(winter))));
  }

  /**
   * The queen caged so that she is free, and the dribble falls, on the day on which the supers come
   * off (Buchler et al. 2020: 89.6 % in ten countries). Only where that ends before winter bees are
   * reared, which need her brood.
   */
  private static Optional<Plan> caged(ColonyCase c, LocalDate harvest) {
    LocalDate soonest = Catalog.control(CAGING).at(c.now()).to().plusDays(1);
    long days = ChronoUnit.DAYS.between(c.now(), soonest);
    LocalDate free = harvest.isBefore(soonest) ? soonest : harvest;
    LocalDate caged = free.minusDays(days);
    Climate climate = c.model().climate();
    boolean brood = climate.laying().at(caged) > 0 && climate.laying().at(free) > 0;
    if (!brood
        || free.isAfter(c.stages().nextWinterBees(c.now()))
        || climate.supers().holds(free)
        || !free.isBefore(c.until())) {
      return Optional.empty();
    }
    return Optional.of(
        new Plan(
            CAGING + " + oxalic",
            List.of(
                Catalog.control(CAGING).at(caged), Catalog.control(BROODLESS_BY_CAGING).at(free))));
  }

  /**
   * {@return plans with a beekeeper's own after them; one of the own whose name is taken is marked
   * as such, {@code thymol 5 Aug (own)}}
   *
   * @param plans the plans that there are
   * @param own the beekeeper's own
   * @throws Unworkable when one of the own is given twice
   */
  public static List<Plan> with(List<Plan> plans, List<Plan> own) {
    List<Plan> all = new ArrayList<>(plans);
    for (int i = 0; i < own.size(); i++) {
      Plan plan = own.get(i);
      if (own.subList(0, i).contains(plan)) {
        throw new Unworkable("--plan gives " + plan.name() + " twice; leave one of the two out");
      }
      String name = plan.name();
      for (int n = 1; taken(name, all); n++) {
        name = plan.name() + (n == 1 ? " (own)" : " (own " + n + ")");
      }
      all.add(new Plan(name, plan.controls()));
    }
    return List.copyOf(all);
  }

  /**
   * {@return plans with waiting before them where none of them waits, for every plan is held
   * against it}
   *
   * @param plans the plans that there are
   */
  public static List<Plan> besideWaiting(List<Plan> plans) {
    if (plans.stream().anyMatch(p -> p.controls().isEmpty())) {
      return plans;
    }
    String name = taken(WAIT, plans) ? WAIT + " (nothing done)" : WAIT;
    return Stream.concat(Stream.of(Plan.waiting(name)), plans.stream()).toList();
  }

  private static boolean taken(String name, List<Plan> plans) {
    return plans.stream().anyMatch(p -> p.name().equals(name));
  }

  private static ControlTemplate suited(LocalDate day, ColonyCase c) {
    return suiting(day, c).orElseGet(() -> Catalog.control(WITH_BROOD.get(0)));
  }

  private static Optional<ControlTemplate> suiting(LocalDate day, ColonyCase c) {
    if (c.stages().broodless(day).filter(day::equals).isPresent()) {
      return Optional.of(Catalog.control(BROODLESS));
    }
    return WITH_BROOD.stream()
        .map(Catalog::control)
        .filter(
            template ->
                template.at(day).course().filter(t -> suits(t, c.model().climate())).isPresent())
        .findFirst();
  }

  private static boolean suits(MiticideCourse course, Climate climate) {
    Miticide substance = course.substance();
    double high = climate.high(course.from());
    return high >= substance.coolest()
        && high <= substance.warmest()
        && (substance.supers() != Miticide.SupersRule.OFF
            || PlanCheck.daysWithSupers(course, climate) == 0);
  }

  private static Optional<Plan> droneComb(ColonyCase c) {
    Climate climate = c.model().climate();
    DroneCombRemoval removal = (DroneCombRemoval) Catalog.control(DRONE_COMB).at(c.now());
    if (climate.droneShare().at(c.now()) <= 0) {
      return Optional.empty();
    }
    List<LocalDate> cuts =
        removal.cuts().stream()
            .filter(d -> climate.droneShare().at(d.minusDays(14)) > 0 && d.isBefore(c.until()))
            .toList();
    if (cuts.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new Plan("cut drone comb", List.of(removal.withCuts(cuts))));
  }
}
