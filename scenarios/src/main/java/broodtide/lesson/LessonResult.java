package broodtide.lesson;

import java.util.Locale;

/** What a season comes to, as a lesson shows it. */
public enum LessonResult {
  /** The chance that the colony is dead or too weak by the spring low, from any cause. */
  WINTER_LOSS,
  /** Share of capped worker cells with a mite while the winter bees are raised. */
  INFESTED_WINTER_BROOD,
  /** Adult bees on the day in spring on which colonies of the place have the fewest. */
  SPRING_BEES;

  /** {@return its word in files, {@code winter-loss}} */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** {@return whether it is a share, 0 to 1, rather than a number of bees} */
  public boolean share() {
    return this != SPRING_BEES;
  }
}
