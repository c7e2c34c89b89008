package broodtide.colony;

import broodtide.measure.Unworkable;

/**
 * Days that brood spends in each stage.
 *
 * @param egg days as egg
 * @param larva days as open larva
 * @param capped days under the capping
 */
public record BroodTimes(int egg, int larva, int capped) {
  /** Worker brood: 3, 6 and 12 days. Source: handbook figures, common practice. */
  public static final BroodTimes WORKER = new BroodTimes(3, 6, 12);

  /** Drone brood: 3, 7 and 14 days. Source: handbook figures, common practice. */
  public static final BroodTimes DRONE = new BroodTimes(3, 7, 14);

  /** Checks that each stage lasts 1 to 60 days. */
  public BroodTimes {
    if (Math.min(egg, Math.min(larva, capped)) < 1 || Math.max(egg, Math.max(larva, capped)) > 60) {
      throw new Unworkable(
          "brood stages last 1 to 60 days each; given " + egg + ", " + larva + ", " + capped);
    }
  }

  /** {@return days from laying to capping} */
  public int open() {
    return egg + larva;
  }

  /** {@return days from laying to emergence} */
  public int total() {
    return open() + capped;
  }
}
