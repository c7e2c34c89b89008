package broodtide.assessment;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlKind;
import broodtide.colony.BroodTimes;
import broodtide.control.Control;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.season.Climate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

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
                          + ": supers are usually on for "
                          + daysWithSupers(course, climate)
                          + " of its days; the label decides"));
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
                + ": capped brood usually hides mites from it then");
      }
    }
    out.addAll(sameTwice(plan, whole));
    return out;
  }

  /** Where a plan uses the active substance that was used before it once more. */
  private static List<String> sameTwice(Plan plan, Plan whole) {
    List<String> out = new ArrayList<>();
    List<MiticideCourse> inOrder =
        whole.courses().stream().sorted(Comparator.comparing(MiticideCourse::from)).toList();
    for (int i = 1; i < inOrder.size(); i++) {
      MiticideCourse course = inOrder.get(i);
      Optional<String> substance = substance(course);
      if (plan.courses().contains(course)
          && substance.isPresent()
          && substance.equals(substance(inOrder.get(i - 1)))) {
        out.add(
            course.name()
                + " from "
                + course.from()
                + ": "
                + substance.get()
                + " again; changing slows resistance (common practice)");
      }
    }
    return out;
  }

  private static Optional<String> substance(MiticideCourse course) {
    String name = course.substance().name();
    return Catalog.CONTROLS.names().contains(name)
        ? Catalog.control(name).substance()
        : Optional.empty();
  }

  /** Whether a course is over before the brood that hides mites from it has emerged. */
  private static boolean sparesBrood(MiticideCourse course, Plan whole, ColonyCase c) {
    return course.substance().inCells() == 0
        && course.to().isBefore(course.from().plusDays(BroodTimes.WORKER.capped()))
        && Obstacles.cappedBrood(course.from(), whole, c.model().climate());
  }

  /**
   * {@return whether supers are usually on while a treatment acts that some labels allow under them
   * and others do not}
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
   * {@return days of a course on which supers are usually on}
   *
   * @param course the treatment
   * @param climate the year of the place
   */
  public static int daysWithSupers(MiticideCourse course, Climate climate) {
    return Math.toIntExact(course.actingDays().filter(climate.supers()::holds).count());
  }
}
