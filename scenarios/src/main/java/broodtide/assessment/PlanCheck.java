package broodtide.assessment;

import broodtide.colony.BroodTimes;
import broodtide.control.Control;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.season.Climate;
import java.time.LocalDate;
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
      Obstacle.of(control, climate).forEach(o -> out.add(o.words()));
      if (labelDecides(control, climate)) {
        out.add(
            control.name()
                + " from "
                + control.from()
                + ": honey supers usually stand on "
                + daysWithSupers((MiticideCourse) control, climate)
                + " of its days; the label decides whether it may be used then");
      }
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
    for (Control control : plan.controls()) {
      if (control instanceof MiticideCourse course && sparesBrood(course, whole, c)) {
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
        && Obstacle.cappedBrood(course.from(), whole, c.model().climate());
  }

  /**
   * {@return whether honey supers usually stand while a treatment acts that some labels allow under
   * them and others do not}
   *
   * @param control the control on its days
   * @param climate the year of the place
   */
  static boolean labelDecides(Control control, Climate climate) {
    return control instanceof MiticideCourse course
        && course.substance().supers() == Miticide.SupersRule.LABEL_DECIDES
        && daysWithSupers(course, climate) > 0;
  }

  /**
   * {@return days of a course on which honey supers usually stand}
   *
   * @param course the treatment
   * @param climate the year of the place
   */
  public static int daysWithSupers(MiticideCourse course, Climate climate) {
    int days = 0;
    for (LocalDate d = course.from(); !d.isAfter(course.to()); d = d.plusDays(1)) {
      days += course.actsOn(d) && climate.supers().holds(d) ? 1 : 0;
    }
    return days;
  }
}
