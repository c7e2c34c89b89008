package broodtide.control;

import broodtide.measure.Unworkable;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * What is done in a season, by name. An empty plan waits.
 *
 * @param name short name, unique among the plans that are compared
 * @param controls the measures, in any order
 */
public record Plan(String name, List<Control> controls) {
  /**
   * Copies the list and checks that brood breaks do not overlap.
   *
   * @throws Unworkable when two controls stop the queen on the same day, or a colony is split or
   *     requeened while its queen is caged
   */
  public Plan {
    controls = List.copyOf(controls);
    List<Control> breaks = new ArrayList<>();
    for (Control c : controls) {
      if (c.daysWithoutLaying() > 0) {
        for (Control other : breaks) {
          if (!c.from().isAfter(other.to()) && !other.from().isAfter(c.to())) {
            throw new Unworkable(
                "plan \""
                    + name
                    + "\": the brood breaks "
                    + spell(other)
                    + " and "
                    + spell(c)
                    + " overlap; end one before the other begins");
          }
        }
        breaks.add(c);
      }
    }
    for (Control c : controls) {
      queenAtHand(name, c, controls);
    }
  }

  /** A queen in her cage is not divided from her bees, nor replaced, on the same day. */
  private static void queenAtHand(String name, Control control, List<Control> all) {
    if (control.needsFreeQueen()) {
      for (Control c : all) {
        if (c.cagesQueen()
            && !control.from().isBefore(c.from())
            && !control.from().isAfter(c.to())) {
          throw new Unworkable(
              "plan \""
                  + name
                  + "\": the queen is caged by "
                  + spell(c)
                  + " when "
                  + spell(control)
                  + " comes; free her first or choose another day");
        }
      }
    }
  }

  /**
   * {@return do nothing}
   *
   * @param name short name of the plan
   */
  public static Plan waiting(String name) {
    return new Plan(name, List.of());
  }

  /**
   * {@return whether a control of the plan keeps the queen from laying on a day}
   *
   * @param day the day
   */
  public boolean broodBreakOn(LocalDate day) {
    return controls.stream()
        .anyMatch(
            c -> !day.isBefore(c.from()) && day.isBefore(c.from().plusDays(c.daysWithoutLaying())));
  }

  /** {@return the courses of miticides among the controls, in their order} */
  public List<MiticideCourse> courses() {
    return controls.stream().flatMap(c -> c.course().stream()).toList();
  }

  private static String spell(Control c) {
    return "\"" + c.name() + "\" (" + c.from() + " to " + c.to() + ")";
  }
}
