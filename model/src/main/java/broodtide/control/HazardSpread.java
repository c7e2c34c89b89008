package broodtide.control;

import broodtide.measure.OutOfRange;

/**
 * How far the hazards of a miticide differ from case to case, as standard deviations of their
 * logarithm. What differs between trials (place, season, how it was made and given) is shared by
 * the colonies of an apiary that are treated together; the rest is each colony's own. Immutable.
 *
 * @param trials between trials, 0 to 5
 * @param colonies between the colonies of one trial, 0 to 5
 */
public record HazardSpread(double trials, double colonies) {
  /**
   * For a miticide of which no more is known: formic trials of 73 +- 12 %, 49 +- 15 % and 81 +- 16
   * % (Pietropaoli &amp; Formato 2022), as hazards -log(1 - efficacy), spread by 0.47 between the
   * three and by 0.46 within each.
   */
  public static final HazardSpread USUAL = new HazardSpread(0.47, 0.46);

  /** Checks ranges. */
  public HazardSpread {
    OutOfRange.check("trials", trials, 0, 5, "1");
    OutOfRange.check("colonies", colonies, 0, 5, "1");
  }

  /** {@return both together, as one colony meets them} */
  public double total() {
    return Math.hypot(trials, colonies);
  }
}
