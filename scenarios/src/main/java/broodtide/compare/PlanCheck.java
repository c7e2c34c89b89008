package broodtide.compare;

import broodtide.control.Control;
import broodtide.control.DroneCombRemoval;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.season.Climate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What stands against a plan in its calendar, in sentences. Nothing is changed silently. */
public final class PlanCheck {
  private PlanCheck() {}

  /** Objections to the controls of a plan in a climate, none when there is nothing to say. */
  public static List<String> of(Plan plan, Climate climate) {
    List<String> out = new ArrayList<>();
    for (Control control : plan.controls()) {
      if (control instanceof MiticideCourse course) {
        temperature(course, climate, out);
        supers(course, climate, out);
      } else if (control instanceof DroneCombRemoval removal
          && climate.droneShare().at(removal.from()) <= 0) {
        out.add(
            removal.name()
                + " from "
                + removal.from()
                + ": colonies usually rear no drones then, so there may be nothing to cut");
      }
    }
    return out;
  }

  private static void temperature(MiticideCourse course, Climate climate, List<String> out) {
    Miticide substance = course.substance();
    double high = climate.warmth().at(course.from());
    if (high < substance.coolest() || high > substance.warmest()) {
      out.add(
          String.format(
              Locale.ROOT,
              "%s on %s: daily highs are usually near %.0f °C, outside its %.0f to %.0f °C",
              course.name(),
              course.from(),
              high,
              substance.coolest(),
              substance.warmest()));
    }
  }

  private static void supers(MiticideCourse course, Climate climate, List<String> out) {
    int days = daysWithSupers(course, climate);
    if (days > 0 && course.substance().supers() == Miticide.SupersRule.OFF) {
      out.add(
          course.name()
              + " from "
              + course.from()
              + ": honey supers usually stand on "
              + days
              + " of its days; they would have to come off first (the label decides)");
    }
  }

  /** Days of a course on which honey supers usually stand. */
  public static int daysWithSupers(MiticideCourse course, Climate climate) {
    int days = 0;
    for (LocalDate d = course.from(); !d.isAfter(course.to()); d = d.plusDays(1)) {
      days += course.actsOn(d) && climate.supers().holds(d) ? 1 : 0;
    }
    return days;
  }
}
