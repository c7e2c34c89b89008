package broodtide.engine;

/** Is shown the colonies at the start of each day, and once more after the last day. */
@FunctionalInterface
public interface DayObserver {
  /** Looks at nothing. */
  DayObserver NONE = (day, view) -> {};

  /**
   * Is called for day 0 before anything happens, then after each day that has run.
   *
   * @param day days since the start
   * @param view the colonies; it changes after this call returns, so copy what is to be kept
   */
  void see(int day, ColonyView view);
}
