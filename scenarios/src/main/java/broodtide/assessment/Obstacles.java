package broodtide.assessment;

import broodtide.catalog.ControlKind;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.Obstacle;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.measure.RefusedException;
import broodtide.season.Climate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What keeps controls from being begun on a day in a colony. */
public final class Obstacles {
  /** Days from laying to the end of the last drone's capping. */
  private static final int LAST_DRONE = 24;

  /** Days from laying to the first worker's capping. */
  private static final int FIRST_CAPPING = 9;

  private Obstacles() {}

  /**
   * {@return the first thing that keeps a control from being begun on a day in a case, if any does}
   *
   * @param template the control of the library
   * @param start first day of the control
   * @param c the colony, with what was done already
   */
  public static Optional<Obstacle> of(ControlTemplate template, LocalDate start, ColonyCase c) {
    return of(template, start, c, List.of());
  }

  /**
   * {@return the same after other controls of a plan, besides those that the case has been given}
   *
   * @param template the control of the library
   * @param start first day of the control
   * @param c the colony, with what was done already
   * @param before the controls of the plan that come earlier
   */
  public static Optional<Obstacle> of(
      ControlTemplate template, LocalDate start, ColonyCase c, List<Control> before) {
    Control control = template.at(start);
    Plan plan;
    try {
      List<Control> controls = new ArrayList<>(before);
      controls.add(control);
      plan = c.season(new Plan(template.name(), controls)).plan();
    } catch (RefusedException e) {
      return Optional.of(new Obstacle(Obstacle.Kind.CLASH, e.reason()));
    }
    List<Obstacle> found =
        new ArrayList<>(ControlKind.of(control).obstacles(control, c.model().climate()));
    if (needsNoBrood(template) && cappedBrood(start, plan, c.model().climate())) {
      found.add(
          new Obstacle(
              Obstacle.Kind.BROOD,
              template.title()
                  + " on "
                  + start
                  + ": there is capped brood then, which it does not reach"));
    }
    return found.stream().findFirst();
  }

  /** Whether a control reaches mites on bees alone and was measured in colonies without brood. */
  static boolean needsNoBrood(ControlTemplate template) {
    return template.usual().course().filter(t -> t.substance().inCells() == 0).isPresent()
        && template.efficacy().isPresent()
        && template.efficacy().get().setting().broodless();
  }

  /**
   * {@return whether a colony usually has capped brood on a day}
   *
   * @param day the day
   * @param plan what is done; its brood breaks and moved brood are counted
   * @param climate the year of the place
   */
  public static boolean cappedBrood(LocalDate day, Plan plan, Climate climate) {
    LocalDate cleared = LocalDate.MIN;
    for (Control c : plan.controls()) {
      LocalDate gone = c.broodless().filter(d -> !d.isAfter(day)).orElse(LocalDate.MIN);
      cleared = cleared.isAfter(gone) ? cleared : gone;
    }
    for (int i = FIRST_CAPPING; i <= LAST_DRONE; i++) {
      LocalDate laid = day.minusDays(i);
      if (!laid.isBefore(cleared) && climate.laying().at(laid) > 0 && !plan.broodBreakOn(laid)) {
        return true;
      }
    }
    return false;
  }
}
