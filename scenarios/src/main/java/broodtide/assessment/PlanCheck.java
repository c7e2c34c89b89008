package broodtide.assessment;

import broodtide.catalog.ControlKind;
import broodtide.colony.BroodTimes;
import broodtide.control.Control;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.season.Climate;
import java.util.ArrayList;
import java.util.List;

/** What stands against a plan in its calendar, in sentences. Nothing is changed silently. */
public final class PlanCheck {
  private PlanCheck() {}

  /**
   * {@return objections to the controls of a plan in a climate, none when there is nothing to say}
   *
   * @param plan the plan
   * @param climate the year of the place
   */
  public static List<String> of(Plan plan, Climate climate) {
    List<String> out = new ArrayList<>();
    for (Control control : plan.controls()) {
      ControlKind.of(control).obstacles(control, climate).forEach(o -> out.add(o.words()));
      control
          .course()
          .filter(course -> labelDecides(course, climate))
          .ifPresent(
              course ->
                  out.add(
                      course.name()
                          + " from "
                          + course.from()
                          + ": honey supers usually stand on "
                          + daysWithSupers(course, climate)
                          + " of its days; the label decides whether it may be used then"));
    }
    return out;
  }

  /**
   * {@return the same for a colony, where brood that hides mites is said too}
   *
   * @param plan the plan
   * @param c the colony, with what was done already
   */
  public static List<String> of(Plan plan, ColonyCase c) {
    List<String> out = new ArrayList<>(of(plan, c.model().climate()));
    Plan whole = c.withGiven(plan);
    for (MiticideCourse course : plan.courses()) {
      if (sparesBrood(course, whole, c)) {
        out.add(
            course.name()
                + " on "
                + course.from()
                + ": there is usually capped brood then, and the mites in it are not reached");
      }
    }
    return out;
  }

  /** Whether a course is over before the brood that hides mites from it has emerged. */
  private static boolean sparesBrood(MiticideCourse course, Plan whole, ColonyCase c) {
    return course.substance().inCells() == 0
        && course.to().isBefore(course.from().plusDays(BroodTimes.WORKER.capped()))
        && Obstacles.cappedBrood(course.from(), whole, c.model().climate());
  }

  /**
   * {@return whether honey supers usually stand while a treatment acts that some labels allow under
   * them and others do not}
   *
   * @param control the control on its days
   * @param climate the year of the place
   */
  public static boolean labelDecides(Control control, Climate climate) {
    return control
        .course()
        .filter(c -> c.substance().supers() == Miticide.SupersRule.LABEL_DECIDES)
        .filter(c -> daysWithSupers(c, climate) > 0)
        .isPresent();
  }

  /**
   * {@return days of a course on which honey supers usually stand}
   *
   * @param course the treatment
   * @param climate the year of the place
   */
  public static int daysWithSupers(MiticideCourse course, Climate climate) {
    return Math.toIntExact(course.actingDays().filter(climate.supers()::holds).count());
  }
}
