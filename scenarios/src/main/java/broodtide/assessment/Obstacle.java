package broodtide.assessment;

import broodtide.catalog.ControlTemplate;
import broodtide.control.Control;
import broodtide.control.DroneCombRemoval;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.control.Plan;
import broodtide.control.Split;
import broodtide.measure.RefusedException;
import broodtide.season.Climate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What keeps a control from being begun on a day.
 *
 * @param kind which kind of obstacle
 * @param words the whole reason with the control's name and its date
 */
public record Obstacle(Kind kind, String words) {
  /** Days from laying to the end of the last drone's capping. */
  private static final int LAST_DRONE = 24;

  /** Days from laying to the first worker's capping. */
  private static final int FIRST_CAPPING = 9;

  /** Kinds of obstacle, each with a letter for maps. */
  public enum Kind {
    /** The plan as a whole cannot be carried out. */
    CLASH('X', "clashes with what is done already"),
    /** Honey supers usually stand, and the control is not for use under them. */
    SUPERS('S', "honey supers on"),
    /** Days are usually too cold. */
    COLD('C', "too cold"),
    /** Days are usually too warm. */
    WARM('W', "too warm"),
    /** There is capped brood, and the control is known to work without brood alone. */
    BROOD('B', "brood in the hive"),
    /** No drones are reared. */
    NO_DRONES('D', "no drones reared");

    private final char code;
    private final String reason;

    Kind(char code, String reason) {
      this.code = code;
      this.reason = reason;
    }

    /** {@return one letter} */
    public char code() {
      return code;
    }

    /** {@return a few words} */
    public String reason() {
      return reason;
    }
  }

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
      return Optional.of(new Obstacle(Kind.CLASH, e.reason()));
    }
    List<Obstacle> found = new ArrayList<>(of(control, c.model().climate()));
    if (needsNoBrood(template) && cappedBrood(start, plan, c.model().climate())) {
      found.add(
          new Obstacle(
              Kind.BROOD,
              template.title()
                  + " on "
                  + start
                  + ": there is capped brood then, which it does not reach"));
    }
    return found.stream().findFirst();
  }

  /**
   * {@return what stands against a control in the usual year of a place, whatever the colony does;
   * empty when nothing does}
   *
   * @param control the control, with its dates
   * @param climate the year of the place
   */
  public static List<Obstacle> of(Control control, Climate climate) {
    List<Obstacle> out = new ArrayList<>();
    if (control instanceof MiticideCourse course) {
      supers(course, climate).ifPresent(out::add);
      temperature(course, climate).ifPresent(out::add);
    } else if (control instanceof DroneCombRemoval removal
        && climate.droneShare().at(removal.from()) <= 0) {
      out.add(
          new Obstacle(
              Kind.NO_DRONES,
              removal.name()
                  + " from "
                  + removal.from()
                  + ": colonies usually rear no drones then, so there may be nothing to cut"));
    }
    return out;
  }

  /** The label speaks of the days on which it is given, so each application's first day counts. */
  private static Optional<Obstacle> temperature(MiticideCourse course, Climate climate) {
    Miticide substance = course.substance();
    for (int i = 0; i < course.applications(); i++) {
      LocalDate day = course.from().plusDays((long) i * course.every());
      double high = climate.high(day);
      if (high < substance.coolest() || high > substance.warmest()) {
        return Optional.of(
            new Obstacle(
                high < substance.coolest() ? Kind.COLD : Kind.WARM,
                String.format(
                    Locale.ROOT,
                    "%s on %s: daily highs are usually near %.0f °C, outside its %s to %s °C",
                    course.name(),
                    day,
                    high,
                    degrees(substance.coolest()),
                    degrees(substance.warmest()))));
      }
    }
    return Optional.empty();
  }

  private static String degrees(double value) {
    return value == Math.rint(value)
        ? String.format(Locale.ROOT, "%.0f", value)
        : String.format(Locale.ROOT, "%.1f", value);
  }

  private static Optional<Obstacle> supers(MiticideCourse course, Climate climate) {
    int days = PlanCheck.daysWithSupers(course, climate);
    if (days == 0 || course.substance().supers() != Miticide.SupersRule.OFF) {
      return Optional.empty();
    }
    return Optional.of(
        new Obstacle(
            Kind.SUPERS,
            course.name()
                + " from "
                + course.from()
                + ": honey supers usually stand on "
                + days
                + " of its days; they would have to come off first (the label decides)"));
  }

  /** Whether a control reaches mites on bees alone and was measured in colonies without brood. */
  static boolean needsNoBrood(ControlTemplate template) {
    return template.action() instanceof ControlTemplate.Treatment t
        && t.miticide().inCells() == 0
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
      if (c instanceof Split s && s.broodLeaving() >= 1 && !s.from().isAfter(day)) {
        cleared = cleared.isAfter(s.from()) ? cleared : s.from();
      }
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
