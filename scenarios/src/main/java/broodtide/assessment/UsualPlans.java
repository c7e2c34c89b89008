package broodtide.assessment;

import broodtide.catalog.ControlTemplate;
import broodtide.control.Control;
import broodtide.control.DroneCombRemoval;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.lesson.Library;
import broodtide.season.Climate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The plans that a beekeeper would weigh first: wait, cut drone comb, treat now, treat after
 * harvest, treat late. For beekeepers who name no treatment, the first one of a short list, in the
 * order of their published efficacy and miticides that stay in wax last, that suits the warmth and
 * the supers of the day is taken; in the broodless time that is a dribble of oxalic acid.
 */
public final class UsualPlans {
  /** The plan that does nothing. */
  public static final String WAIT = "wait";

  private static final List<String> WITH_BROOD =
      List.of("thymol", "formic-slow", "formic-strips", "amitraz-strips");
  private static final String BROODLESS = "oxalic-dribble";
  private static final String DRONE_COMB = "drone-comb-part";

  private UsualPlans() {}

  /**
   * {@return the plans that fit into the days ahead}
   *
   * @param c the colony
   * @param treatment the treatment to lay at each date; empty to choose by date
   */
  public static List<Plan> of(ColonyCase c, Optional<ControlTemplate> treatment) {
    List<Plan> plans = new ArrayList<>();
    plans.add(Plan.waiting(WAIT));
    droneComb(c).ifPresent(plans::add);
    YearStages stages = c.stages();
    LocalDate harvest = stages.afterHarvest(c.now());
    treat("now", c.now(), c, treatment).ifPresent(plans::add);
    if (harvest.isAfter(c.now().plusDays(2))) {
      treat("after harvest", harvest, c, treatment).ifPresent(plans::add);
    }
    late(c, stages, harvest)
        .filter(day -> day.isAfter(c.now()) && !day.equals(harvest))
        .flatMap(day -> treat("late", day, c, treatment))
        .ifPresent(plans::add);
    return List.copyOf(plans);
  }

  private static Optional<LocalDate> late(ColonyCase c, YearStages stages, LocalDate harvest) {
    LocalDate from =
        stages.raisedAlready(c.now()) ? c.now() : stages.endOfWinterBees(harvest).plusDays(1);
    LocalDate late = stages.broodless(from).filter(d -> d.isBefore(c.until())).orElse(from);
    return late.isBefore(c.until()) ? Optional.of(late) : Optional.empty();
  }

  private static Optional<Plan> treat(
      String when, LocalDate day, ColonyCase c, Optional<ControlTemplate> treatment) {
    if (!day.isBefore(c.until())) {
      return Optional.empty();
    }
    ControlTemplate chosen = treatment.orElseGet(() -> suited(day, c));
    return Optional.of(new Plan(chosen.name() + " " + when, List.of(chosen.at(day))));
  }

  private static ControlTemplate suited(LocalDate day, ColonyCase c) {
    if (c.stages().broodless(day).filter(day::equals).isPresent()) {
      return Library.control(BROODLESS);
    }
    for (String name : WITH_BROOD) {
      ControlTemplate template = Library.control(name);
      if (suits((MiticideCourse) template.at(day), c.model().climate())) {
        return template;
      }
    }
    return Library.control(WITH_BROOD.get(0));
  }

  private static boolean suits(MiticideCourse course, Climate climate) {
    Miticide substance = course.substance();
    double high = climate.warmth().at(course.from());
    return high >= substance.coolest()
        && high <= substance.warmest()
        && (substance.supers() != Miticide.SupersRule.OFF
            || PlanCheck.daysWithSupers(course, climate) == 0);
  }

  private static Optional<Plan> droneComb(ColonyCase c) {
    Climate climate = c.model().climate();
    Control control = Library.control(DRONE_COMB).at(c.now());
    if (!(control instanceof DroneCombRemoval removal) || climate.droneShare().at(c.now()) <= 0) {
      return Optional.empty();
    }
    List<LocalDate> cuts =
        removal.cuts().stream()
            .filter(d -> climate.droneShare().at(d.minusDays(14)) > 0 && d.isBefore(c.until()))
            .toList();
    if (cuts.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Plan(
            "cut drone comb",
            List.of(
                new DroneCombRemoval(
                    removal.name(), c.now(), cuts, removal.taken(), removal.droneShare()))));
  }
}
