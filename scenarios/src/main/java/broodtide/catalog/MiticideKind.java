package broodtide.catalog;

import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.forms.DateForm;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.ObjectForm;
import broodtide.forms.TextForm;
import broodtide.season.Climate;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** Miticides, given once or several times. */
final class MiticideKind extends ControlKind<MiticideCourse> {
  private static final Field<String> NAME =
      Field.required("name", TextForm.LINE, "what to call it, by its active substance");
  private static final Field<String> ACTS_AS =
      Field.optional(
          "miticide",
          TextForm.LINE,
          "short name that stays the same whatever the course is called, for example"
              + " oxalic-dribble; the name when left out");
  private static final Field<LocalDate> START = Field.required("start", DateForm.DATE, "first day");
  private static final Field<String> SUBSTANCE =
      Field.required("substance", TextForm.LINE, "the active substance");

  MiticideKind() {
    super("miticide", MiticideCourse.class, "a miticide given once or several times");
  }

  @Override
  List<Field<?>> datedFields() {
    return Stream.concat(Stream.of(NAME, ACTS_AS, START), ControlFields.SUBSTANCE.stream())
        .toList();
  }

  @Override
  MiticideCourse dated(Fields in) {
    String name = in.need(NAME);
    return course(name, in.given(ACTS_AS) ? in.need(ACTS_AS) : name, in.need(START), in);
  }

  @Override
  void writeDated(MiticideCourse course, ObjectForm.Written out) {
    out.put(NAME, course.name());
    if (!course.substance().name().equals(course.name())) {
      out.put(ACTS_AS, course.substance().name());
    }
    out.put(START, course.start());
    writeUsual(course, out);
  }

  @Override
  List<Field<?>> usualFields() {
    return ControlFields.SUBSTANCE;
  }

  @Override
  MiticideCourse usual(String name, String title, LocalDate start, Fields in) {
    return course(title, name, start, in);
  }

  @Override
  void writeUsual(MiticideCourse course, ObjectForm.Written out) {
    ControlFields.spell(course.substance(), course.applications(), course.every(), out);
  }

  @Override
  Optional<Field<String>> substance() {
    return Optional.of(SUBSTANCE);
  }

  @Override
  List<Obstacle> against(MiticideCourse course, Climate climate) {
    List<Obstacle> out = new ArrayList<>();
    supers(course, climate).ifPresent(out::add);
    temperature(course, climate).ifPresent(out::add);
    return out;
  }

  /**
   * Each application, and where something stays in the hive, the morning after its last day, when
   * it comes out.
   */
  @Override
  List<HiveVisit> hands(MiticideCourse course, Handling handling) {
    List<HiveVisit> out = new ArrayList<>();
    int all = course.applications();
    boolean stays = false;
    for (int i = 0; i < all; i++) {
      LocalDate given = course.from().plusDays((long) i * course.every());
      String deed = handling.takenOut() ? stays ? "replace" : "put in" : "treat";
      out.add(new HiveVisit(given, deed + ControlFields.count(i, all)));
      LocalDate over = given.plusDays(course.substance().days());
      stays = i + 1 < all && over.equals(given.plusDays(course.every()));
      if (handling.takenOut() && !stays) {
        out.add(new HiveVisit(over, "take out what is left, as the label says"));
      }
    }
    return out;
  }

  private static MiticideCourse course(String name, String actsAs, LocalDate start, Fields in) {
    return new MiticideCourse(
        name,
        ControlFields.miticide(actsAs, in),
        start,
        in.need(ControlFields.APPLICATIONS),
        ControlFields.every(in));
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
                high < substance.coolest() ? Obstacle.Kind.COLD : Obstacle.Kind.WARM,
                String.format(
                    Locale.ROOT,
                    "%s on %s: %s %.0f °C, outside its %s to %s °C",
                    course.name(),
                    day,
                    climate.recorded().on(day).isPresent()
                        ? "the daily high given is"
                        : "daily highs are usually near",
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
    long days = course.actingDays().filter(climate.supers()::holds).count();
    if (days == 0 || course.substance().supers() != Miticide.SupersRule.OFF) {
      return Optional.empty();
    }
    return Optional.of(
        new Obstacle(
            Obstacle.Kind.SUPERS,
            course.name()
                + " from "
                + course.from()
                + ": supers are usually on for "
                + days
                + " of its days; they must come off first (the label decides)"));
  }
}
