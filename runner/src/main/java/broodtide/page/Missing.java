package broodtide.page;

import broodtide.measure.RefusedException;

/** Something that has to be entered first. */
final class Missing extends RefusedException {
  private static final long serialVersionUID = 1L;

  /**
   * @param message what is missing, and where to enter it
   */
  Missing(String message) {
    super(message);
  }
}
