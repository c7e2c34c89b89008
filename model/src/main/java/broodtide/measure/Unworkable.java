package broodtide.measure;

/**
 * Input whose parts are each allowed but cannot go together: brood breaks that overlap, a treatment
 * outside the days that are played, a climate in which no colony lives. The message says what
 * clashes and how to mend it.
 */
public class Unworkable extends RefusedException {
  private static final long serialVersionUID = 1L;

  /**
   * @param message what clashes, by name and date, and how to mend it
   */
  public Unworkable(String message) {
    super(message);
  }
}
