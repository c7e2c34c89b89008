package broodtide.control;

import java.time.LocalDate;
import java.util.Optional;

/**
 * One measure against mites, placed in the calendar. A control says itself what it does on its
 * days; engines, plans and commands ask it and never look for its class. Immutable.
 */
public sealed interface Control
    permits DroneCombRemoval, MiticideCourse, QueenCaging, TrappingComb, Split, Requeening {
  /** {@return what people call it, for messages and charts} */
  String name();

  /** {@return first day on which it acts} */
  LocalDate from();

  /** {@return last day on which it acts} */
  LocalDate to();

  /**
   * {@return the same control under another name}
   *
   * @param name what people call it
   */
  Control named(String name);

  /**
   * {@return the same control begun on another day, all of its days moved alike}
   *
   * @param day its first day
   */
  Control startingOn(LocalDate day);

  /**
   * Does what it does, day by day.
   *
   * @param colony carries it out
   */
  void act(ControlEffects colony);

  /**
   * {@return days on which the queen does not lay because of it; zero when it leaves laying alone}
   */
  default int daysWithoutLaying() {
    return 0;
  }

  /**
   * {@return the same control with another number of days without laying; empty when it leaves
   * laying alone, or cannot have so many}
   *
   * @param days days without laying
   * @throws broodtide.measure.OutOfRange when a control of its kind cannot have so many
   */
  default Optional<Control> withDaysWithoutLaying(int days) {
    return Optional.empty();
  }

  /**
   * {@return the same control given several times; empty when it is no thing to be given so}
   *
   * @param applications how often it is given
   * @param every days from one application to the next
   * @throws broodtide.measure.OutOfRange when these do not go together with the control
   */
  default Optional<Control> repeated(int applications, int every) {
    return Optional.empty();
  }

  /** {@return how often hands are laid on the colony for it, 1 or more} */
  default int applications() {
    return 1;
  }

  /** {@return the course of a miticide that it is, if it is one} */
  default Optional<MiticideCourse> course() {
    return Optional.empty();
  }

  /** {@return whether the queen sits in a cage on its days} */
  default boolean cagesQueen() {
    return false;
  }

  /** {@return whether the queen must be free on its first day} */
  default boolean needsFreeQueen() {
    return false;
  }

  /** {@return the day on which it leaves the colony without brood at once, if it does} */
  default Optional<LocalDate> broodless() {
    return Optional.empty();
  }
}
