package broodtide.control;

import broodtide.measure.OutOfRange;
import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A miticide given once or several times.
 *
 * @param name what people call this course
 * @param substance how it acts
 * @param start first day of the first application
 * @param applications how often it is given, 1 to 20
 * @param every days from one application to the next, at least the days that one acts
 */
public record MiticideCourse(
    String name, Miticide substance, LocalDate start, int applications, int every)
    implements Control {
  /** Checks ranges. */
  public MiticideCourse {
    OutOfRange.check("applications", applications, 1, 20, "applications");
    if (applications > 1) {
      OutOfRange.check("every", every, substance.days(), 120, "days");
    }
  }

  /**
   * {@return one application}
   *
   * @param name what people call this course
   * @param substance how it acts
   * @param start first day
   */
  public static MiticideCourse once(String name, Miticide substance, LocalDate start) {
    return new MiticideCourse(name, substance, start, 1, substance.days());
  }

  @Override
  public LocalDate from() {
    return start;
  }

  @Override
  public LocalDate to() {
    return start.plusDays((applications - 1L) * every + substance.days() - 1L);
  }

  /**
   * {@return whether an application acts on a day}
   *
   * @param day the day
   */
  public boolean actsOn(LocalDate day) {
    if (day.isBefore(start) || day.isAfter(to())) {
      return false;
    }
    long since = day.toEpochDay() - start.toEpochDay();
    return applications == 1 || since % every < substance.days();
  }

  /** {@return the days on which an application acts, in order} */
  public Stream<LocalDate> actingDays() {
    return from().datesUntil(to().plusDays(1)).filter(this::actsOn);
  }

  @Override
  public MiticideCourse named(String called) {
    return new MiticideCourse(called, substance, start, applications, every);
  }

  @Override
  public MiticideCourse startingOn(LocalDate day) {
    return new MiticideCourse(name, substance, day, applications, every);
  }

  @Override
  public void act(ControlEffects colony) {
    colony.treat(substance, from(), to(), this::actsOn);
  }

  @Override
  public Optional<Control> repeated(int times, int apart) {
    return Optional.of(new MiticideCourse(name, substance, start, times, apart));
  }

  @Override
  public Optional<MiticideCourse> course() {
    return Optional.of(this);
  }
}
