package broodtide.control;

import java.time.LocalDate;

/** One measure against mites, placed in the calendar. */
public sealed interface Control
    permits DroneCombRemoval, MiticideCourse, QueenCaging, Split, Requeening {
  /** {@return what people call it, for messages and charts} */
  String name();

  /** {@return first day on which it acts} */
  LocalDate from();

  /** {@return last day on which it acts} */
  LocalDate to();

  /**
   * {@return days on which the queen does not lay because of it; zero when it leaves laying alone}
   */
  default int daysWithoutLaying() {
    return 0;
  }
}
